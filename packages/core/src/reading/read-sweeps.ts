import { median } from "simple-statistics";
import { demand } from "../input/argument.js";
import { bytesOf, type FileContent } from "../input/file-content.js";
import { ReadError } from "../input/read-error.js";
import { type Finding, finding } from "../sweep/finding.js";
import { isOverStretch, type Reading } from "../sweep/reading.js";
import { type Sweep, type SweepDetails, scalarSweep, vectorSweep } from "../sweep/sweep.js";
import { readDelimited, readDelimitedTogether } from "./delimited/delimited.js";
import { readJson, readOtherForm } from "./forms/other-forms.js";
import { notesIn, readNotes } from "./notes/spot-readings.js";
import { checkReadOptions } from "./options/check-options.js";
import type { ReadOptions } from "./options/read-options.js";
import { arrangePoints, type Points, pick } from "./points/arrange.js";
import type { LineLedger } from "./points/line-ledger.js";
import type { ReadPoints } from "./points/read-points.js";
import { notedRounding } from "./points/rounding.js";
import { takenAtFrom } from "./text/taken-at.js";
import { type SourceText, sourceText } from "./text/text.js";
import { touchstoneSigns } from "./touchstone/signs.js";
import { readTouchstone } from "./touchstone/touchstone.js";

/**
 * Reads the sweeps that a file holds: Touchstone or delimited text, whichever its content is.
 *
 * @param bytes the file as it lies on the disk, or its text; not changed and not kept
 * @param options the file's name, and what the user says about it
 * @returns at least one sweep, each checked, in ascending frequency and frozen
 * @throws ReadError with file, line, what was found and what to do, for anything that cannot be read with confidence
 * @throws TypeError for bytes that are none, and for an option that is not what it must be
 * @example
 * ```ts
 * import { ReadError, readSweeps } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps("# MHz S RI R 50\n7.0 0.5 0\n7.1 0.1 0\n7.2 0.5 0\n", { fileName: "mooring.s1p" });
 * sweep.label; // → "mooring.s1p"
 * Array.from(sweep.reflectionMagnitude); // → [0.5, 0.1, 0.5]
 *
 * let code = "none";
 * try {
 *   readSweeps("Dear diary, no numbers today.");
 * } catch (error) {
 *   if (error instanceof ReadError) code = error.code;
 * }
 * code; // → "no-data"
 * ```
 */
export function readSweeps(bytes: FileContent, options: ReadOptions = {}): [Sweep, ...Sweep[]] {
  checkReadOptions(options);
  const file = options.fileName ?? "input";
  const text = sourceText(bytesOf(bytes, "bytes"), file);
  return sweepsFrom(readPoints(text, options), text, options);
}

/**
 * Tells what became of each line of a file of delimited text or notes: how many are data, header and comments, and each that is
 * left out, with the reason.
 *
 * @param bytes as of {@link readSweeps}
 * @returns null for Touchstone, and for a table in another form than rows of cells (JSON, names and values)
 * @throws ReadError and TypeError as {@link readSweeps}
 * @example
 * ```ts
 * import { lineLedger } from "@feedpoint/core";
 *
 * const ledger = lineLedger("MHz,SWR\n7.0,2.1\n7.1,1.5\nrain came,\n7.2,1.8\n");
 * ledger?.data; // → 3
 * ledger?.leftOut[0]?.line; // → 4
 * ```
 */
export function lineLedger(bytes: FileContent, options: ReadOptions = {}): LineLedger | null {
  checkReadOptions(options);
  const text = sourceText(bytesOf(bytes, "bytes"), options.fileName ?? "input");
  return readPoints(text, options).ledger?.() ?? null;
}

/**
 * Reads one sweep whose parts lie in several files, one quantity each: dB and phase, real and imaginary, |Z| and angle.
 *
 * @param files two or more of delimited text, with their names
 * @throws ReadError as {@link readSweeps}, and where the files do not list the same frequencies
 * @throws TypeError likewise
 */
export function readCompanions(
  files: readonly { bytes: FileContent; fileName: string }[],
  options: ReadOptions = {},
): [Sweep, ...Sweep[]] {
  checkReadOptions(options);
  demand(Array.isArray(files) && files.length > 1, "files", "a list of two files or more, { bytes, fileName }", files);
  const texts = files.map(({ bytes, fileName }, i) => sourceText(bytesOf(bytes, `files[${i}].bytes`), fileName));
  const name = files.map(({ fileName }) => fileName).join("+");
  return sweepsFrom(readDelimitedTogether(texts, { ...options, fileName: name }), texts[0] as SourceText, {
    ...options,
    fileName: name,
  });
}

function readPoints(text: SourceText, options: ReadOptions): ReadPoints {
  if (isMeantAsTouchstone(text, options)) return readTouchstone(text, options);
  const json = readJson(text, options);
  if (json !== null) return json;
  const notes = notesIn(text, "bands");
  if (notes !== null) return readNotes(notes, text, options);
  try {
    return readDelimited(text, options);
  } catch (error) {
    if (!(error instanceof ReadError)) throw error;
    // Frequencies with an SWR behind them are a table where they can be read as one, and else notes.
    const spots = notesIn(text, "all");
    const read = spots === null ? readOtherForm(text, options) : readNotes(spots, text, options);
    if (read === null) throw error;
    return read;
  }
}

