import type { LeftOut } from "./left-out.js";

/** Somebody heard somebody: one reception report. */
export interface ReceptionReport {
  /** When, ms since 1970, UTC */
  readonly time: number;
  /** Call sign of the station that was heard, in upper case */
  readonly transmitter: string;
  /** Call sign of the one that heard it */
  readonly receiver: string;
  readonly transmitterLocator: string | null;
  readonly receiverLocator: string | null;
  /** By its usual name, "40m" */
  readonly band: string;
  /** In upper case, as logs name it: "CW", "FT8"; null where it was not stated */
  readonly mode: string | null;
  /** Signal over noise in the bandwidth that the mode is reported in, dB; null where only words or an RST were given */
  readonly snrDb: number | null;
  /** As the transmitter claims, W; null where it was not stated */
  readonly powerW: number | null;
}

/** What a file of reports holds. */
export interface ReadReports {
  readonly reports: readonly ReceptionReport[];
  /** Lines or records that are no report, with the reason of each */
  readonly leftOut: readonly LeftOut[];
  /** How the file was understood */
  readonly description: string;
}
