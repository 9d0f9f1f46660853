import { quote, ReadError } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import { ledgerOf } from "../points/line-ledger.js";
import type { ReadPoints } from "../points/read-points.js";
import { determinationsOf } from "../quantities/assemble.js";
import { guessedColumns } from "../quantities/column-names.js";
import { crossCheck } from "../quantities/cross-check.js";
import { absurdReadings, slippedFrequencies, unlikelyFrequencies } from "../quantities/plausibility.js";
import { type ReferenceStatement, referenceOf, referenceRead } from "../quantities/reference-statement.js";
import { mostPrecise, withResolution } from "../quantities/resolution.js";
import { settleColumns } from "../quantities/settle-columns.js";
import type { SourceText } from "../text/text.js";
import type { DelimitedColumns } from "./delimited-columns.js";
import { pointsOf } from "./points-of.js";
import { transmissionError } from "./preamble.js";
import { readColumns } from "./read-columns.js";

/** Frequencies of companion files may differ by rounding in print. */
const SAME_FREQUENCY = 1e-6;

/**
 * Reads a sweep from delimited text: comma, semicolon, tab or blanks; decimal point or comma; a header that names the
 * columns, or the user's word for what they hold.
 *
 * @throws ReadError where the text holds no sweep, or could mean two different ones
 */
export function readDelimited(text: SourceText, options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  return reflectionFrom(readColumns(text, options, findings), options, findings);
}

/** Reads several texts that each hold one part of the same sweep, at the same frequencies. */
export function readDelimitedTogether(texts: readonly SourceText[], options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  const tables = texts.map((text) => readColumns(text, options, findings));
  const [first, ...others] = tables as [DelimitedColumns, ...DelimitedColumns[]];
  for (const { frequencyHz, file } of others) {
    const isSame =
      frequencyHz.length === first.frequencyHz.length &&
      frequencyHz.every((value, i) => Math.abs(value - at(first.frequencyHz, i)) <= SAME_FREQUENCY * value);
    if (isSame) continue;
    throw new ReadError({
      code: "bad-row",
      file,
      found: `its frequencies are not those of ${first.file}`,
      expected: "the same frequencies in both files",
      remedy: "Export both parts from the same sweep.",
    });
  }
  findings.push(finding("info", "companion-files", { count: tables.length }));
  const together = {
    ...first,
    columns: tables.flatMap(({ columns }) => columns),
    names: tables.flatMap(({ names }) => names),
    comments: tables.flatMap(({ comments }) => comments),
  };
  return reflectionFrom(together, options, findings);
}

/** Turns columns into a reflection: the most finely printed way counts, the others are compared with it. */
function reflectionFrom(table: DelimitedColumns, options: ReadOptions, findings: Finding[]): ReadPoints {
  const { file, frequencyHz } = table;
  const stated = options.referenceOhms === undefined ? referenceOf(table.texts, file) : null;
  const referenceOhms = options.referenceOhms ?? (stated?.isSure ? stated.ohms : DEFAULT_REFERENCE_OHMS);
  const columns = settleColumns(table.columns, { ...table, options }, findings);
  const determinations = determinationsOf(columns, referenceOhms).map(withResolution);
  const chosen = mostPrecise(determinations);
  if (chosen === null) throw withoutReflection(table);
  findings.push(...crossCheck(chosen, determinations, columns, referenceOhms));
  findings.push(
    ...(chosen.isVector ? [] : phaseNotUnderstood(table)),
    ...referenceFindings(stated, options),
    ...absurdReadings(chosen),
    ...slippedFrequencies(frequencyHz),
    ...unlikelyFrequencies(frequencyHz),
  );
  const { points, isKept } = pointsOf(table, chosen, findings);
  return {
    format: "delimited",
    points,
    series: table.series && { ...table.series, of: table.series.of.filter(isKept) },
    ledger: () => {
      const lost = new Set(table.lines.filter((_, row) => !isKept(0, row)));
      return ledgerOf(table.allLines(), (line) => (lost.has(line) ? "no-reading" : table.kindOf(line)));
    },
    referenceOhms,
    description: `delimited text, ${table.dialect}, from ${chosen.title}`,
    comments: table.comments,
    findings,
  };
}

/** Words for a phase or a sign, in names of columns that are not known (from memory). */
const OF_PHASE =
  /phas|fase|faz[ae]|vaihe|фаз|φάσ|位相|相位|위상|(?<!\p{L})(?:ang|angle|arg|winkel|phi|theta|delay|sgn|sign|kut|kąt|úhel|cos|sin)(?!\p{L})|[∠φθϑ]/iu;

/** A column that may hold the phase and was not understood: without it much cannot be told. */
function phaseNotUnderstood({ names, roles }: DelimitedColumns): readonly Finding[] {
  const name = names.find((each, c) => roles[c]?.quantity === "other" && OF_PHASE.test(each));
  return name === undefined ? [] : [finding("caution", "phase-not-understood", { name: quote(name) })];
}

/** Where the reference impedance comes from, unless the user stated it. */
function referenceFindings(stated: ReferenceStatement | null, { referenceOhms }: ReadOptions): readonly Finding[] {
  if (referenceOhms !== undefined) return [];
  if (stated?.isSure) return [referenceRead(stated)];
  const assumed = finding("info", "reference-assumed", { ohms: DEFAULT_REFERENCE_OHMS });
  return stated === null || stated.ohms === DEFAULT_REFERENCE_OHMS
    ? [assumed]
    : [assumed, finding("caution", "reference-mentioned", { text: quote(stated.text.trim()), ohms: stated.ohms })];
}

function withoutReflection({ names, roles, unit, file }: DelimitedColumns): ReadError {
  if (roles.some(({ quantity }) => quantity === "transmission")) {
    return transmissionError(file, "the columns hold");
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
