import { choosePlan } from "@feedpoint/answers/asked/find-plan";
import { type Settings as Judging, settingsOf } from "@feedpoint/answers/asked/settings";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type FeedlineDetails, RADIO_OHMS, type ReadOptions, type Station } from "@feedpoint/core";
import { terminalWidth } from "../present/terminal-width.js";
import { OPTIONS, type RawCommon, stated } from "./options.js";
import { readPlanFile } from "./plan-file.js";
import { readStation } from "./station-file.js";

/** Forms of output. */
type Format = (typeof OPTIONS.format.choices)[number];

/** How to print. */
export interface Output {
  readonly format: Format;
  /** The width that text may take */
  readonly width: number;
}

/** Everything that judging and presenting need, checked: what was typed goes before what the station file says. */
export interface Settings extends Judging, Output {
  /** The station file that was read; null where there was none */
  readonly stationFile: string | null;
}

/** Turns what was typed and the station file into settings. @throws UsageError naming the option and what it takes */
export async function settingsFrom(raw: RawCommon): Promise<Settings> {
  const { file, station } = await readStation(raw.station);
  const wanted = {
    plan: stated(OPTIONS.plan, raw.plan, station),
    // A class belongs to the plan that it was stated with.
    class: raw.plan === undefined ? stated(OPTIONS.class, raw.class, station) : raw.class,
    bands: stated(OPTIONS.bands, raw.bands, station),
  };
  const asked = { reading: readingFrom(raw), systemOhms: raw.systemOhms ?? null, modes: raw.modes };
  return {
    ...settingsOf(stationAsTyped(raw, station), await choosePlan(wanted, readPlanFile), asked),
    // Power or tuner by themselves do not say what impedance the radio is made for.
    radioOhms: station.radio === undefined ? null : (station.radio.ohms ?? RADIO_OHMS),
    ...outputFrom(raw),
    stationFile: file,
  };
}

/** Columns of text where there is no terminal to ask. */
const UNKNOWN_WIDTH = 120;

export function outputFrom(raw: Pick<RawCommon, "format" | "json">): Output {
  if (raw.json && raw.format !== undefined && raw.format !== "json") {
    throw new UsageError(`--json and --format ${raw.format} contradict each other.`);
  }
  return {
    format: raw.json ? "json" : (raw.format ?? "table"),
    width: terminalWidth(process.env, process.stdout, UNKNOWN_WIDTH),
  };
}

/** What the user says about the files. */
export function readingFrom(raw: RawCommon): ReadOptions {
  return withoutUndefined({
    port: raw.port,
    referenceOhms: raw.referenceOhms,
    delimiter: raw.delimiter,
    decimal: raw.decimal,
    frequencyUnit: raw.unit,
    columns: raw.columns,
    signedReactance: raw.signedReactance,
  });
}

/** The station with what was typed in its place. */
function stationAsTyped(raw: RawCommon, { feedline: usualLine, ...station }: Station): Station {
  const { radio, antenna, analyser } = station;
  const feedline = feedlineAsTyped(raw, usualLine);
  return {
    ...station,
    limits: withoutUndefined({
      swr: stated(OPTIONS.limit, raw.limit, station),
      builtInTunerSwr: stated(OPTIONS.builtInTuner, raw.builtInTuner, station),
      wideRangeTunerSwr: stated(OPTIONS.wideRangeTuner, raw.wideRangeTuner, station),
    }),
    radio: {
      ...radio,
      ...withoutUndefined({
        powerW: stated(OPTIONS.power, raw.power, station),
        tuner: stated(OPTIONS.tuner, raw.tuner, station),
      }),
    },
    people: withoutUndefined({
      distanceM: stated(OPTIONS.people, raw.people, station),
      onAir: stated(OPTIONS.onAir, raw.onAir, station),
    }),
    antenna: {
      ...antenna,
      ...withoutUndefined({
        wireLengthM: stated(OPTIONS.wireLength, raw.wireLength, station),
        fixed: stated(OPTIONS.fixed, raw.fixed, station),
      }),
    },
    ...(raw.directivity === undefined ? {} : { analyser: { ...analyser, directivityDb: raw.directivity } }),
    ...(feedline === undefined ? {} : { feedline }),
  };
}

/** @param usual what the station file says @throws UsageError for a kind without a length, or a length without a kind */
function feedlineAsTyped({ feedline, feedlineLength }: RawCommon, usual: FeedlineDetails | undefined) {
  if (feedline === false) return undefined;
  if (feedline === undefined && feedlineLength === undefined) return usual;
  const lengthM = feedlineLength ?? usual?.lengthM;
  if (lengthM === undefined) throw new UsageError("--feedline needs --feedline-length as well.");
  // Another kind has nothing in common with the line of the station file but, perhaps, its length.
  const details = feedline === undefined ? usual && { ...usual, lengthM } : { kind: feedline, lengthM };
  if (details === undefined) throw new UsageError("--feedline-length needs --feedline as well.");
  return details;
}

/** An object without the keys whose value is undefined. */
function withoutUndefined<Shape extends object>(
  shape: Shape,
): { [Key in keyof Shape]?: Exclude<Shape[Key], undefined> } {
  return Object.fromEntries(Object.entries(shape).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Shape]?: Exclude<Shape[Key], undefined>;
  };
}
