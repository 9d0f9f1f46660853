import {
  type Equipment,
  type Feedline,
  type FeedlineDetails,
  feedlineFrom,
  type Instrument,
  type Limits,
  type Mode,
  modeOf,
  type People,
  RADIO_OHMS,
  type ReadOptions,
  type Station,
} from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { terminalWidth } from "../present/terminal-width.js";
import { type ChosenPlan, choosePlan } from "./find-plan.js";
import { OPTIONS, type RawCommon, stated } from "./options.js";
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
export interface Settings extends ChosenPlan, Output {
  /** Absent: wherever anything may be sent */
  readonly modes?: readonly Mode[];
  readonly limits: Limits;
  readonly reading: ReadOptions;
  /** SWR is judged against this impedance; null: against each file's own */
  readonly systemOhms: number | null;
  /** That of the radio, where the station file says what the radio is; Ω */
  readonly radioOhms: number | null;
  readonly instrument: Instrument | null;
  readonly feedline: Feedline | null;
  readonly equipment: Equipment;
  readonly people: People;
  /** The station file that was read; null where there was none */
  readonly stationFile: string | null;
  readonly station: Station;
}

/** Turns what was typed and the station file into settings. @throws UsageError naming the option and what it takes */
export async function settingsFrom(raw: RawCommon): Promise<Settings> {
  const { file, station } = await readStation(raw.station);
  const modes = modesFrom(raw, station);
  const bands = stated(OPTIONS.bands, raw.bands, station);
  return {
    ...(await choosePlan({
      plan: stated(OPTIONS.plan, raw.plan, station),
      // A class belongs to the plan that it was stated with.
      class: raw.plan === undefined ? stated(OPTIONS.class, raw.class, station) : raw.class,
      bands,
    })),
    ...(modes === null ? {} : { modes }),
    limits: limitsFrom(raw, station),
    ...outputFrom(raw),
    reading: readingFrom(raw),
    systemOhms: raw.systemOhms ?? null,
    radioOhms: station.radio === undefined ? null : (station.radio.ohms ?? RADIO_OHMS),
    instrument: instrumentFrom(raw, station),
    feedline: feedlineOf(raw, station),
    equipment: equipmentFrom(raw, station),
    people: withoutUndefined({
      distanceM: stated(OPTIONS.people, raw.people, station),
      onAir: stated(OPTIONS.onAir, raw.onAir, station),
    }),
    stationFile: file,
    station,
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

/** Modes as named, with the station's own values; those of the station file where none were named; null where none are. */
function modesFrom(raw: RawCommon, station: Station): readonly Mode[] | null {
  const names = stated(OPTIONS.modes, raw.modes, station);
  return names === undefined || names.length === 0 ? null : names.map((name) => modeOf(name, station.modes?.[name]));
}

function instrumentFrom({ directivity }: RawCommon, { analyser }: Station): Instrument | null {
  if (directivity === undefined) return analyser ?? null;
  return { ...analyser, directivityDb: directivity };
}

function equipmentFrom({ power, tuner, wireLength }: RawCommon, station: Station): Equipment {
  const { radio } = station;
  const antenna = wireLength === undefined ? station.antenna : { ...station.antenna, wireLengthM: wireLength };
  return {
    radio: {
      ...radio,
      ...withoutUndefined({
        powerW: stated(OPTIONS.power, power, station),
        tuner: stated(OPTIONS.tuner, tuner, station),
      }),
    },
    ...(antenna === undefined ? {} : { antenna }),
  };
}

function feedlineOf({ feedline, feedlineLength }: RawCommon, station: Station): Feedline | null {
  if (feedline === false) return null;
  if (feedline === undefined && feedlineLength === undefined) {
    return station.feedline === undefined ? null : feedlineFrom(station.feedline);
  }
  const lengthM = stated(OPTIONS.feedlineLength, feedlineLength, station);
  if (lengthM === undefined) throw new UsageError("--feedline needs --feedline-length as well.");
  // Another kind has nothing in common with the line of the station file but, perhaps, its length.
  const details: FeedlineDetails | undefined =
    feedline === undefined ? station.feedline && { ...station.feedline, lengthM } : { kind: feedline, lengthM };
  if (details === undefined) throw new UsageError("--feedline-length needs --feedline as well.");
  return feedlineFrom(details);
}

function limitsFrom({ limit, builtInTuner, wideRangeTuner }: RawCommon, station: Station): Limits {
  const swr = stated(OPTIONS.limit, limit, station) ?? OPTIONS.limit.fallback;
  const builtIn = stated(OPTIONS.builtInTuner, builtInTuner, station) ?? Math.max(OPTIONS.builtInTuner.fallback, swr);
  const wideRange =
    stated(OPTIONS.wideRangeTuner, wideRangeTuner, station) ?? Math.max(OPTIONS.wideRangeTuner.fallback, builtIn);
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
