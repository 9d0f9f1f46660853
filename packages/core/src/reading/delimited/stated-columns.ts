import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import { guessedReading } from "../quantities/column-names.js";
import type { ColumnNames } from "./heading-line.js";
import type { Preamble } from "./preamble.js";
import type { TableText } from "./table-text.js";
import { refuseTransmission } from "./transmission.js";

/** What columns are stated to hold before their rows are read. */
export interface StatedColumns {
  readonly roles: readonly ColumnRole[];
  /** Place of the frequencies among them */
  readonly index: number;
  readonly frequencyUnit: FrequencyUnit | null;
}

/**
 * What the columns hold, by the user's word, by the header or by the preamble.
 *
 * @throws ReadError where nothing tells it, no frequency is among them, or the preamble says that it is no reflection
 */
export function statedColumns(
  header: ColumnNames | null,
  preamble: Preamble,
  text: TableText,
  options: ReadOptions,
  findings: Finding[],
): StatedColumns {
  const roles = options.columns ?? header?.roles ?? rolesFromPreamble(preamble, text.dialect.columns);
  if (roles === null) throw withoutHeader(text);
  const { file } = text;
  refuseTransmission(preamble.comments, file);
  const index = roles.findIndex(({ quantity }) => quantity === "frequency");
  const frequency = roles[index];
  if (frequency === undefined) throw withoutFrequency(file);
  if (frequency.isUnknownUnit && options.frequencyUnit === undefined) {
    throw unknownUnit(header?.names[index] ?? "", file);
  }
  const above = preamble.frequencyUnit;
  if (above !== null && frequency.frequencyUnit != null && above !== frequency.frequencyUnit) {
    const params = { where: "header", unit: frequency.frequencyUnit, given: above } as const;
    findings.push(finding("caution", "unit-stated", params));
  }
  return { roles, index, frequencyUnit: frequency.frequencyUnit ?? above };
}

/** What the columns hold where no header stands over them; null where the preamble does not say enough. */
function rolesFromPreamble({ frequencyUnit, readings }: Preamble, columns: number): readonly ColumnRole[] | null {
  if (frequencyUnit === null || readings === null || columns < readings.length + 1) return null;
  const isSure = columns === readings.length + 1 || readings.length > 1;
  return isSure ? [{ quantity: "frequency", frequencyUnit }, ...readings] : null;
}

export const withoutFrequency = (file: string): ReadError =>
  new ReadError({
    code: "no-frequency",
    file,
    found: "no column holds a frequency",
    remedy: "Say which one does with --columns.",
  });

/** A unit in a header's name that is none of a frequency's. */
const unknownUnit = (name: string, file: string): ReadError =>
  new ReadError({
    code: "ambiguous",
    file,
    found: `the unit of ${quote(name)} is not known`,
    expected: "Hz, kHz, MHz or GHz",
    remedy: "If it is one of these, say which with --unit.",
  });

/** Numbers that nothing says what they are. */
function withoutHeader({ lines, dialect, file }: TableText): ReadError {
  const example = lines.text(dialect.firstDataLine).trim();
  const above = dialect.firstDataLine > 0 ? lines.text(dialect.firstDataLine - 1).trim() : "";
  const header = /\p{L}/u.test(above)
    ? `the line above them, ${quote(above)}, does not name a frequency and a reading`
    : "no header says what they are";
  return new ReadError({
    code: "no-frequency",
    file,
    line: dialect.firstDataLine + 1,
    found: `there are numbers (${quote(example)}), but ${header}`,
    remedy: `If it is a sweep, say what the ${dialect.columns} columns hold, such as --columns frequency:${likelyUnit(example)},${likelyReadings(dialect.columns, above)}`,
  });
}

/** The unit that the first number of a line would have as a frequency of an antenna. */
function likelyUnit(line: string): FrequencyUnit {
  const first = Number.parseFloat(line.replace(",", "."));
  if (first < 1)
    return NAMED_BANDS.some(({ lowHz, highHz }) => first * 1e6 >= lowHz && first * 1e6 <= highHz) ? "MHz" : "GHz";
  if (first >= 100_000) return "Hz";
  return first >= 1000 ? "kHz" : "MHz";
}

const likelyReadings = (columns: number, above: string): string =>
  columns === 2
    ? guessedReading(above)
    : ["r", "x", ...new Array<string>(Math.max(0, columns - 3)).fill("skip")].join(",");
