import type { BandSummary, Limits, TrimmedBand, TrimResult } from "@feedpoint/core";
import { megahertz, percent, pointSwr, span } from "../text/units.js";
import { codesOf, gravest } from "../words/severity.js";
import { needText } from "../words/verdicts.js";
import type { Column } from "./column.js";

/** A band of a prediction. */
interface TrimRow {
  readonly result: TrimResult;
  readonly band: TrimmedBand;
}

export const trimRows = (result: TrimResult): readonly TrimRow[] => result.bands.map((band) => ({ result, band }));

const findingsOf = ({ result }: TrimRow) => [...result.sweep.findings, ...result.findings];

/** What trim tells of each band. */
export const trimColumns = (limits: Limits): readonly Column<TrimRow>[] => [
  { key: "file", value: ({ result }) => result.sweep.file },
  { key: "wantedHz", value: ({ result }) => result.wantedHz },
  { key: "dipHz", value: ({ result }) => result.dip?.frequencyHz ?? null },
  {
    key: "lengthChange",
    about: "wanted length over present length, less 1",
    value: ({ result }) => result.lengthChange,
  },
  { key: "lengthChangeM", value: ({ result }) => result.lengthChangeM },
  { key: "band", title: "Band", value: ({ band }) => band.band, text: ({ band }) => band.band },
  { key: "bestSwrBefore", value: ({ band }) => band.before?.best?.swr ?? null },
  { key: "bestSwrAfter", value: ({ band }) => band.after?.best?.swr ?? null },
  { key: "bestSwr", title: "Best SWR", text: both((summary) => pointSwr(summary?.best ?? null)) },
  { key: "bestHzBefore", value: ({ band }) => band.before?.best?.frequencyHz ?? null },
  { key: "bestHzAfter", value: ({ band }) => band.after?.best?.frequencyHz ?? null },
  {
    key: "bestPlace",
    title: "at MHz",
    spare: 2,
    text: both((summary) => (summary?.best ? megahertz(summary.best.frequencyHz) : "–")),
  },
  { key: "withinNow", title: `MHz within ${limits.swr}:1 now`, spare: 3, text: ({ band }) => spansText(band.before) },
  { key: "withinThen", title: `MHz within ${limits.swr}:1 predicted`, text: ({ band }) => spansText(band.after) },
  {
    key: "withinLimitFractionBefore",
    about: "0 to 1",
    value: ({ band }) => band.before?.withinLimit.fraction ?? null,
  },
  { key: "withinLimitFractionAfter", about: "0 to 1", value: ({ band }) => band.after?.withinLimit.fraction ?? null },
  {
    key: "share",
    title: "Share of band",
    align: "right",
    spare: 1,
    text: (row) =>
      both((summary) => (summary === null ? "–" : percent(summary.withinLimit.fraction)))(row) +
      knownPart(row.band.after),
  },
  { key: "wholeBandNeeds", title: "Whole band needs", text: needsText },
  { key: "bestIsAtLeastBefore", about: "the scale ended", value: ({ band }) => band.before?.best?.isAtLeast ?? null },
  { key: "bestIsAtLeastAfter", value: ({ band }) => band.after?.best?.isAtLeast ?? null },
  { key: "plan", value: ({ result }) => result.plan.id },
  { key: "planCertainty", value: ({ result }) => result.plan.certainty },
  { key: "severity", about: "of the gravest finding", value: (row) => gravest(findingsOf(row)) },
  { key: "findings", about: "codes, the gravest first", value: (row) => codesOf(findingsOf(row)) },
];

function both(text: (summary: BandSummary | null) => string): (row: TrimRow) => string {
  return ({ band: { before, after } }) => `${text(before)} → ${text(after)}`;
}

/** How much of a band the prediction covers, where that is not all: the sweep ends within it once it is stretched. */
const knownPart = (after: BandSummary | null) =>
  after === null || after.sweptFraction === 1 ? "" : ` (${percent(after.sweptFraction)} known)`;

const needsText = (row: TrimRow): string =>
  row.band.before?.need === row.band.after?.need ? needWhereKnown(row.band.after) : both(needWhereKnown)(row);

function needWhereKnown(summary: BandSummary | null): string {
  if (summary === null) return needText("unknown");
  return summary.sweptFraction < 1 ? `${needText(summary.need)} where known` : needText(summary.need);
}

function spansText(summary: BandSummary | null): string {
  if (summary === null) return "–";
  const { spans } = summary.withinLimit;
  return spans.length === 0 ? "none" : spans.map(span).join(", ");
}
