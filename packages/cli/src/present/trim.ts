import type { BandSummary, TrimmedBand, TrimResult } from "@feedpoint/core";
import type { Settings } from "../options/settings.js";
import { shortCautions } from "./cautions.js";
import { feedlineText } from "./check-station.js";
import { csvTable } from "./csv.js";
import { printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { markdownTable, type TableColumn, textTable, wrap } from "./table.js";
import { fixed, megahertz, need, percent, planLine, span, stationLines, swr } from "./units.js";

/** Said wherever a change of length is advised. */
const CARE =
  "* Cut less than computed, fold back before cutting, both legs of a dipole alike, and measure again. A change of length moves all bands of the wire.";

export function trimText(result: TrimResult, { width, stationFile }: Pick<Settings, "width" | "stationFile">): string {
  const { sweep, bands, feedline } = result;
  const findings = findingLines([...sweep.findings, ...result.findings], width);
  return [
    printable(sweep.label),
    `  ${wrap(planLine(result.plan), width - 2, "    ")}`,
    ...stationLines(stationFile).map((line) => `  ${line}`),
    ...(feedline === null ? [] : [`  ${wrap(`Feedline: ${feedlineText(feedline)}`, width - 2, "    ")}`]),
    "",
    ...(result.dip === null ? [] : [wrap(adviceText(result), width), ""]),
    ...(result.dip === null || bands.length === 0
      ? []
      : [textTable(columnsFor(result), bands.map(rowFor), { width }), ""]),
    ...(findings === "" ? [] : [findings, ""]),
    ...(result.dip === null ? [] : [CARE]).map((care) => wrap(care, width, "  ")),
    shortCautions(width),
  ].join("\n");
}

export function trimMarkdown(result: TrimResult): string {
  return [adviceText(result), "", markdownTable(columnsFor(result), result.bands.map(rowFor))].join("\n");
}

/** One row a band. */
export function trimCsv({ sweep, bands, wantedHz, dip, lengthChange, lengthChangeM }: TrimResult): string {
  return csvTable(
    bands.map(({ band, before, after }) => ({
      file: sweep.file,
      wantedHz,
      dipHz: dip?.frequencyHz ?? null,
      lengthChange,
      lengthChangeM,
      band,
      bestSwrBefore: before?.best?.swr ?? null,
      bestSwrAfter: after?.best?.swr ?? null,
      bestHzBefore: before?.best?.frequencyHz ?? null,
      bestHzAfter: after?.best?.frequencyHz ?? null,
      withinLimitFractionBefore: before?.withinLimit.fraction ?? null,
      withinLimitFractionAfter: after?.withinLimit.fraction ?? null,
    })),
  );
}

/** Changes below this are not worth a cut (our own choice). */
const LEAST_CHANGE = 0.0005;

function adviceText({ dip, wantedHz, lengthChange, lengthChangeM }: TrimResult): string {
  if (dip === null || lengthChange === null) return "There is no dip to trim.";
  const place = `The dip lies at ${megahertz(dip.frequencyHz)} MHz (SWR ${swr(dip.swr)}) and is wanted at ${megahertz(wantedHz)} MHz`;
  if (Math.abs(lengthChange) < LEAST_CHANGE) return `${place}: leave the wire as it is.`;
  const verb = lengthChange < 0 ? "shorten" : "lengthen";
  const size = `${fixed(Math.abs(lengthChange * 100), 1)} %`;
  const centimetres = lengthChangeM === null ? "" : `, ${fixed(Math.abs(lengthChangeM * 100), 0)} cm in all`;
  return `${place}: ${verb} the wire by ${size}${centimetres}.`;
}

function columnsFor({ limits }: TrimResult): readonly TableColumn[] {
  return [
    { title: "Band" },
    { title: "Best SWR" },
    { title: "at MHz", spare: 2 },
    { title: `MHz within ${limits.swr}:1 now`, spare: 3 },
    { title: `MHz within ${limits.swr}:1 predicted` },
    { title: "Share of band", align: "right", spare: 1 },
    { title: "Whole band needs" },
  ];
}

function rowFor({ band, before, after }: TrimmedBand): readonly string[] {
  const both = (text: (summary: BandSummary | null) => string) => `${text(before)} → ${text(after)}`;
  return [
    band,
    both((summary) => swr(summary?.best?.swr ?? null)),
    both((summary) => (summary?.best ? megahertz(summary.best.frequencyHz) : "–")),
    spansOf(before),
    spansOf(after),
    both((summary) => (summary === null ? "–" : percent(summary.withinLimit.fraction))) + knownPart(after),
    before?.need === after?.need ? needText(after) : both(needText),
  ];
}

/** How much of a band the prediction covers, where that is not all: the sweep ends within it once it is stretched. */
const knownPart = (after: BandSummary | null) =>
  after === null || after.sweptFraction === 1 ? "" : ` (${percent(after.sweptFraction)} known)`;

function needText(summary: BandSummary | null): string {
  if (summary === null) return need("unknown");
  return summary.sweptFraction < 1 ? `${need(summary.need)} where known` : need(summary.need);
}

function spansOf(summary: BandSummary | null): string {
  if (summary === null) return "–";
  const { spans } = summary.withinLimit;
  return spans.length === 0 ? "none" : spans.map(span).join(", ");
}
