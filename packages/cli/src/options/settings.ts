import {
  DEFAULT_LIMITS,
  type Equipment,
  type Feedline,
  type FeedlineDetails,
  feedlineFrom,
  type Instrument,
  type Limits,
  type Mode,
  type ModeName,
  modeOf,
  type ReadOptions,
  type Station,
} from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { terminalWidth } from "../present/terminal-width.js";
import { type ChosenPlan, choosePlan } from "./find-plan.js";
import type { Format, RawOptions } from "./raw-options.js";
import { readStation } from "./station-file.js";

/** How to print. */
export interface Output {
  readonly format: Format;
  /** The width that text may take */
  readonly width: number;
}

/** Everything that judging and presenting need, checked: what was typed goes before what the station file says. */
export interface Settings extends ChosenPlan, Output {
  /** Absent: wherever anything may be sent */
  readonly modes?: readonly Mode[];
  readonly limits: Limits;
  readonly reading: ReadOptions;
  /** SWR is judged against this impedance; null: against each file's own */
  readonly systemOhms: number | null;
  readonly instrument: Instrument | null;
  readonly feedline: Feedline | null;
  readonly equipment: Equipment;
  /** The station file that was read; null where there was none */
  readonly stationFile: string | null;
  readonly station: Station;
}

/** Turns what was typed and the station file into settings. @throws UsageError naming the option and what it takes */
export async function settingsFrom(raw: RawOptions & { readonly station?: string | false }): Promise<Settings> {
  const { file, station } = await readStation(raw.station);
  const equipment = equipmentFrom(raw, station);
  const modes = modesFrom(raw, station);
  return {
    ...(await choosePlan({
      plan: raw.plan ?? station.licence?.plan,
      // A class belongs to the plan that it was stated with.
      class: raw.class ?? (raw.plan === undefined ? station.licence?.class : undefined),
      bands: raw.bands ?? station.bands,
    })),
    ...(modes === null ? {} : { modes }),
    limits: limitsFrom(raw, station),
    ...outputFrom(raw),
    reading: readingFrom(raw),
    systemOhms: raw.systemOhms ?? null,
    instrument: instrumentFrom(raw, station),
    feedline: feedlineOf(raw, station),
    equipment,
    stationFile: file,
    station,
  };
}

/** Columns of text where there is no terminal to ask. */
const UNKNOWN_WIDTH = 120;

export function outputFrom(raw: Pick<RawOptions, "format" | "json">): Output {
  if (raw.json && raw.format !== undefined && raw.format !== "json") {
    throw new UsageError(`--json and --format ${raw.format} contradict each other.`);
  }
  return {
    format: raw.json ? "json" : (raw.format ?? "table"),
    width: terminalWidth(process.env, process.stdout, UNKNOWN_WIDTH),
  };
}

/** What the user says about the files. */
export function readingFrom(raw: RawOptions): ReadOptions {
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

/** Modes as named, with the station's own values; those of the station file where none were named; null where none are. */
function modesFrom(raw: RawOptions, station: Station): readonly Mode[] | null {
  const names = raw.modes ?? (station.modes && (Object.keys(station.modes) as ModeName[]));
  return names === undefined || names.length === 0 ? null : names.map((name) => modeOf(name, station.modes?.[name]));
}

function instrumentFrom({ directivity }: RawOptions, { analyser }: Station): Instrument | null {
  if (directivity === undefined) return analyser ?? null;
  return { ...analyser, directivityDb: directivity };
}

function equipmentFrom({ power, tuner }: RawOptions, { radio, antenna }: Station): Equipment {
  return {
    radio: { ...radio, ...withoutUndefined({ powerW: power, tuner }) },
    ...(antenna === undefined ? {} : { antenna }),
  };
}

function feedlineOf({ feedline, feedlineLength }: RawOptions, station: Station): Feedline | null {
  if (feedline === false) return null;
  if (feedline === undefined && feedlineLength === undefined) {
    return station.feedline === undefined ? null : feedlineFrom(station.feedline);
  }
  const lengthM = feedlineLength ?? station.feedline?.lengthM;
  if (lengthM === undefined) throw new UsageError("--feedline needs --feedline-length as well.");
  // Another kind has nothing in common with the line of the station file but, perhaps, its length.
  const details: FeedlineDetails | undefined =
    feedline === undefined ? station.feedline && { ...station.feedline, lengthM } : { kind: feedline, lengthM };
  if (details === undefined) throw new UsageError("--feedline-length needs --feedline as well.");
  return feedlineFrom(details);
}

function limitsFrom({ limit, builtInTuner, wideRangeTuner }: RawOptions, station: Station): Limits {
  const swr = limit ?? station.limits?.swr ?? DEFAULT_LIMITS.swr;
  const builtIn = builtInTuner ?? station.limits?.builtInTunerSwr ?? Math.max(DEFAULT_LIMITS.builtInTunerSwr, swr);
  const wideRange =
    wideRangeTuner ?? station.limits?.wideRangeTunerSwr ?? Math.max(DEFAULT_LIMITS.wideRangeTunerSwr, builtIn);
  if (swr > builtIn || builtIn > wideRange) {
    throw new UsageError(
      `The limits without a tuner, with a built-in and with a wide-range one must ascend; they are ${swr}, ${builtIn} and ${wideRange}.`,
    );
  }
  return { swr, builtInTunerSwr: builtIn, wideRangeTunerSwr: wideRange };
}

/** An object without the keys whose value is undefined. */
function withoutUndefined<Shape extends object>(
  shape: Shape,
): { [Key in keyof Shape]?: Exclude<Shape[Key], undefined> } {
  return Object.fromEntries(Object.entries(shape).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Shape]?: Exclude<Shape[Key], undefined>;
  };
}
