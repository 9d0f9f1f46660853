/** What a band plan says, as plain data. The schema that checks one from a file stands in band-plan-schema.ts. */
export interface BandPlan {
  readonly id: string;
  /** The ITU Region (1, 2, 3) or country that the plan is for; absent where it is for several */
  readonly region?: Region;
  readonly title: string;
  /** allocation: what a treaty or regulator sets aside; licence-privileges: by class; band-plan: usage agreed among amateurs */
  readonly kind: "allocation" | "licence-privileges" | "band-plan";
  readonly authority: string;
  readonly edition: string;
  readonly source: { readonly title: string; readonly section?: string; readonly url?: string | null };
  /** Whether the plan was read from a source, or rests on memory. Each segment says the same of itself. */
  readonly confirmed: boolean;
  /** Licence classes, the one with the most privileges first; absent where the plan knows none */
  readonly classes?: readonly string[];
  readonly notes: readonly string[];
  readonly sources: readonly PlanSource[];
  readonly bands: readonly PlanBand[];
}

/** An ITU Region, or a country with customs of its own. */
export type Region = "1" | "2" | "3" | "us" | "jp" | "uk";

export interface PlanSource {
  readonly id: string;
  readonly title: string;
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

export interface PlanBand {
  /** Wavelength name: "40m" */
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  readonly section?: string;
  readonly note?: string;
  /** Ascending, not overlapping; frequencies between them are not available */
  readonly segments: readonly PlanSegment[];
}

export type Emission = "cw" | "data" | "phone" | "image" | "mcw";

/** A power limit; `basis` says where it is measured: at the transmitter (pep) or as radiated (erp, eirp). */
export interface PowerLimit {
  readonly watts: number;
  readonly basis: "pep" | "erp" | "eirp";
}

export interface Grant {
  readonly classes: readonly string[];
  /** Absent where the plan does not say what may be sent */
  readonly emissions?: readonly Emission[];
  readonly maxPower?: PowerLimit;
  readonly alsoMaxTransmitterWattsPep?: number;
  readonly note?: string;
}

/** A piece of a band with one use. Low edge inclusive, high edge exclusive, but for the band's own top edge. */
export interface PlanSegment {
  readonly lowHz: number;
  readonly highHz: number;
  readonly use: string;
  readonly grants?: readonly Grant[];
  readonly emissions?: readonly Emission[];
  readonly maxBandwidthHz?: number;
  readonly maxPower?: PowerLimit;
  readonly status?: string;
  readonly centreHz?: number;
  readonly upperSidebandDialHz?: number;
  readonly confirmed: boolean;
  readonly sources: readonly string[];
  readonly note?: string;
}

/** What of a band is to be judged: its outer edges and the pieces that may be used between them. */
export interface UsableBand {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  readonly pieces: readonly { readonly lowHz: number; readonly highHz: number }[];
  readonly segments: readonly PlanSegment[];
}
