import type { ModeName } from "../mode-names.js";

/** What a band plan says, as plain data. The schema that checks one from a file stands in band-plan-schema.ts. */
export interface BandPlan {
  /** Lower case, without blanks: "itu-r1" */
  readonly id: string;
  /** The ITU Region (1, 2, 3) or country that the plan is for; absent where it is for several */
  readonly region?: Region;
  readonly title: string;
  /** allocation: what a treaty or regulator sets aside; licence-privileges: by class; band-plan: usage agreed among amateurs */
  readonly kind: "allocation" | "licence-privileges" | "band-plan";
  /** Who set it out: a treaty, a regulator, a society */
  readonly authority: string;
  /** Its date or version, as the source calls it */
  readonly edition: string;
  /** What it was taken from as a whole */
  readonly source: { readonly title: string; readonly section?: string; readonly url?: string | null };
  /** Whether the plan was read from a source, or rests on memory. Each segment says the same of itself. */
  readonly confirmed: boolean;
  /** Licence classes, the one with the most privileges first; absent where the plan knows none */
  readonly classes?: readonly string[];
  /** What a reader should know of the plan, in sentences */
  readonly notes: readonly string[];
  /** What its segments refer to by id */
  readonly sources: readonly PlanSource[];
  /** Ascending, not overlapping */
  readonly bands: readonly PlanBand[];
}

/** An ITU Region, or a country with customs of its own. */
export type Region = "1" | "2" | "3" | "us" | "jp" | "uk";

/** A source that a number of a plan, or an activity, comes from. */
export interface PlanSource {
  readonly id: string;
  readonly title: string;
  /** Where in it */
  readonly section?: string;
  readonly edition?: string;
  /**
   * primary: the authority's own text; reprint: a copy of it; retyped: typed again or quoted; summary: news;
   * practice: what operators do; memory: nothing was read
   */
  readonly kind: string;
  /** What of it was read */
  readonly read?: string;
  readonly url?: string;
}

/** A band of a plan, divided into segments. */
export interface PlanBand {
  /** Wavelength name: "40m" */
  readonly band: string;
  /** Outer edges, Hz */
  readonly lowHz: number;
  readonly highHz: number;
  /** Where in the source */
  readonly section?: string;
  readonly note?: string;
  /** Ascending, not overlapping; frequencies between them are not available */
  readonly segments: readonly PlanSegment[];
}

/**
 * What is sent, as regulators group it: Morse by hand or machine, digital signals, voice, pictures, and Morse that modulates
 * a tone. United States: 47 CFR 97.3(c).
 */
export type Emission = "cw" | "data" | "phone" | "image" | "mcw";

/** A power limit; `basis` says where it is measured: at the transmitter (pep, mean) or as radiated (erp, eirp). */
export interface PowerLimit {
  /** Above 0; over a half-wave dipole for erp, over an isotropic radiator for eirp */
  readonly watts: number;
  /**
   * pep: peak envelope, at the transmitter; mean: mean power or carrier, there; erp and eirp: transmitter less line, times the
   * gain of the antenna
   */
  readonly basis: "pep" | "mean" | "erp" | "eirp";
}

/** What some licence classes may do in a segment. */
export interface Grant {
  /** One or more of the classes of the plan */
  readonly classes: readonly string[];
  /** Absent where the plan does not say what may be sent */
  readonly emissions?: readonly Emission[];
  /** Absent where the plan sets none for them */
  readonly maxPower?: PowerLimit;
  /** Holds instead of `maxPower` for voice in a single sideband, where the plan sets another limit for it */
  readonly sidebandMaxPower?: PowerLimit;
  /** Holds beside `maxPower` where that is radiated power, W */
  readonly alsoMaxTransmitterWattsPep?: number;
  /** false: rests on one secondary page, while the segment itself is confirmed; as the segment where absent */
  readonly confirmed?: boolean;
  readonly note?: string;
}

/** A piece of a band with one use. Low edge inclusive, high edge exclusive, but for the band's own top edge. */
export interface PlanSegment {
  readonly lowHz: number;
  readonly highHz: number;
  /** What it is set aside for, in the words of the plan; "cw", "beacon" and "guard" are understood */
  readonly use: string;
  /** By class; absent where the plan does not tell classes apart */
  readonly grants?: readonly Grant[];
  /** What may be sent where there are no grants; absent where the plan does not say */
  readonly emissions?: readonly Emission[];
  /** Modes that a rule bars there although what they count as is granted */
  readonly excludedModes?: readonly ModeName[];
  /** A signal may not be wider, Hz */
  readonly maxBandwidthHz?: number;
  readonly maxPower?: PowerLimit;
  /** What holds in some places only, which are named: less power, or none; told as a caution */
  readonly somewhereLess?: string;
  /** Primary, secondary or shared, in the words of the plan */
  readonly status?: string;
  /** Middle of a channel, Hz */
  readonly centreHz?: number;
  /** What an upper sideband transmitter shows for that channel, Hz */
  readonly upperSidebandDialHz?: number;
  /** Whether it was read from a source, or rests on memory */
  readonly confirmed: boolean;
  /** Ids of the plan's sources */
  readonly sources: readonly string[];
  readonly note?: string;
}

/** What of a band is to be judged: its outer edges and the pieces that may be used between them. */
export interface UsableBand {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  /** Ascending, not adjoining */
  readonly pieces: readonly { readonly lowHz: number; readonly highHz: number }[];
  /** Those of the plan that may be used, ascending */
  readonly segments: readonly PlanSegment[];
}
