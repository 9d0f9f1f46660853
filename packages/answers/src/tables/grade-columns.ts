import { type BandGrade, hasProblem, type SweepGrade } from "@feedpoint/core";
import { sweepNames } from "../text/sweep-names.js";
import { fixed, swr } from "../text/units.js";
import { aboutBand, codesOf, gravest } from "../words/severity.js";
import type { Column } from "./column.js";

const findingsOf = ({ sweep, findings }: SweepGrade) => [...sweep.findings, ...findings];

/** Stands beside a sweep with a problem. */
const PROBLEM_MARK = "!!";

/** One row a sweep: a column for each band that any of them swept, with grade and best SWR. */
export function gradeColumns(sweeps: readonly SweepGrade[]): readonly Column<SweepGrade>[] {
  const nameOf = sweepNames(sweeps);
  return [
    {
      key: "sweep",
      title: "Sweep",
      text: (graded) => nameOf(graded.sweep) + (hasProblem(graded) ? ` ${PROBLEM_MARK}` : ""),
    },
    { key: "grade", title: "Mean", text: ({ grade }) => grade ?? "–" },
    {
      key: "lossBoundDb",
      title: "Loss dB",
      align: "right",
      spare: 1,
      text: ({ lossBoundDb }) => (lossBoundDb === null ? "–" : `≤${fixed(lossBoundDb, 1)}`),
    },
    ...sweptBands(sweeps).map(
      (name): Column<SweepGrade> => ({
        key: name,
        title: name,
        align: "right",
        text: ({ bands }) => bandText(bands.find(({ band }) => band === name)),
      }),
    ),
  ];
}

function bandText(entry: BandGrade | undefined): string {
  if (entry === undefined || entry.bestSwr === null) return "–";
  const { grade, bestSwr, notedUpToSwr, isBestAtLeast } = entry;
  const range = notedUpToSwr !== null && swr(notedUpToSwr) !== swr(bestSwr) ? `-${swr(notedUpToSwr)}` : "";
  return `${grade ?? "?"} ${isBestAtLeast ? "≥" : ""}${swr(bestSwr)}${range}`;
}

const sweptBands = (sweeps: readonly SweepGrade[]) =>
  (sweeps[0]?.bands ?? [])
    .map(({ band }) => band)
    .filter((name) => sweeps.some(({ bands }) => bands.some((entry) => entry.band === name && entry.bestSwr !== null)));

/** A band of a graded sweep, as the CSV has it. */
interface GradeRow {
  readonly graded: SweepGrade;
  readonly band: BandGrade;
}

export const gradeRows = (sweeps: readonly SweepGrade[]): readonly GradeRow[] =>
  sweeps.flatMap((graded) => graded.bands.map((band) => ({ graded, band })));

const ofBand = ({ graded, band }: GradeRow) => aboutBand(findingsOf(graded), band.band);

/** One row a sweep and band. @param plan its name and how much of it was read from a source */
export const gradeBandColumns = (plan: { id: string; certainty: string }): readonly Column<GradeRow>[] => [
  { key: "file", value: ({ graded }) => graded.sweep.file },
  { key: "label", value: ({ graded }) => graded.sweep.label },
  { key: "takenAt", about: "ISO 8601", value: ({ graded }) => graded.sweep.takenAt },
  { key: "overall", about: "mean of the graded bands", value: ({ graded }) => graded.grade },
  { key: "lossBoundDb", about: "the most that can be lost one way", value: ({ graded }) => graded.lossBoundDb },
  { key: "band", value: ({ band }) => band.band },
  { key: "grade", value: ({ band }) => band.grade },
  { key: "bestSwr", value: ({ band }) => band.bestSwr },
  { key: "bestHz", value: ({ band }) => band.bestHz },
  { key: "dipHz", value: ({ band }) => band.dipHz },
  { key: "withinLimitFraction", about: "0 to 1", value: ({ band }) => band.withinLimitFraction },
  { key: "sweptFraction", about: "0 to 1", value: ({ band }) => band.sweptFraction },
  { key: "need", value: ({ band }) => band.need },
  { key: "isBestAtLeast", about: "the scale ended", value: ({ band }) => band.isBestAtLeast },
  { key: "plan", value: () => plan.id },
  { key: "planCertainty", value: () => plan.certainty },
  { key: "severity", about: "of the gravest finding", value: (row) => gravest(ofBand(row)) },
  { key: "findings", about: "codes, the gravest first", value: (row) => codesOf(ofBand(row)) },
  { key: "notedUpToSwr", about: "greatest SWR noted by hand", value: ({ band }) => band.notedUpToSwr },
  { key: "restsOn", about: "curve, spots or stretch", value: ({ band }) => band.restsOn },
];
