import type { ModeName, ReadOptions, Tuner } from "@feedpoint/core";

export const FORMATS = ["table", "json", "ndjson", "csv", "markdown"] as const;
export type Format = (typeof FORMATS)[number];

/** What commander hands over, before it is put together with the station file and checked as a whole. */
export interface RawOptions {
  readonly station?: string;
  readonly plan?: string;
  readonly class?: string;
  readonly bands?: readonly string[];
  readonly modes?: readonly ModeName[];
  readonly limit?: number;
  readonly builtInTuner?: number;
  readonly wideRangeTuner?: number;
  readonly format?: Format;
  readonly json?: boolean;
  readonly systemOhms?: number;
  readonly directivity?: number;
  /** false: none, whatever the station file says */
  readonly feedline?: string | false;
  readonly feedlineLength?: number;
  readonly power?: number;
  readonly tuner?: Tuner;
  readonly port?: number;
  readonly referenceOhms?: number;
  readonly delimiter?: ReadOptions["delimiter"];
  readonly decimal?: ReadOptions["decimal"];
  readonly unit?: ReadOptions["frequencyUnit"];
  readonly columns?: ReadOptions["columns"];
  readonly signedReactance?: boolean;
}
