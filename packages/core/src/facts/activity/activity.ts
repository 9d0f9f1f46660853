import type { PlanSource, Region } from "../band-plan/band-plan.js";
import activity from "./activity.json" with { type: "json" };

/** Where an activity is at home: the whole world, an ITU Region, or one country. */
export type ActivityRegion = "all" | Region;

/** What operators do there. A beacon is only listened to, but for the digital ones that everybody may send. */
export type ActivityKind =
  | "digital"
  | "beacon-digital"
  | "digital-voice"
  | "cw-qrp"
  | "cw-slow"
  | "ssb-qrp"
  | "image"
  | "emergency"
  | "beacon"
  | "am"
  | "fm";

/** A frequency where operators of one kind meet: common practice, not a rule. */
export interface Activity {
  /** The trade's own word: "FT8", "CW QRP" */
  readonly label: string;
  readonly kind: ActivityKind;
  /** Wavelength name: "40m" */
  readonly band: string;
  /** What it means is said by `dial` */
  readonly frequencyHz: number;
  /**
   * What the frequency means. usb: the suppressed carrier of an upper sideband receiver, as its dial shows it; cw: the Morse
   * signal itself; carrier: the carrier of AM or FM; centre: about where stations gather. The sources state usb; the others
   * follow from the kind.
   */
  readonly dial: "usb" | "cw" | "carrier" | "centre";
  /** Between which offsets from the frequency all the signals lie, Hz; absent where no source says */
  readonly occupied?: { readonly lowOffsetHz: number; readonly highOffsetHz: number };
  /** Where it is common */
  readonly regions: readonly ActivityRegion[];
  /** custom: what operators do; band-plan: a band plan, itself voluntary, names it */
  readonly origin: "custom" | "band-plan";
  /** Whether it was read from a source, or rests on memory */
  readonly confirmed: boolean;
  /** Ids of {@link ACTIVITY_SOURCES} */
  readonly sources: readonly string[];
  readonly note?: string;
}

const DATA = frozen(activity as unknown as { sources: readonly PlanSource[]; activities: readonly Activity[] });

/** Common activity frequencies, ascending. The tests hold them against the schema, so that is not done at run time. */
export const ACTIVITIES: readonly Activity[] = DATA.activities;

/** The sources that the activities name. */
export const ACTIVITY_SOURCES: readonly PlanSource[] = DATA.sources;

/** What activities are looked for. What is left out does not matter. */
export interface ActivityFilter {
  /** To the letter: "FT8" */
  readonly label?: string;
  readonly kind?: ActivityKind;
  /** Wavelength name: "40m" */
  readonly band?: string;
  /** What is common there: an ITU Region includes what the world shares, a country what its Region shares */
  readonly region?: ActivityRegion;
}

/**
 * The activities that meet all that is asked, ascending in frequency; none where nothing does.
 *
 * @example
 * ```ts
 * import { activitiesFor } from "@feedpoint/core";
 *
 * activitiesFor({ label: "FT8", band: "20m" }).map(({ frequencyHz }) => frequencyHz); // → [14074000]
 * ```
 */
export function activitiesFor({ label, kind, band, region }: ActivityFilter): readonly Activity[] {
  const places = region === undefined ? null : placesAround(region);
  return ACTIVITIES.filter(
    (entry) =>
      (label === undefined || entry.label === label) &&
      (kind === undefined || entry.kind === kind) &&
      (band === undefined || entry.band === band) &&
      (places === null || entry.regions.some((place) => places.includes(place))),
  );
}

/** ITU Region of each country that has customs of its own here */
const REGION_OF: Readonly<Partial<Record<ActivityRegion, ActivityRegion>>> = { us: "2", jp: "3", uk: "1" };

function placesAround(region: ActivityRegion): readonly ActivityRegion[] {
  const around = REGION_OF[region];
  return around === undefined ? ["all", region] : ["all", around, region];
}

/** The same data, frozen to the bottom. */
function frozen<Data extends object>(data: Data): Data {
  const values: readonly unknown[] = Object.values(data);
  for (const value of values) if (typeof value === "object" && value !== null) frozen(value);
  return Object.freeze(data);
}
