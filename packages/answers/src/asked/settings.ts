import {
  DEFAULT_LIMITS,
  type Equipment,
  type Feedline,
  feedlineFrom,
  type Instrument,
  type Limits,
  type Mode,
  type ModeName,
  modeOf,
  type People,
  RADIO_OHMS,
  type Station,
} from "@feedpoint/core";
import type { ChosenPlan } from "./find-plan.js";
import type { ReadingSettings } from "./referred.js";
import { UsageError } from "./usage-error.js";

/** Everything that judging needs, checked. */
export interface Settings extends ChosenPlan, Required<ReadingSettings> {
  /** Absent: wherever anything may be sent */
  readonly modes?: readonly Mode[];
  readonly limits: Limits;
  readonly instrument: Instrument | null;
  readonly feedline: Feedline | null;
  readonly equipment: Equipment;
  readonly people: People;
  readonly station: Station;
}

/** What is asked beside what the station states. */
export interface Asked extends Pick<ReadingSettings, "reading" | "systemOhms"> {
  /** Modes to judge by; absent: those of the station */
  readonly modes?: readonly ModeName[] | undefined;
}

/**
 * What a station states, as everything that judging needs.
 *
 * @param chosen the plan, with the class and the bands of it
 * @throws UsageError where the reach of the tuners does not ascend; Error for a feedline that is none
 */
export function settingsOf(
  station: Station,
  chosen: ChosenPlan,
  { modes = modesOf(station), reading, systemOhms = null }: Asked,
): Settings {
  const { radio, antenna, feedline, analyser, people = {} } = station;
  return {
    ...chosen,
    ...(modes.length === 0 ? {} : { modes: modes.map((name) => modeOf(name, station.modes?.[name])) }),
    limits: limitsOf(station),
    reading,
    systemOhms,
    radioOhms: radio === undefined ? null : (radio.ohms ?? RADIO_OHMS),
    instrument: analyser ?? null,
    feedline: feedline === undefined ? null : feedlineFrom(feedline),
    equipment: { radio: radio ?? {}, ...(antenna === undefined ? {} : { antenna }) },
    people,
    station,
  };
}

const modesOf = ({ modes = {} }: Station) => Object.keys(modes) as ModeName[];

/** A limit that is stated moves those above it along; two that are stated must ascend. */
function limitsOf({ limits = {} }: Station): Limits {
  const { swr = DEFAULT_LIMITS.swr } = limits;
  const { builtInTunerSwr = Math.max(DEFAULT_LIMITS.builtInTunerSwr, swr) } = limits;
  const { wideRangeTunerSwr = Math.max(DEFAULT_LIMITS.wideRangeTunerSwr, builtInTunerSwr) } = limits;
  if (swr > builtInTunerSwr || builtInTunerSwr > wideRangeTunerSwr) {
    throw new UsageError(
      `The limits without a tuner, with a built-in and with a wide-range one must ascend; they are ${swr}, ${builtInTunerSwr} and ${wideRangeTunerSwr}.`,
    );
  }
  return { swr, builtInTunerSwr, wideRangeTunerSwr };
}
