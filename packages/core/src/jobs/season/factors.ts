import { chanceOfRatio } from "../../numbers/beta.js";
import { criterionOf, type LinearFit, leastSquares } from "../../numbers/least-squares.js";
import { student95 } from "../../numbers/student.js";
import type { SweepGrade } from "../grade.js";
import { type Factor, factorOf } from "./factor-columns.js";
import { LEAST_TOLD, type Measure, measuresOf } from "./measures.js";

/** What a factor of the log does to one number, the other factors held equal. */
export interface FactorEffect {
  readonly factor: string;
  /** "1 m more", "rain against dry" */
  readonly of: string;
  readonly measure: Measure;
  /** null: the loss, which is of no band */
  readonly band: string | null;
  /**
   * effect: beyond what chance would make of any of those looked at once in a hundred times; none-seen: the fit does better without it, and the interval holds nothing at all;
   * cannot-tell: see `why`
   */
  readonly verdict: "effect" | "none-seen" | "cannot-tell";
  /** A fraction of the band, Hz, or dB at 10 MHz; null where it cannot be told */
  readonly effect: number | null;
  /** Between which it lies with 95 %; null likewise */
  readonly between: { readonly low: number; readonly high: number } | null;
  /** too-few: sweeps for so many factors; together: it changed together with another one; once: in one sweep only; unsure: neither way */
  readonly why: "too-few" | "together" | "once" | "unsure" | null;
  /** The factor that it goes together with; null where none */
  readonly together: string | null;
  /** Which sweep would tell: what the log would say of it; null where any more would */
  readonly missing: Readonly<Record<string, string>> | null;
  /** Sweeps that it rests on */
  readonly sweeps: number;
}

/** Degrees of freedom that must be left, and how much of a factor may follow from the others (Belsley, Kuh, Welsch 1980; from memory). */
const FEWEST_FREEDOM = 3;
const GREATEST_INFLATION = 10;
/** A claim that chance makes no more often than this counts, over all that is looked at; several are asked at once (our own choice). */
const LARGEST_CHANCE = 0.01;

/**
 * What several factors of the log do at once: a linear fit of each number by all factors, those kept by which the small-sample criterion
 * of Akaike is least (C. M. Hurvich, C.-L. Tsai, Biometrika 76, 1989; from memory), each told with the others held equal.
 *
 * @param columns of the log, as it calls them; sweeps without a value in one of them are left out
 */
export function factorEffects(sweeps: readonly SweepGrade[], columns: readonly string[]): readonly FactorEffect[] {
  const known = sweeps.filter(({ log }) => columns.every((column) => (log?.[column] ?? "").trim() !== ""));
  const measures = measuresOf(known);
  const looked = measures.length * columns.length;
  return measures.flatMap(({ measure, band, rows }) => {
    const factors = columns.flatMap(
      (name) =>
        factorOf(
          name,
          rows.map(({ graded }) => graded.log?.[name] ?? ""),
        ) ?? [],
    );
    return effectsOn(
      factors,
      rows.map(({ value }) => value),
      looked,
      LEAST_TOLD[measure],
    ).map((effect) => ({ ...effect, measure, band }));
  });
}

type Effect = Omit<FactorEffect, "measure" | "band">;

const NOT_TOLD = { effect: null, between: null, together: null, missing: null } as const;