function sweepsFrom(read: ReadPoints, text: SourceText, options: ReadOptions): [Sweep, ...Sweep[]] {
  const file = options.fileName ?? "input";
  const findings: Finding[] =
    text.encoding === "UTF-8" ? [] : [finding("info", "encoding", { encoding: text.encoding })];
  findings.push(...read.findings);
  const arranged = arrangeSeries(read, findings);
  findings.push(...seriesUntold(arranged, findings));
  const comments = read.comments.filter((comment) => comment !== "");
  const noted = notedRounding(comments);
  const sweeps = arranged.map((points, index) => {
    if (points.frequencyHz.length === 0) {
      throw new ReadError({
        code: "no-data",
        file,
        found: "no row has a frequency above 0 Hz",
        expected: "frequencies in the first column",
      });
    }
    const areSpots = isSpots(points);
    const number = arranged.length > 1 ? ` (sweep ${index + 1} of ${arranged.length})` : "";
    return build(
      points,
      {
        label: baseName(file) + number,
        source: { file, format: read.format, description: read.description, comments },
        takenAt: takenAtFrom(comments, options.fileName),
        referenceOhms: read.referenceOhms,
        continuity: areSpots ? "spots" : "curve",
        repeatNoise: points.repeatNoise,
        rounding: Math.max(points.rounding.usual, noted.usual),
        greatestRounding: Math.max(points.rounding.greatest, noted.greatest),
        findings: [...findings, ...findingsAbout(points, areSpots, read.readings?.[index])],
      },
      read.readings?.[index],
    );
  });
  // Points are arranged into one set at least.
  return sweeps as [Sweep, ...Sweep[]];
}

/** The points of each series, in ascending order; of a file without any, of each sweep that their order tells. */
function arrangeSeries({ points, series }: ReadPoints, findings: Finding[]): readonly Points[] {
  if (!series) return arrangePoints(points, findings);
  return series.names.flatMap((_, index) => {
    const rows = [...series.of.keys()].filter((row) => series.of[row] === index);
    return rows.length === 0 ? [] : arrangePoints(pick(points, rows), findings);
  });
}

/** Two sweeps of the same frequencies in one file, with nothing that tells them apart: before and after, or two antennas. */
function seriesUntold(arranged: readonly Points[], said: readonly Finding[]): readonly Finding[] {
  const [first, second] = arranged;
  if (first === undefined || second === undefined || said.some(({ code }) => code === "series-told-apart")) return [];
  const frequencies = new Set(first.frequencyHz);
  const shared = second.frequencyHz.filter((frequency) => frequencies.has(frequency)).length;
  return 2 * shared > second.frequencyHz.length
    ? [finding("caution", "series-untold", { count: arranged.length }, { line: second.line[0] as number })]
    : [];
}

/** The content decides; a name like antenna.s1p only settles what numbers without any header are. */
function isMeantAsTouchstone(text: SourceText, options: ReadOptions): boolean {
  const signs = touchstoneSigns(text);
  if (signs !== "numbers-first" || options.columns !== undefined) return signs === "touchstone";
  return /\.(s\d+p|ts)$/i.test(options.fileName ?? "");
}

function build(points: Points, details: SweepDetails, readings: readonly Reading[] | undefined): Sweep {
  const { frequencyHz, reflectionMagnitude, reflectionReal, reflectionImaginary } = points;
  return reflectionReal === null || reflectionImaginary === null
    ? scalarSweep(details, { frequencyHz, reflectionMagnitude }, points.ceiling, readings)
    : vectorSweep(details, { frequencyHz, reflectionReal, reflectionImaginary });
}

/** A handful of readings this far apart, as a share of their frequency, is no curve (our own choice). */
const MOST_SPOTS = 12;
const SPOT_STEP = 0.05;

function isSpots({ frequencyHz, areSpots }: Points): boolean {
  if (areSpots) return true;
  if (frequencyHz.length < 2 || frequencyHz.length > MOST_SPOTS) return false;
  const steps = Array.from(frequencyHz.subarray(1), (value, i) => value / (frequencyHz[i] as number) - 1);
  return median(steps) > SPOT_STEP;
}

/** Noise and calibration lift the edges of a sweep beyond total reflection, not as much of it as this. */
const MOST_BEYOND_SHARE = 0.5;

function findingsAbout(
  { frequencyHz, reflectionMagnitude, line }: Points,
  areSpots: boolean,
  readings: readonly Reading[] = [],
): readonly Finding[] {
  const findings: Finding[] = [];
  let beyond = 0;
  let first = -1;
  for (let i = 0; i < reflectionMagnitude.length; i++) {
    if ((reflectionMagnitude[i] as number) <= 1) continue;
    beyond++;
    if (first < 0) first = i;
  }
  if (beyond > 0) {
    const areMost = beyond > MOST_BEYOND_SHARE * reflectionMagnitude.length;
    const params = { count: beyond, points: reflectionMagnitude.length, areMost };
    findings.push(
      finding(areMost ? "problem" : "caution", "beyond-total-reflection", params, { line: line[first] as number }),
    );
  }
  const spots = frequencyHz.length - readings.filter(isOverStretch).length;
  if (areSpots && spots > 0) {
    findings.push(finding("caution", "spot-readings", { count: spots }));
  }
  if (frequencyHz.length === 1 && spots === 1) {
    findings.push(finding("caution", "single-point", {}));
  }
  return findings;
}

const baseName = (file: string) =>
  file
    .split("+")
    .map((part) => part.replace(/^.*[/\\]/, ""))
    .join("+");
