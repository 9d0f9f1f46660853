import type { CheckResult, SegmentResult } from "@feedpoint/core";
import { emissions, percent, span, swr, use } from "../text/units.js";
import { verdictWord } from "../words/verdicts.js";
import type { Column } from "./column.js";

interface SegmentRow {
  readonly band: string;
  readonly segment: SegmentResult;
}

/** A row for each segment of the bands that were swept. */
export const segmentRows = ({ bands }: CheckResult): readonly SegmentRow[] =>
  bands
    .filter(({ best }) => best !== null)
    .flatMap(({ band, segments }) => segments.map((segment) => ({ band, segment })));

export const SEGMENT_COLUMNS: readonly Column<SegmentRow>[] = [
  { key: "band", title: "Band", text: ({ band }) => band },
  { key: "range", title: "Segment MHz", text: ({ segment }) => span(segment) },
  { key: "use", title: "For", spare: 1, text: ({ segment }) => use(segment.use) },
  { key: "emissions", title: "You may send", spare: 2, text: ({ segment }) => emissions(segment.emissions) },
  { key: "verdict", title: "Verdict", text: ({ segment }) => verdictWord(segment.verdict) },
  { key: "worstSwr", title: "Worst SWR", align: "right", text: ({ segment }) => swr(segment.worstSwr) },
  {
    key: "withinLimitFraction",
    title: "within limit",
    align: "right",
    text: ({ segment }) => percent(segment.withinLimitFraction),
  },
];