function effectsOn(
  factors: readonly Factor[],
  values: readonly number[],
  looked: number,
  least: number,
): readonly Effect[] {
  const count = values.length;
  const full = fitted(factors, values);
  const numbers = 1 + factors.reduce((sum, { effects }) => sum + effects.length, 0);
  const kept = full === null ? null : bestSubset(factors, values);
  return factors.flatMap((factor) => {
    const others = factors.filter((each) => each !== factor);
    const rival = others.find((other) => areTogether(factor, other));
    const chance =
      full === null || count - numbers < FEWEST_FREEDOM ? 1 : chanceOf(factor, others, values, full, count - numbers);
    return factor.effects.map(({ of, column }, k): Effect => {
      const about = { factor: factor.name, of, sweeps: count };
      const cannot = (why: FactorEffect["why"]): Effect => ({ ...about, ...NOT_TOLD, verdict: "cannot-tell", why });
      if (rival !== undefined)
        return { ...cannot("together"), together: rival.name, missing: missingCombination(factor, rival) };
      if (isOnce(column)) return cannot("once");
      if (full === null || count - numbers < FEWEST_FREEDOM) return cannot("too-few");
      const place = 1 + placeOf(factors, factor) + k;
      const size = full.coefficients[place] ?? 0;
      const half =
        student95(count - numbers) *
        Math.sqrt(((full.variances[place] ?? 0) * full.residualSquares) / (count - numbers));
      const told = {
        ...about,
        effect: size,
        between: { low: size - half, high: size + half },
        together: null,
        missing: null,
      };
      if (Math.abs(size) + half < least) return { ...told, verdict: "none-seen", why: null };
      const isEffect = chance * looked <= LARGEST_CHANCE && Math.abs(size) > half;
      if (isEffect) return { ...told, verdict: "effect", why: null };
      return kept?.includes(factor) || Math.abs(size) > half
        ? { ...told, verdict: "cannot-tell", why: "unsure" }
        : { ...told, verdict: "none-seen", why: null };
    });
  });
}

const isOnce = (column: readonly number[]): boolean => {
  const [zeros, ones] = [0, 1].map((value) => column.filter((each) => each === value).length);
  return zeros !== undefined && ones === 1 && zeros + ones === column.length;
};

const columnsOf = (factors: readonly Factor[]) => factors.flatMap(({ effects }) => effects.map(({ column }) => column));

const fitted = (factors: readonly Factor[], values: readonly number[]): LinearFit | null =>
  leastSquares([values.map(() => 1), ...columnsOf(factors)], values);

/** How many effects stand before those of a factor. */
const placeOf = (factors: readonly Factor[], factor: Factor): number =>
  factors.slice(0, factors.indexOf(factor)).reduce((sum, { effects }) => sum + effects.length, 0);

/** How likely chance alone makes a factor explain so much beside the others. */
function chanceOf(
  { effects }: Factor,
  others: readonly Factor[],
  values: readonly number[],
  full: LinearFit,
  freedom: number,
): number {
  const without = fitted(others, values);
  if (without === null) return 1;
  const explained = (without.residualSquares - full.residualSquares) / effects.length;
  return chanceOfRatio(explained / Math.max(full.residualSquares / freedom, Number.MIN_VALUE), effects.length, freedom);
}

/** The factors by which the criterion is least, of all sets of them. */
function bestSubset(factors: readonly Factor[], values: readonly number[]): readonly Factor[] {
  const subsets = Array.from({ length: 2 ** factors.length }, (_, set) =>
    factors.filter((_factor, k) => Math.floor(set / 2 ** k) % 2 === 1),
  );
  const scored = subsets.map((subset) => ({ subset, criterion: criterionOf(columnsOf(subset), values) }));
  return scored.reduce((best, next) => (next.criterion < best.criterion ? next : best)).subset;
}

/** Whether one factor follows so far from another that their effects cannot be told apart. */
function areTogether(one: Factor, other: Factor): boolean {
  return one.effects.some(({ column }) => {
    const fit = leastSquares([column.map(() => 1), ...other.effects.map((effect) => effect.column)], column);
    if (fit === null) return false;
    const mean = column.reduce((sum, value) => sum + value, 0) / column.length;
    const total = column.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return total > 0 && fit.residualSquares < total / GREATEST_INFLATION;
  });
}

/** A pair of levels that no sweep has; null where all pairs were swept. */
function missingCombination(one: Factor, other: Factor): Readonly<Record<string, string>> | null {
  const pairs = new Set(one.levels.map((level, i) => `${level}\n${other.levels[i]}`));
  for (const first of new Set(one.levels)) {
    for (const second of new Set(other.levels)) {
      if (!pairs.has(`${first}\n${second}`)) return { [one.name]: first, [other.name]: second };
    }
  }
  return null;
}
