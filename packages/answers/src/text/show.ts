import {
  type LeftOutReason,
  type LineLedger,
  type Sweep,
  type SweepInfo,
  sampleImpedance,
  sweepInfo,
  swrFromReflectionMagnitude,
} from "@feedpoint/core";
import { printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { fixed, megahertz, span, swr } from "./units.js";

const MOST_COMMENTS = 8;
/** Room for the name of a fact. */
const NAME_WIDTH = 10;
const HINT =
  "If something looks odd, say how the file is meant: --unit, --columns, --delimiter, --decimal, --reference-ohms, --signed-reactance, --port.";

/** Lines left out that are shown. */
const MOST_LEFT_OUT = 20;
/** Of a line left out so much is shown. */
const LONGEST_LINE = 60;

const REASONS: Readonly<Record<LeftOutReason, string>> = {
  "no-number": "no number in it",
  "sums-up": "a sum, a mean or a count of the rows above",
  "too-many-cells": "more numbers than columns",
  "too-few-cells": "a cell is missing, and blanks do not tell which",
  "above-header": "it stands above the header",
  "another-table": "it belongs to another table",
  "no-reading": "it gives no reading",
};

export function showText(sweep: Sweep, rows: number, ledger: LineLedger | null, width: number): string {
  const { source, frequencyHz, referenceOhms, takenAt, findings } = sweep;
  const comments = source.comments.slice(0, MOST_COMMENTS).map((comment) => `  | ${wrap(comment, width - 4, "    ")}`);
  const more =
    source.comments.length > MOST_COMMENTS ? [`  | … and ${source.comments.length - MOST_COMMENTS} more lines`] : [];
  const info = sweepInfo(sweep);
  const facts: readonly (readonly [string, string])[] = [
    ["Read as", source.description],
    [
      "Kind",
      sweep.kind === "vector"
        ? "vector (Γ is known as a complex number)"
        : "scalar (only the size of the reflection is known)",
    ],
    [
      "Range",
      `${span({ lowHz: info.startHz, highHz: info.stopHz })} MHz, ${frequencyHz.length} point${frequencyHz.length === 1 ? "" : "s"}${stepOf(sweep)}`,
    ],
    ["Reference", `${referenceOhms} Ω`],
    ["Taken", takenAt ?? "not stated"],
    ...(ledger === null ? [] : [["Lines", linesText(ledger)] as const]),
  ];
  const found = findingLines(findings, width);
  return [
    printable(sweep.label),
    ...facts.map(([name, value]) => {
      const start = `  ${name.padEnd(NAME_WIDTH)} `;
      return start + wrap(value, width - start.length).replaceAll("\n", `\n${" ".repeat(start.length)}`);
    }),
    ...(ledger === null ? [] : leftOutLines(ledger, width)),
    ...(comments.length > 0 ? ["", ...comments, ...more] : []),
    "",
    textTable(columnsFor(sweep), firstRows(sweep, rows), { indent: "  ", width }),
    ...(found === "" ? [] : ["", found]),
    "",
    wrap(HINT, width),
  ].join("\n");
}

/** "104: 101 data, 1 header, 2 comments" */
function linesText({ lines, data, header, comments, blank, leftOut }: LineLedger): string {
  const kinds = [
    `${data} data`,
    ...(header > 0 ? [`${header} header`] : []),
    ...(comments > 0 ? [`${comments} comment${comments === 1 ? "" : "s"}`] : []),
    ...(blank > 0 ? [`${blank} blank`] : []),
    ...(leftOut.length > 0 ? [`${leftOut.length} left out`] : []),
  ];
  return `${lines}: ${kinds.join(", ")}`;
}

/** Each line that is left out, with its reason. */
function leftOutLines({ leftOut }: LineLedger, width: number): readonly string[] {
  const shown = leftOut.slice(0, MOST_LEFT_OUT).map(({ line, reason, text }) => {
    const cut = text.length > LONGEST_LINE ? `${text.slice(0, LONGEST_LINE - 1)}…` : text;
    return `  ${wrap(`line ${line} left out, ${REASONS[reason]}: ${printable(cut.trim())}`, width - 2, "    ")}`;
  });
  const more = leftOut.length - shown.length;
  return more > 0 ? [...shown, `  … and ${more} more lines left out`] : shown;
}

/** What show prints as JSON: the sweep's description and its first rows. */
export interface ShowResult {
  readonly schema: "feedpoint/show@1";
  readonly sweep: SweepInfo;
  readonly continuity: Sweep["continuity"];
  readonly comments: readonly string[];
  /** What became of each line of the file; null where that is not told */
  readonly lines: LineLedger | null;
  readonly rows: readonly ShownRow[];
}

/** What is null is not known of a scalar sweep. */
interface ShownRow {
  readonly frequencyHz: number;
  readonly reflectionMagnitude: number;
  readonly reflectionReal: number | null;
  readonly reflectionImaginary: number | null;
  readonly swr: number;
  readonly resistanceOhms: number | null;
  readonly reactanceOhms: number | null;
}

/** The same for a script. */
export function showJson(sweep: Sweep, rows: number, ledger: LineLedger | null): ShowResult {
  const count = Math.min(rows, sweep.frequencyHz.length);
  return {
    schema: "feedpoint/show@1",
    sweep: sweepInfo(sweep),
    continuity: sweep.continuity,
    comments: sweep.source.comments,
    lines: ledger,
    rows: Array.from({ length: count }, (_, i) => {
      const impedance = sweep.kind === "vector" ? sampleImpedance(sweep, i) : null;
      const rho = sweep.reflectionMagnitude[i] ?? Number.NaN;
      return {
        frequencyHz: sweep.frequencyHz[i] ?? Number.NaN,
        reflectionMagnitude: rho,
        reflectionReal: sweep.kind === "vector" ? (sweep.reflectionReal[i] ?? null) : null,
        reflectionImaginary: sweep.kind === "vector" ? (sweep.reflectionImaginary[i] ?? null) : null,
        swr: swrFromReflectionMagnitude(rho),
        resistanceOhms: impedance?.real ?? null,
        reactanceOhms: impedance?.imaginary ?? null,
      };
    }),
  };
}

function stepOf({ frequencyHz }: Sweep): string {
  const steps = Array.from(frequencyHz.subarray(1), (value, i) => value - (frequencyHz[i] ?? 0)).sort((a, b) => a - b);
  const [least] = steps;
  const greatest = steps.at(-1);
  if (least === undefined || greatest === undefined) return "";
  const inKilohertz = (step: number) => `${Number((step / 1000).toPrecision(4))}`;
  if (greatest - least < 0.02 * least) return `, step ${inKilohertz(steps[steps.length >> 1] ?? least)} kHz`;
  return `, steps from ${inKilohertz(least)} to ${inKilohertz(greatest)} kHz`;
}

function columnsFor(sweep: Sweep): readonly TableColumn[] {
  const titles = sweep.kind === "vector" ? ["MHz", "SWR", "ρ", "R Ω", "X Ω"] : ["MHz", "SWR", "ρ"];
  return titles.map((title) => ({ title, align: "right" }));
}

function firstRows(sweep: Sweep, rows: number): readonly (readonly string[])[] {
  return Array.from({ length: Math.min(rows, sweep.frequencyHz.length) }, (_, i) => {
    const rho = sweep.reflectionMagnitude[i] ?? Number.NaN;
    const scalar = [megahertz(sweep.frequencyHz[i] ?? Number.NaN), swr(swrFromReflectionMagnitude(rho)), fixed(rho, 4)];
    if (sweep.kind === "scalar") return scalar;
    const { real, imaginary } = sampleImpedance(sweep, i);
    return [...scalar, fixed(real, 1), fixed(imaginary, 1)];
  });
}
