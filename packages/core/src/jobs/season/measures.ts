import type { SweepGrade } from "../grade.js";
import { lossesBeside } from "./loss-change.js";

/** What a factor does: the share of a band within the limit, where its dip lies, or what is lost. */
export type Measure = "share" | "dip" | "loss";

/** Less than this is not worth a word, whatever chance says of it: a fraction of the band, Hz, dB at 10 MHz (our own choice). */
export const LEAST_TOLD: Readonly<Record<Measure, number>> = { share: 0.01, dip: 1000, loss: 0.05 };

/** One number of some sweeps. */
export interface Measured {
  readonly measure: Measure;
  readonly band: string | null;
  readonly rows: readonly Row[];
}

interface Row {
  readonly graded: SweepGrade;
  readonly value: number;
}

/** What is looked at: each number that is not the same in all sweeps. */
export function measuresOf(sweeps: readonly SweepGrade[]): readonly Measured[] {
  const bands = [...new Set(sweeps.flatMap((graded) => graded.bands.map(({ band }) => band)))];
  const loss = lossesBeside(sweeps);
  const of = (measure: Measure, band: string | null, told: (graded: SweepGrade) => number | null) => ({
    measure,
    band,
    rows: sweeps.flatMap((graded): Row[] => {
      const value = told(graded);
      return value === null ? [] : [{ graded, value }];
    }),
  });
  return [
    ...bands.flatMap((name) => {
      const on = (graded: SweepGrade) => onBand(graded, name);
      return [
        of("share", name, (graded) => on(graded)?.withinLimitFraction ?? null),
        of("dip", name, (graded) => on(graded)?.dipHz ?? null),
      ];
    }),
    of("loss", null, (graded) => loss.get(graded) ?? null),
  ].filter(({ rows }): boolean => new Set(rows.map(({ value }) => value)).size > 1);
}

/** What a sweep does on a band, at the antenna's end of the line where that is known. */
function onBand({ bands, atAntenna }: SweepGrade, name: string) {
  const entry = bands.find(({ band, grade }) => band === name && grade !== null);
  if (entry === undefined) return null;
  return atAntenna?.find(({ band }) => band === name) ?? entry;
}
