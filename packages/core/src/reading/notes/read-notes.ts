import { NAMED_BANDS } from "../../facts/band-names.js";
import { quote } from "../../input/read-error.js";
import { grouped } from "../../numbers/grouped.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Reading } from "../../sweep/reading.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import type { ReadPoints } from "../points/read-points.js";
import { NO_ROUNDING } from "../points/rounding.js";
import { lackPoints, slippedAmong } from "../quantities/plausibility.js";
import { referenceOf, referenceRead } from "../quantities/reference-statement.js";
import type { SourceText } from "../text/text.js";
import { linesOf, type TextLines } from "../text/text-lines.js";
import { contradicted } from "./contradicted.js";
import { bandTitle, type NotedReading } from "./note-line.js";
import { liesIn } from "./note-place.js";
import { mayBeReading, type Notes } from "./notes-in.js";

/** Reads notes of SWR: a reading a place, which a sample at its middle stands for with the highest SWR. */
export function readNotes({ groups, words, partly, first }: Notes, text: SourceText, options: ReadOptions): ReadPoints {
  const findings: Finding[] = [];
  const lines = linesOf(text);
  const referenceOhms =
    options.referenceOhms ??
    statedReference([...words.map((note) => note.text), ...linesInOhms(lines)], text.file, findings);
  const rows = groups.flatMap(({ readings }) => readings);
  if (rows.some(({ isAtFrequency }) => !isAtFrequency)) findings.push(finding("info", "spot-band", {}));
  // Words above the readings head them, as a band does its frequencies; anything below should have been one.
  const isHeading = (line: string) => {
    const band = bandTitle(line);
    return band !== null && rows.some((row) => row.isAtFrequency && liesIn(row.lowHz, band));
  };
  const lost = words.filter(
    ({ text: line, line: number }) =>
      HAS_CONTENT.test(line) &&
      !isHeading(line) &&
      (number > first || mayBeReading(line) || PAIR.test(line) || AT_FREQUENCY.test(line)),
  );
  findings.push(...partly.map(({ text: line, line: number }) => leftOut(line, number)));
  const worded = groups.flatMap(({ readings }) => readings).filter(({ isWorded }) => isWorded);
  if (worded[0] !== undefined) {
    const { line } = worded[0];
    findings.push(
      finding(
        "caution",
        "cells-remarked",
        {
          text: quote(lines.text(line - 1).trim()),
          count: worded.length,
        },
        { line },
      ),
    );
  }
  const spots = rows.filter(({ isAtFrequency }) => isAtFrequency).toSorted((a, b) => a.lowHz - b.lowHz);
  const [swr, hz] = [spots.map((row) => Math.max(...row.swr)), spots.map((row) => row.lowHz)];
  findings.push(...slippedAmong(Float64Array.from(swr), Float64Array.from(hz), "SWR"));
  findings.push(...contradicted(rows, lines));
  const told = rows.flatMap(({ swr }) => swr);
  if (told.length > 1 && lackPoints(told)) findings.push(finding("caution", "readings-absurd", { what: "swr-whole" }));
  findings.push(...lost.map(({ text: line, line: number }) => leftOut(line, number)));
  const names = groups.map(({ name }) => name);
  if (names.length > 1) findings.push(finding("info", "series-told-apart", { column: "the notes", values: names }));
  const perGroup = groups.map(({ readings }) => readingsByPlace(readings, findings));
  const readings = perGroup.flat();
  return {
    format: "delimited",
    series:
      names.length > 1
        ? { names, of: Uint32Array.from(perGroup.flatMap((group, index) => group.map(() => index))) }
        : null,
    readings: perGroup.map((group) => group.map(({ line: _, ...reading }) => reading)),
    points: {
      frequencyHz: Float64Array.from(readings, ({ lowHz, highHz }) => (lowHz + highHz) / 2),
      reflectionMagnitude: Float64Array.from(readings, ({ swrHigh }) => reflectionMagnitudeFromSwr(swrHigh)),
      reflectionReal: null,
      reflectionImaginary: null,
      line: Uint32Array.from(readings, ({ line }) => line),
      ceiling: leastBound(readings, findings),
      areSpots: true,
      repeatNoise: null,
      rounding: NO_ROUNDING,
    },
    kindOf: (line) =>
      lost.some((note) => note.line === line) ? "no-reading" : rows.some((row) => row.line === line) ? "data" : null,
    referenceOhms,
    description: "readings of SWR by hand",
    comments: [],
    findings,
  };
}

/** A rule between rows has none. */
const HAS_CONTENT = /[\p{L}\d]/u;
/** A frequency and what may be its SWR: "CB 27.205 1.4". */
const PAIR = /(?<![\d.])\d+\.\d+[\s:=-]+\d+(?:\.\d+)?\s*$/;

/** "(1) 28.0 MHz, ROS 1.46", "27.0 MHz: SWR 2.3 to 3.0" */
const AT_FREQUENCY = /\d ?[kMG]?Hz[^\d]{1,40}\d+[.,]\d+(?:[^\d]{1,10}\d+[.,]\d+)?\W*$/i;

/** Lines with readings may state the reference as well: "7.1 MHz 1.5 (Z0 = 75 ohm)". */
const linesInOhms = (lines: TextLines): readonly string[] =>
  lines.texts(0, Number.POSITIVE_INFINITY).filter((line) => /ohm|Ω|\u2126|(?<!\p{L})z[0o₀]/iu.test(line));

function statedReference(texts: readonly string[], file: string, findings: Finding[]): number {
  const stated = referenceOf(texts, file);
  if (!stated?.isSure) return DEFAULT_REFERENCE_OHMS;
  findings.push(referenceRead(stated));
  return stated.ohms;
}

/** A reading, and the line that it stands in. */
type ReadingInLine = Reading & { readonly line: number };

/** Several readings of one place, which may be from both ends of a band, are one with their range. */
function readingsByPlace(
  rows: readonly (NotedReading & { readonly line: number })[],
  findings: Finding[],
): readonly ReadingInLine[] {
  return [...grouped(rows, ({ place }) => place)].map(([band, noted]) => {
    if (noted.length > 1 || noted.some(({ isRange }) => !isRange)) {
      const params = { band, count: 1, apart: null };
      findings.push(finding("caution", "frequency-repeated", params, { line: noted.at(-1)?.line ?? 0 }));
    }
    const highest = noted.reduce((a, b) => (Math.max(...b.swr) > Math.max(...a.swr) ? b : a));
    const { place, isAtFrequency, lowHz, highHz, isAtLeast, line } = highest;
    const all = noted.flatMap(({ swr }) => swr);
    const isBand = !isAtFrequency && NAMED_BANDS.some(({ band }) => band === place);
    return {
      band: isBand ? place : null,
      lowHz,
      highHz,
      swrLow: Math.min(...all),
      swrHigh: Math.max(...all),
      isAtLeast,
      line,
    };
  });
}

/** ρ from which on a reading means "at least": the least that is marked so. */
function leastBound(readings: readonly ReadingInLine[], findings: Finding[]): number | null {
  const bounds = readings.flatMap(({ isAtLeast, swrHigh }) =>
    isAtLeast && Number.isFinite(swrHigh) ? [reflectionMagnitudeFromSwr(swrHigh)] : [],
  );
  if (bounds.length === 0) return null;
  const least = Math.min(...bounds);
  findings.push(finding("caution", "saturated", { name: null, ceiling: swrFromReflectionMagnitude(least) }));
  return least;
}

const leftOut = (line: string, number: number): Finding =>
  finding("caution", "row-left-out", { firstLine: number, count: 1, text: quote(line.trim()) }, { line: number });
