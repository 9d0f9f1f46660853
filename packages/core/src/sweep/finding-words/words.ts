import { BAND_FINDINGS } from "./of-bands.js";
import { FILE_FINDINGS } from "./of-files.js";
import { JOB_FINDINGS } from "./of-jobs.js";
import { LINE_FINDINGS } from "./of-lines.js";
import { READING_FINDINGS } from "./of-readings.js";
import { REPORT_FINDINGS } from "./of-reports.js";
import { SEASON_FINDINGS } from "./of-season.js";

/** Every kind of finding by its code. Codes do not change their meaning. */
export const FINDING_KINDS = {
  ...FILE_FINDINGS,
  ...READING_FINDINGS,
  ...BAND_FINDINGS,
  ...LINE_FINDINGS,
  ...JOB_FINDINGS,
  ...SEASON_FINDINGS,
  ...REPORT_FINDINGS,
};

/** The code of a finding: a key of {@link FINDING_CODES}. */
export type FindingCode = keyof typeof FINDING_KINDS;

/** What a finding of a code holds beside its code: plain data, units in the names. */
export type FindingParams<Code extends FindingCode = FindingCode> = Code extends FindingCode
  ? Parameters<(typeof FINDING_KINDS)[Code]["words"]> extends [infer Params]
    ? Params
    : Readonly<Record<string, never>>
  : never;

/** Every code that a finding can have, and what it stands for. */
export const FINDING_CODES = Object.fromEntries(
  Object.entries(FINDING_KINDS).map(([code, { meaning }]) => [code, meaning]),
) as Readonly<Record<FindingCode, string>>;
