import { quote, ReadError } from "../../input/read-error.js";
import { once } from "../../numbers/once.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { isReading } from "../options/column-role.js";
import { determinationsOf } from "../quantities/assemble.js";
import { guessedColumns } from "../quantities/column-names.js";
import { crossCheck } from "../quantities/cross-check.js";
import type { NumberColumn } from "../quantities/determination.js";
import { mostPrecise, type Printed, withResolution } from "../quantities/resolution.js";
import type { DelimitedColumns } from "./delimited-columns.js";
import { transmissionError } from "./transmission.js";

/**
 * The most finely printed way in which columns determine a reflection; the others are compared with it.
 *
 * @throws ReadError where there is none
 */
export function determinationThatCounts(
  table: DelimitedColumns,
  columns: readonly NumberColumn[],
  referenceOhms: number,
  findings: Finding[],
): Printed {
  const determinations = determinationsOf(columns, referenceOhms).map(withResolution);
  const chosen = mostPrecise(determinations);
  if (chosen === null) throw withoutReflection(table);
  const ofPhase = chosen.isVector ? [] : phaseNotUnderstood(table);
  findings.push(...crossCheck(chosen, determinations, columns, referenceOhms), ...ofPhase);
  return chosen;
}

/** Words for a phase or a sign, in names of columns that are not known (from memory). */
const ofPhase = once(
  () =>
    /phas|fase|faz[ae]|vaihe|фаз|φάσ|位相|相位|위상|(?<!\p{L})(?:ang|angle|arg|winkel|phi|theta|delay|sgn|sign|kut|kąt|úhel|cos|sin)(?!\p{L})|[∠φθϑ]/iu,
);

/** What is of both signs and no phase: a temperature, a change, a time zone (from memory). */
const ofNoPhase = once(() => /temp|°\s*[CF]|(?<!\p{L})[CF](?!\p{L})|Δ|delta|diff|change|gain|dB|lat|lon|offset|zone/iu);

/** A column that may hold the phase, by its name or by its numbers, and was not understood: without it much cannot be told. */
function phaseNotUnderstood({ names, roles, signed }: DelimitedColumns): readonly Finding[] {
  const name =
    names.find((each, c) => roles[c]?.quantity === "other" && ofPhase().test(each)) ??
    signed.find((each) => !ofNoPhase().test(each));
  return name === undefined ? [] : [finding("caution", "phase-not-understood", { name: quote(name) })];
}

function withoutReflection({ names, roles, columns, unit, file }: DelimitedColumns): ReadError {
  if (roles.some(({ quantity }) => quantity === "transmission")) {
    return transmissionError(file, "the columns hold");
  }
  // A header may have more names than the rows have columns.
  const readings = names.filter((_, c) => isReading(roles[c] ?? { quantity: "other" }));
  if (columns.length === 0 && readings.length > 0) {
    return new ReadError({
      code: "no-data",
      file,
      found: `no row holds a number under ${quote(readings.join(", "))}`,
      expected: "numbers in those columns",
      remedy: "If other columns hold them, say what each holds with --columns, from the left.",
    });
  }
  return new ReadError({
    code: "no-reflection",
    file,
    found:
      names.length > 0
        ? `the header ${quote(names.join(", "))} names no reading that gives a reflection`
        : "no column gives a reflection",
    expected: "SWR, return loss, S11, R and X, or |Z| with its angle",
    remedy: `Say what the columns hold, for example ${guessedColumns(roles, unit, names)}, or name two files with + between them if each holds one part.`,
  });
}
