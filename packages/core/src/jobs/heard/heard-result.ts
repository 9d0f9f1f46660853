import type { Finding } from "../../sweep/finding.js";
import type { HeardComparison } from "./compare.js";
import type { HeardWhere } from "./where.js";

/** How a deployment was heard on a band: described, and not judged. */
export interface HeardOnBand {
  readonly deployment: string;
  readonly band: string;
  readonly reports: number;
  readonly receivers: number;
  /** Of the reports in dB, beside the stated power where it was; null where there is none */
  readonly medianSnrDb: number | null;
  /** The farthest receiver whose place is known, km */
  readonly farthestKm: number | null;
  /** ISO 8601, UTC */
  readonly first: string;
  readonly last: string;
}

/** Who heard what, and what that tells of two deployments. */
export interface HeardResult {
  readonly schema: "feedpoint/heard@1";
  /** The station whose reports these are */
  readonly transmitter: string;
  readonly deployments: readonly HeardOnBand[];
  readonly comparisons: readonly HeardComparison[];
  readonly where: readonly HeardWhere[];
  readonly findings: readonly Finding[];
  readonly cautions: readonly string[];
  readonly totals: {
    /** Reports of the own station, each once */
    readonly reports: number;
    /** Of these outside all times that the log states */
    readonly outside: number;
    /** Reports of other stations, which prove who was listening */
    readonly ofOthers: number;
    /** Reports that were there twice */
    readonly repeated: number;
    /** Reports of the own station without a ratio in dB, which are counted and not compared */
    readonly withoutRatio: number;
  };
}
