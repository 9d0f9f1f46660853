import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../sweep/reflection.js";
import { readCell } from "../delimited/cells.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import type { ReadPoints } from "../points/read-points.js";
import { NO_ROUNDING } from "../points/rounding.js";
import type { SourceText } from "../text/text.js";
import { linesOf } from "../text/text-lines.js";

/** A band and an SWR, as one writes them down by hand: "40m 1.5", "20 m; SWR 2,1:1". */
const READING =
  /^\s*"?(\d{1,4}) ?(c?m)"?\s*[,;:=\s]\s*(?:v?swr|ros|roe|tos|swv)?\s*[:=]?\s*([>≥]=?\s*)?([\d.,]+|∞|inf\w*|off\s?scale)(?:\s*:\s*1)?\s*$/i;
const MOST_LINES = 60;

/** Whether a text is nothing but a handful of readings by band (and perhaps a line of words above them). */
export function isBandReadings(text: SourceText): boolean {
  if (text.bytes.length > 4096) return false;
  const lines = contentOf(text);
  const readings = lines.filter((line) => READING.test(line));
  return readings.length > 0 && lines.length <= MOST_LINES && readings.length >= lines.length - 1;
}

/**
 * Reads SWR noted by band. Such a reading has no frequency of its own; it is put at the middle of its band, and said.
 *
 * @throws ReadError for a band that is not known
 */
export function readBandReadings(text: SourceText, options: ReadOptions): ReadPoints {
  const findings: Finding[] = [finding("caution", "spot-band", {})];
  const rows = contentOf(text).flatMap((line, index) => {
    const match = READING.exec(line);
    if (match === null) {
      // Words above the readings head them; anything below should have been one.
      if (index > 0) findings.push(leftOut(line, index + 1));
      return [];
    }
    const [, number = "", unit = "", bound, printed = ""] = match;
    const name = `${number}${unit.toLowerCase()}`;
    const band = NAMED_BANDS.find((candidate) => candidate.band === name);
    const swr = swrOf(printed);
    if (band === undefined || !(swr >= 1)) {
      throw new ReadError({
        code: "bad-row",
        file: text.file,
        line: index + 1,
        found: `${quote(line.trim())} is no reading`,
        expected: "a band that all ITU Regions know, and an SWR of 1 or more",
      });
    }
    const magnitude = reflectionMagnitudeFromSwr(swr);
    return [
      {
        band: name,
        frequencyHz: (band.lowHz + band.highHz) / 2,
        magnitude,
        isAtLeast: bound !== undefined,
        line: index + 1,
      },
    ];
  });
  const readings = highestOf(rows, findings);
  return {
    format: "delimited",
    points: {
      frequencyHz: Float64Array.from(readings, ({ frequencyHz }) => frequencyHz),
      reflectionMagnitude: Float64Array.from(readings, ({ magnitude }) => magnitude),
      reflectionReal: null,
      reflectionImaginary: null,
      line: Uint32Array.from(readings, ({ line }) => line),
      ceiling: leastBound(readings, findings),
      areSpots: true,
      repeatNoise: null,
      rounding: NO_ROUNDING,
    },
    referenceOhms: options.referenceOhms ?? DEFAULT_REFERENCE_OHMS,
    description: "readings of SWR by band",
    comments: [],
    findings,
  };
}

interface BandReading {
  readonly band: string;
  readonly frequencyHz: number;
  readonly magnitude: number;
  readonly isAtLeast: boolean;
  readonly line: number;
}

/** Of readings of one band, which may be from both its ends, the highest counts. */
function highestOf(readings: readonly BandReading[], findings: Finding[]): readonly BandReading[] {
  const highest = new Map<string, BandReading>();
  for (const reading of readings) {
    const other = highest.get(reading.band);
    if (other === undefined || reading.magnitude > other.magnitude) highest.set(reading.band, reading);
    if (other === undefined) continue;
    const params = { band: reading.band, count: 1, apart: null };
    findings.push(finding("caution", "frequency-repeated", params, { line: reading.line }));
  }
  return [...highest.values()];
}

/** ρ from which on a reading means "at least": the least that is marked so. */
function leastBound(readings: readonly BandReading[], findings: Finding[]): number | null {
  const bounds = readings.filter(({ isAtLeast, magnitude }) => isAtLeast && magnitude < 1);
  if (bounds.length === 0) return null;
  const least = Math.min(...bounds.map(({ magnitude }) => magnitude));
  findings.push(finding("caution", "saturated", { name: null, ceiling: swrFromReflectionMagnitude(least) }));
  return least;
}

const leftOut = (line: string, number: number): Finding =>
  finding("caution", "row-left-out", { firstLine: number, count: 1, text: quote(line.trim()) }, { line: number });

/** An SWR as printed; infinite where the instrument's scale ended or it says so, NaN where it is none. */
function swrOf(printed: string): number {
  if (/^[^\d]/.test(printed)) return Number.POSITIVE_INFINITY;
  const cell = readCell(printed, printed.includes(",") ? "comma" : "point");
  return cell.kind === "number" ? cell.value : Number.NaN;
}

function contentOf(text: SourceText): readonly string[] {
  const lines = linesOf(text);
  return lines.texts(0, Number.POSITIVE_INFINITY).filter((line) => line.trim() !== "");
}
