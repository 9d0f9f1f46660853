/** Loads that are known exactly, texts that hold them, and what is expected of reading such a text. */
import { ReadError, type ReadErrorCode, type ReadOptions, readSweeps, type Sweep } from "@feedpoint/core";
import { expect } from "vitest";
import { type Pair, present } from "./sweeps.js";

/** One point, exact in every form: R and X have few digits, and so has the reflection at 50 ohm. */
export interface LoadPoint {
  /** As printed: "7.05" */
  readonly mhz: string;
  readonly frequencyHz: number;
  readonly ohms: Pair;
  readonly reflection: Pair;
}

const point = (mhz: string, frequencyHz: number, ohms: Pair, reflection: Pair): LoadPoint => ({
  mhz,
  frequencyHz,
  ohms,
  reflection,
});

/** Invented. The reflections were worked out by hand: (25 - 25j - 50) / (25 - 25j + 50) = -0.2 - 0.4j. */
export const LOAD: readonly LoadPoint[] = [
  point("7", 7_000_000, [50, -100], [0.5, -0.5]),
  point("7.05", 7_050_000, [50, -50], [0.2, -0.4]),
  point("7.1", 7_100_000, [25, -25], [-0.2, -0.4]),
  point("7.15", 7_150_000, [75, 0], [0.2, 0]),
  point("7.2", 7_200_000, [25, 25], [-0.2, 0.4]),
  point("7.25", 7_250_000, [100, 50], [0.4, 0.2]),
  point("7.3", 7_300_000, [50, 100], [0.5, 0.5]),
];

/** Invented readings of SWR, and the reflection magnitude (SWR - 1) / (SWR + 1) that each stands for. */
export const SWR_LOAD = [
  { mhz: "7", frequencyHz: 7_000_000, swr: "9", rho: 0.8 },
  { mhz: "7.05", frequencyHz: 7_050_000, swr: "4", rho: 0.6 },
  { mhz: "7.1", frequencyHz: 7_100_000, swr: "1.5", rho: 0.2 },
  { mhz: "7.15", frequencyHz: 7_150_000, swr: "1.25", rho: 1 / 9 },
  { mhz: "7.2", frequencyHz: 7_200_000, swr: "1.5", rho: 0.2 },
  { mhz: "7.25", frequencyHz: 7_250_000, swr: "3", rho: 0.5 },
  { mhz: "7.3", frequencyHz: 7_300_000, swr: "9", rho: 0.8 },
] as const;

/** Rows of the known load as Touchstone has them, in MHz and real and imaginary part. */
export const RI_ROWS: readonly string[] = LOAD.map(({ mhz, reflection }) => `${mhz} ${reflection.join(" ")}`);
/** Rows of the known load as frequency in MHz, R and X. */
export const RX_ROWS: readonly string[] = LOAD.map(({ mhz, ohms }) => `${mhz},${ohms.join(",")}`);
export const SWR_ROWS: readonly string[] = SWR_LOAD.map(({ mhz, swr }) => `${mhz},${swr}`);

/** Rows written with another delimiter, and with decimal commas if wanted. */
export function rewritten(rows: readonly string[], delimiter: string, decimal: "." | "," = "."): string[] {
  return rows.map((row) => row.replace(/[.,]/g, (mark) => (mark === "." ? decimal : delimiter)));
}

export const textOf = (...lines: readonly (string | readonly string[])[]): string => `${lines.flat().join("\n")}\n`;

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Latin-1: every character below 256 is the byte of its own value. */
export const latin1Of = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

export function readAll(content: string | Uint8Array, options: ReadOptions = {}): Sweep[] {
  return readSweeps(typeof content === "string" ? bytesOf(content) : content, options);
}

export function readOne(content: string | Uint8Array, options: ReadOptions = {}): Sweep {
  const sweeps = readAll(content, options);
  expect(sweeps, "number of sweeps").toHaveLength(1);
  return present(sweeps[0], "the sweep");
}

/** Rounding of a handful of operations on numbers of about 1. */
export const ROUNDING = 2e-15;

/** The sweep holds exactly the points given: same frequencies, same complex reflections, same reference. */
export function expectLoad(
  sweep: Sweep,
  { tolerance = 0, points = LOAD, referenceOhms = 50 }: Partial<Expected> = {},
): void {
  expect([...sweep.frequencyHz]).toEqual(points.map(({ frequencyHz }) => frequencyHz));
  expect(sweep.referenceOhms).toBe(referenceOhms);
  if (sweep.kind !== "vector") throw new Error("the sweep has no phase");
  points.forEach(({ mhz, reflection: [real, imaginary] }, i) => {
    const here = `${mhz} MHz`;
    expect(Math.abs((sweep.reflectionReal[i] ?? Number.NaN) - real), here).toBeLessThanOrEqual(tolerance);
    expect(Math.abs((sweep.reflectionImaginary[i] ?? Number.NaN) - imaginary), here).toBeLessThanOrEqual(tolerance);
  });
}

interface Expected {
  readonly tolerance: number;
  readonly points: readonly LoadPoint[];
  readonly referenceOhms: number;
}

/** The sweep is scalar and holds exactly the frequencies and reflection magnitudes given. */
export function expectMagnitudes(
  sweep: Sweep,
  points: readonly { readonly frequencyHz: number; readonly rho: number }[] = SWR_LOAD,
  tolerance = ROUNDING,
  referenceOhms = 50,
): void {
  expect(sweep.kind).toBe("scalar");
  expect([...sweep.frequencyHz]).toEqual(points.map(({ frequencyHz }) => frequencyHz));
  expect(sweep.referenceOhms).toBe(referenceOhms);
  points.forEach(({ frequencyHz, rho }, i) => {
    const difference = Math.abs((sweep.reflectionMagnitude[i] ?? Number.NaN) - rho);
    expect(difference, `${frequencyHz} Hz`).toBeLessThanOrEqual(tolerance);
  });
}

/** Everything that was noticed, as "code" or "code@line", in alphabetical order: nothing missing, nothing too much. */
export function notesOf(sweep: Sweep): string[] {
  return sweep.findings.map(({ code, line }) => (line === undefined ? code : `${code}@${line}`)).sort();
}

/** The message of the one finding with a code. */
export function messageOf(sweep: Sweep, code: string): string {
  const found = sweep.findings.filter((finding) => finding.code === code);
  expect(found, code).toHaveLength(1);
  return present(found[0], code).message;
}

/** The text is refused: with this code, at this line (or none), in one line of message that says what to do. */
export function expectRefusal(
  content: string | Uint8Array,
  expected: { readonly code: ReadErrorCode; readonly line?: number; readonly says: RegExp },
  options: ReadOptions = {},
): void {
  let thrown: unknown;
  try {
    readAll(content, options);
  } catch (error) {
    thrown = error;
  }
  if (!(thrown instanceof ReadError)) throw new Error(`not refused, but ${thrown ?? "read"}`);
  expect({ code: thrown.code, line: thrown.problem.line }).toEqual({ code: expected.code, line: expected.line });
  expect(thrown.message).toMatch(expected.says);
  expect(thrown.message).not.toMatch(/[\r\n]/);
  expect(
    thrown.message.startsWith(`${options.fileName ?? "input"}${expected.line ? `, line ${expected.line}` : ""}: `),
  ).toBe(true);
}
