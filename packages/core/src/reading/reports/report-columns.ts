/** What the columns of a table of reports hold, by their names. */
export type ReportColumn =
  | "time"
  | "date"
  | "transmitter"
  | "receiver"
  | "transmitterLocator"
  | "receiverLocator"
  | "frequency"
  | "band"
  | "mode"
  | "snr"
  | "power";

/** Names as tables have them, without blanks and signs. */
const NAMES: Readonly<Record<ReportColumn, readonly string[]>> = {
  time: ["time", "timestamp", "utc", "datetime", "dateandtime", "timeutc", "utctime", "when", "slot"],
  date: ["date", "dateutc", "utcdate", "day"],
  transmitter: [
    "transmitter",
    "tx",
    "txcall",
    "txcallsign",
    "txsign",
    "sender",
    "sendercall",
    "sendercallsign",
    "beacon",
    "from",
    "sentby",
  ],
  receiver: [
    "receiver",
    "rx",
    "rxcall",
    "rxcallsign",
    "rxsign",
    "reporter",
    "receivercall",
    "receivercallsign",
    "reportercall",
    "spotter",
    "listener",
    "heardby",
    "de",
  ],
  transmitterLocator: [
    "txgrid",
    "txlocator",
    "txloc",
    "sendergrid",
    "senderlocator",
    "transmittergrid",
    "transmitterlocator",
    "grid",
    "locator",
  ],
  receiverLocator: [
    "rxgrid",
    "rxlocator",
    "rxloc",
    "reportergrid",
    "reporterlocator",
    "receivergrid",
    "receiverlocator",
    "rgrid",
  ],
  frequency: [
    "frequency",
    "freq",
    "mhz",
    "khz",
    "hz",
    "frequencymhz",
    "frequencykhz",
    "frequencyhz",
    "freqmhz",
    "freqkhz",
    "freqhz",
    "qrg",
  ],
  band: ["band"],
  mode: ["mode", "modulation"],
  snr: ["snr", "snrdb", "db", "signal", "signaldb"],
  power: [
    "power",
    "w",
    "powerw",
    "powerdbm",
    "pwr",
    "pwrdbm",
    "pwrw",
    "dbm",
    "watts",
    "txpower",
    "txpowerw",
    "txpowerdbm",
  ],
};

const plain = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]/g, "");

/** A column that names a station and not which of the two. */
const STATION = ["call", "callsign", "station"];

/** The columns of a header, each by its place; null where it is no header of a table of reports. */
export function reportColumns(header: readonly string[]): ReadonlyMap<ReportColumn, number> | null {
  const names = header.map(plain);
  const columns = new Map<ReportColumn, number>();
  for (const [column, known] of Object.entries(NAMES) as readonly (readonly [ReportColumn, readonly string[]])[]) {
    const place = names.findIndex((name) => known.includes(name));
    if (place >= 0) columns.set(column, place);
  }
  const station = names.findIndex((name) => STATION.includes(name));
  if (station >= 0 && columns.has("receiver") !== columns.has("transmitter"))
    columns.set(columns.has("receiver") ? "transmitter" : "receiver", station);
  const isTable = columns.has("time") && columns.has("receiver") && (columns.has("band") || columns.has("frequency"));
  return isTable ? columns : null;
}
