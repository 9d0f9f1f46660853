import { type AdifRecord, adifRecords } from "./adif.js";
import type { LeftOut, ReportLeftOutReason } from "./left-out.js";
import type { ReadReports, ReceptionReport } from "./report.js";
import { bandAt, bandNamed, callOf, powersIn, reportTime, snrIn } from "./report-values.js";

/** How the own station goes where its log does not name it. */
const OWN_STATION = "OWN STATION";

/**
 * A log in ADIF as reports of the own station: what the contacted station sent back is how well it heard us.
 *
 * @param own the own call sign, where the log names none
 */
export function reportsFromAdif(text: string, own: string | undefined): ReadReports {
  const reports: ReceptionReport[] = [];
  const leftOut: LeftOut[] = [];
  for (const [index, record] of adifRecords(text).entries()) {
    const read = reportFrom(record, own);
    if (typeof read === "string") leftOut.push({ place: index + 1, reason: read });
    else reports.push(read);
  }
  return { reports, leftOut, description: "ADIF log" };
}

function reportFrom(record: AdifRecord, own: string | undefined): ReceptionReport | ReportLeftOutReason {
  const field = (name: string): string => record.get(name) ?? "";
  const time = reportTime(`${field("QSO_DATE")} ${field("TIME_ON")}`);
  if (time === null) return "no-time";
  const receiver = callOf(field("CALL"));
  if (receiver === "") return "no-station";
  const band = bandNamed(field("BAND")) ?? bandAt(field("FREQ"));
  if (band === null) return "no-band";
  const transmitter = callOf(field("STATION_CALLSIGN") || field("OPERATOR") || own || OWN_STATION);
  const mode = (field("SUBMODE") || field("MODE")).toUpperCase();
  return {
    time,
    transmitter,
    receiver,
    transmitterLocator: field("MY_GRIDSQUARE") || null,
    receiverLocator: field("GRIDSQUARE") || null,
    band,
    mode: mode === "" ? null : mode,
    snrDb: snrIn(field("RST_RCVD"), mode),
    powerW: powersIn([field("TX_PWR")], "W")[0] ?? null,
  };
}
