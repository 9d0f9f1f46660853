import { type BandDiff, type DiffResult, type DiffVerdict, type Finding, isDip, placed } from "@feedpoint/core";
import type { Settings } from "../options/settings.js";
import { shortCautions } from "./cautions.js";
import { csvTable } from "./csv.js";
import { markdownCell, printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { markdownTable, type Table, type TableColumn, textTable, wrap } from "./table.js";
import { kilohertz, megahertz, percent, planLine, pointSwr, signed, stationLines } from "./units.js";

const DIFF_VERDICTS: Readonly<Record<DiffVerdict, string>> = {
  improved: "improved",
  worse: "worse",
  unchanged: "unchanged",
  mixed: "mixed",
  "not-comparable": "not comparable",
};

/** A band's verdict in words; "not told" where the repeats of a side hide it. */
export const verdictWords = ({ verdict, isHidden }: Pick<BandDiff, "verdict" | "isHidden">): string =>
  isHidden ? "not told" : DIFF_VERDICTS[verdict];

export function diffText(
  result: DiffResult,
  { width, stationFile, chart }: Pick<Settings, "width" | "stationFile"> & { readonly chart: string },
): string {
  const { before, after, bands, causes, plan } = result;
  // Files of the same name are told apart by their folders.
  const areNamesakes = before.some(({ label }) => after.some((other) => other.label === label));
  const name = (infos: DiffResult["before"]) =>
    infos
      .map(({ file, label, takenAt }) => [printable(areNamesakes ? file : label), ...takenText(takenAt)].join(", "))
      .join("; ");
  const areRepeats = before.length + after.length > 2;
  const likely = causes.map(({ confidence, message }) =>
    wrap(`${confidence === "likely" ? "Likely cause" : "Possible cause"}: ${message}`, width, "  "),
  );
  const findings = findingLines(comparedFindings(result), width);
  return [
    wrap(result.headline, width),
    "",
    wrap(`Before  ${name(before)}`, width, "        "),
    wrap(`After   ${name(after)}`, width, "        "),
    wrap(`${planLine(plan)}; limit ${result.limits.swr}:1`, width, "  "),
    ...stationLines(stationFile),
    ...(areRepeats ? [wrap(REPEATS, width)] : []),
    "",
    ...(likely.length > 0 ? [...likely, ""] : []),
    ...(bands.length > 0 ? [textTable(columnsFor(result), bands.map(rowFor), { width }), ""] : []),
    ...(chart === "" ? [] : [chart, ""]),
    ...whyLines(bands, width),
    ...(findings === "" ? [] : [findings, ""]),
    shortCautions(width),
  ].join("\n");
}

const takenText = (takenAt: string | null) => (takenAt === null ? [] : [`taken ${takenAt}`]);

const REPEATS =
  "Beside the arrows stand the values of the sweep in the middle of each side; verdicts and differences are of the means.";

/** What was noticed: in the files before and after, then in comparing them. */
export function comparedFindings({ before, after, findings }: DiffResult): readonly Finding[] {
  const about = (side: "before" | "after", infos: DiffResult["before"]) =>
    infos.flatMap((info) => info.findings.map((found) => placed(found, { side })));
  return [...about("before", before), ...about("after", after), ...findings];
}

export function diffMarkdown(result: DiffResult): string {
  return [`**${markdownCell(result.headline)}**`, "", markdownTable(columnsFor(result), result.bands.map(rowFor))].join(
    "\n",
  );
}

/** One row a band; every change is after minus before. */
export function diffCsv(results: readonly DiffResult[]): string {
  return csvTable(
    results.flatMap(({ before, after, bands }) =>
      bands.map((band) => ({
        before: before.map(({ file }) => file).join(" "),
        after: after.map(({ file }) => file).join(" "),
        band: band.band,
        verdict: band.verdict,
        why: band.why,
        bestSwrBefore: band.before.best?.swr ?? null,
        bestSwrAfter: band.after.best?.swr ?? null,
        bestHzBefore: band.before.best?.frequencyHz ?? null,
        bestHzAfter: band.after.best?.frequencyHz ?? null,
        worstSwrBefore: band.before.worst?.swr ?? null,
        worstSwrAfter: band.after.worst?.swr ?? null,
        withinLimitFractionBefore: band.before.withinLimit.fraction,
        withinLimitFractionAfter: band.after.withinLimit.fraction,
        withinLimitHzChange: band.change.withinLimitWidthHz,
        gainedHz: band.change.gainedHz,
        lostHz: band.change.lostHz,
        needBefore: band.before.need,
        needAfter: band.after.need,
      })),
    ),
  );
}

/** The bands that were compared. */
export const diffTable = (result: DiffResult): Table => ({
  columns: columnsFor(result),
  rows: result.bands.map(rowFor),
});

function whyLines(bands: readonly BandDiff[], width: number): string[] {
  const lines = reasonsOf(bands).map((reason) => wrap(reason, width, "  "));
  return lines.length > 0 ? [...lines, ""] : [];
}

/** The reasons of the verdicts; bands with the same one share a line. */
export function reasonsOf(bands: readonly BandDiff[]): readonly string[] {
  const reasons = new Map<string, string[]>();
  for (const { band, verdict, why, isHidden } of bands) {
    if (verdict !== "unchanged" || isHidden) reasons.set(why, [...(reasons.get(why) ?? []), band]);
  }
  return [...reasons].map(([why, names]) => `${names.join(", ")}: ${why}`);
}

function columnsFor({ limits }: DiffResult): readonly TableColumn[] {
  return [
    { title: "Band" },
    { title: "Verdict" },
    { title: "Best SWR", align: "right" },
    { title: "at MHz", align: "right", spare: 2 },
    { title: "Dip moved", align: "right", spare: 1 },
    { title: "Worst SWR", align: "right", spare: 3 },
    { title: `Within ${limits.swr}:1`, align: "right" },
    { title: "gained, lost", align: "right", spare: 4 },
  ];
}

function rowFor(result: BandDiff): readonly string[] {
  const { band, before, after, change } = result;
  const pair = (first: string, second: string) => `${first} → ${second}`;
  const frequency = (summary: BandDiff["before"]) =>
    summary.best === null ? "–" : megahertz(summary.best.frequencyHz);
  return [
    band,
    verdictWords(result),
    pair(pointSwr(before.best), pointSwr(after.best)),
    pair(frequency(before), frequency(after)),
    isDip(before) && isDip(after) && change.bestFrequencyHz !== null
      ? `${signed(change.bestFrequencyHz / 1000, 0)} kHz`
      : "–",
    pair(pointSwr(before.worst), pointSwr(after.worst)),
    pair(percent(before.withinLimit.fraction), percent(after.withinLimit.fraction)),
    gains(change.gainedHz, change.lostHz),
  ];
}

function gains(gainedHz: number, lostHz: number): string {
  const parts = [gainedHz, lostHz].map((width, i) => (width < 500 ? "" : `${i === 0 ? "+" : "−"}${kilohertz(width)}`));
  return parts.filter((part) => part !== "").join(", ") || "–";
}
