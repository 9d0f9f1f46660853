import type { BandResult, CheckResult, Verdict } from "@feedpoint/core";
import { csvTable } from "./csv.js";
import { markdownCell, printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { markdownTable, type TableColumn, textTable, wrap } from "./table.js";
import { megahertz, need, percent, span, swr } from "./units.js";

const VERDICTS: Readonly<Record<Verdict, string>> = {
  pass: "pass",
  partial: "partial",
  fail: "fail",
  "not-swept": "not swept",
};

/** More spans or pieces than these are counted, not listed. */
const MOST_SPANS = 2;

/** Results for a person at a terminal; what is common to all is said once, at the end. */
export function checkText(results: readonly CheckResult[], { width }: { width: number }): string {
  const cautions = results[0]?.cautions ?? [];
  const blocks = results.map((result) => {
    const notSwept = result.bands.filter(({ best }) => best === null).map(({ band }) => band);
    const findings = findingLines([...result.sweep.findings, ...result.findings], width);
    return [
      heading(result),
      "",
      notSwept.length < result.bands.length
        ? textTable(columnsFor(result), rowsFor(result))
        : "No band of the plan was swept.",
      notSwept.length > 0 ? `\n${wrap(`Not swept: ${notSwept.join(", ")}`, width, "  ")}` : null,
      findings === "" ? null : `\n${findings}`,
    ]
      .filter((part) => part !== null)
      .join("\n");
  });
  return [...blocks, cautions.map((caution) => wrap(`* ${caution}`, width, "  ")).join("\n")].join("\n\n");
}

export function checkMarkdown(result: CheckResult): string {
  return [`## ${markdownCell(result.sweep.label)}`, "", markdownTable(columnsFor(result), rowsFor(result))].join("\n");
}

/** One row a band. */
export function checkCsv(results: readonly CheckResult[]): string {
  return csvTable(
    results.flatMap(({ sweep, plan, bands }) =>
      bands.map((band) => ({
        file: sweep.file,
        label: sweep.label,
        plan: plan.id,
        band: band.band,
        lowHz: band.lowHz,
        highHz: band.highHz,
        verdict: band.verdict,
        need: band.need,
        sweptFraction: band.sweptFraction,
        bestSwr: band.best?.swr ?? null,
        bestHz: band.best?.frequencyHz ?? null,
        worstSwr: band.worst?.swr ?? null,
        worstHz: band.worst?.frequencyHz ?? null,
        limitSwr: band.withinLimit.limitSwr,
        withinLimitHz: band.withinLimit.widthHz,
        withinLimitFraction: band.withinLimit.fraction,
      })),
    ),
  );
}

function heading({ sweep, plan, limits }: CheckResult): string {
  const licence = plan.licenceClass === null ? "" : `, class ${plan.licenceClass}`;
  const taken = sweep.takenAt === null ? "" : `, taken ${sweep.takenAt}`;
  return [
    printable(sweep.label),
    `  ${sweep.points} point${sweep.points === 1 ? "" : "s"}, ${span({ lowHz: sweep.startHz, highHz: sweep.stopHz })} MHz, ${sweep.referenceOhms} Ω${taken}`,
    `  ${printable(sweep.description)}`,
    `  Plan: ${plan.title}${licence} (${plan.id}); limit ${limits.swr}:1`,
  ].join("\n");
}

function columnsFor({ limits }: CheckResult): readonly TableColumn[] {
  return [
    { title: "Band" },
    { title: "MHz" },
    { title: "Verdict" },
    { title: "Best SWR", align: "right" },
    { title: "at MHz", align: "right" },
    { title: "Worst SWR", align: "right" },
    { title: `MHz within ${limits.swr}:1` },
    { title: "of band", align: "right" },
    { title: "All of it needs" },
  ];
}

function rowsFor({ bands }: CheckResult): readonly (readonly string[])[] {
  return bands.filter(({ best }) => best !== null).map(rowFor);
}

function rowFor(result: BandResult): readonly string[] {
  const { band, pieces, verdict, best, worst, withinLimit, sweptFraction } = result;
  const spans = withinLimit.spans;
  const more = spans.length > MOST_SPANS ? ` +${spans.length - MOST_SPANS} more` : "";
  return [
    band,
    pieces.length > MOST_SPANS ? `${span(result)} in ${pieces.length} pieces` : pieces.map(span).join(", "),
    sweptText(verdict, sweptFraction),
    swr(best?.swr ?? null),
    best === null ? "–" : megahertz(best.frequencyHz),
    worst?.isAtLeast ? `≥${swr(worst.swr)}` : swr(worst?.swr ?? null),
    spans.length === 0 ? "none" : spans.slice(0, MOST_SPANS).map(span).join(", ") + more,
    percent(withinLimit.fraction),
    need(result.need),
  ];
}

function sweptText(verdict: Verdict, sweptFraction: number): string {
  if (sweptFraction === 0) return "single reading";
  return sweptFraction < 1 ? `${VERDICTS[verdict]} (${percent(sweptFraction)} swept)` : VERDICTS[verdict];
}
