import type { FeedlineDetails } from "../feedline/feedline.js";
import type { FixedWires } from "../fixed-parts.js";
import type { Grade, GradeShares } from "../grade-criteria.js";
import type { StatedParts } from "../matching/parts-at-hand.js";
import type { ModeName } from "../mode-names.js";
import type { ModeSettings } from "../modes.js";

/** What radios are made for where nothing else is stated, Ω (common practice, no source). */
export const RADIO_OHMS = 50;

/** Which tuner stands between radio and feedline. */
export type Tuner = "none" | "built-in" | "wide-range";

/** How a radio reduces its power as the SWR rises: in full up to `fromSwr`, then evenly down to `toW` at `toSwr` and beyond. */
export interface PowerReduction {
  /** Full power up to here, 1 or more */
  readonly fromSwr: number;
  /** Least power from here on; above `fromSwr` */
  readonly toSwr: number;
  /** The least power, W */
  readonly toW: number;
}

/** Power in watts by mode; what is stated for ssb holds for each sideband and AM, what for data for whatever keys a carrier for long. */
export type PowerByMode = Readonly<Partial<Record<ModeName, number>>>;

/** What the operator states of the radio. */
export interface Radio {
  /** Impedance that it is made for, Ω; 50 where left out */
  readonly ohms?: number;
  /** Greatest output, W PEP: in every mode, or by mode; in a mode that is not named the greatest of those named */
  readonly powerW?: number | PowerByMode;
  /** None where absent */
  readonly tuner?: Tuner;
  /** What its tuner loses where it is used, dB; typical bounds where left out */
  readonly tunerLossDb?: number;
  /** Absent: the power does not depend on the SWR */
  readonly reduction?: PowerReduction;
}

/** What the operator states of the antenna. */
export interface AntennaDetails {
  /** Length of wire that a cut changes, m */
  readonly wireLengthM?: number;
  /** What stays as it is when the wire is cut; absent: not said */
  readonly fixed?: FixedWires;
  /** Gain over an isotropic radiator, dBi; without it a half-wave dipole's 2.15 is taken */
  readonly gainDbi?: number;
  /** What its transformer or choke loses, dB */
  readonly transformerLossDb?: number;
  /** The most that its maker allows, W PEP: for every mode, or by mode */
  readonly ratedPowerW?: number | PowerByMode;
  /** The SWR up to which that holds, 1 or more; 2 where left out */
  readonly ratedUpToSwr?: number;
}

/** What the operator states about licence, equipment and wishes. All of it may be left out. */
export interface Station {
  /** To copy from; not read */
  readonly $examples?: unknown;
  /** Name of a plan or its file, and a class of it */
  readonly licence?: { readonly plan?: string; readonly class?: string };
  /** Bands wanted, as the plan has them; all where absent */
  readonly bands?: readonly string[];
  /** The same as {@link Limits}; the defaults where left out */
  readonly limits?: {
    readonly swr?: number;
    readonly builtInTunerSwr?: number;
    readonly wideRangeTunerSwr?: number;
  };
  /** The modes that are used, each with the operator's own values where they differ from the usual */
  readonly modes?: Readonly<Partial<Record<ModeName, ModeSettings>>>;
  readonly radio?: Radio;
  readonly antenna?: AntennaDetails;
  readonly feedline?: FeedlineDetails;
  /** The same as {@link Instrument} */
  readonly analyser?: {
    readonly directivityDb: number;
    readonly trackingDb?: number;
    readonly sourceMatchDb?: number;
  };
  /** Shares of a band that grades ask for, where they differ from the usual */
  readonly criteria?: Readonly<Partial<Record<Grade, GradeShares>>>;
  /** Where people are, and how long the station is on the air */
  readonly people?: {
    readonly distanceM?: number;
    readonly onAir?: number;
  };
  /** What may be built from */
  readonly parts?: StatedParts;
  /** Where the dip is wanted, by band, Hz; the middle of the band where nothing is said */
  readonly wantedHz?: Readonly<Record<string, number>>;
}
