import { type BandDiff, type DiffResult, isDip, type Limits } from "@feedpoint/core";
import { kilohertz, megahertz, percent, pointSwr, signed } from "../text/units.js";
import { comparedFindings } from "../words/compared.js";
import { aboutBand, codesOf, gravest } from "../words/severity.js";
import { diffVerdictText } from "../words/verdicts.js";
import type { Column } from "./column.js";

/** A band of a comparison; every change is after minus before. */
export interface DiffRow {
  readonly result: DiffResult;
  readonly band: BandDiff;
}

export const diffRows = (results: readonly DiffResult[]): readonly DiffRow[] =>
  results.flatMap((result) => result.bands.map((band) => ({ result, band })));

const findingsOf = ({ result, band }: DiffRow) => aboutBand(comparedFindings(result), band.band);
const files = (sweeps: DiffResult["before"]) => sweeps.map(({ file }) => file).join(" ");
const pair = (first: string, second: string) => `${first} → ${second}`;
const place = ({ best, restsOn }: BandDiff["before"]) =>
  best === null || restsOn === "stretch" ? "–" : megahertz(best.frequencyHz);

/** The share within the limit; an SWR noted for all of a band may not tell it. */
function shareText({ best, withinLimit: { fraction, limitSwr }, restsOn }: BandDiff["before"]): string {
  const isOpen = restsOn === "stretch" && fraction === 0 && best !== null && best.swr <= limitSwr;
  return isOpen ? "some" : percent(fraction);
}

/** What diff tells of each band. */
export const diffColumns = (limits: Limits): readonly Column<DiffRow>[] => [
  { key: "before", value: ({ result }) => files(result.before) },
  { key: "after", value: ({ result }) => files(result.after) },
  { key: "band", title: "Band", value: ({ band }) => band.band, text: ({ band }) => band.band },
  {
    key: "verdict",
    about: "improved, worse, unchanged, mixed or not-comparable",
    title: "Verdict",
    value: ({ band }) => band.verdict,
    text: ({ band }) => diffVerdictText(band),
  },
  { key: "why", about: "the verdict's reason, for a person", value: ({ band }) => band.why },
  { key: "bestSwrBefore", value: ({ band }) => band.before.best?.swr ?? null },
  { key: "bestSwrAfter", value: ({ band }) => band.after.best?.swr ?? null },
  {
    key: "bestSwr",
    title: "Best SWR",
    align: "right",
    text: ({ band: { before, after } }) => pair(pointSwr(before.best), pointSwr(after.best)),
  },
  { key: "bestHzBefore", value: ({ band }) => band.before.best?.frequencyHz ?? null },
  { key: "bestHzAfter", value: ({ band }) => band.after.best?.frequencyHz ?? null },
  {
    key: "bestPlace",
    title: "at MHz",
    align: "right",
    spare: 2,
    text: ({ band: { before, after } }) => pair(place(before), place(after)),
  },
  { key: "dipMoved", title: "Dip moved", align: "right", spare: 1, text: ({ band }) => moveText(band) },
  { key: "worstSwrBefore", value: ({ band }) => band.before.worst?.swr ?? null },
  { key: "worstSwrAfter", value: ({ band }) => band.after.worst?.swr ?? null },
  {
    key: "worstSwr",
    title: "Worst SWR",
    align: "right",
    spare: 3,
    text: ({ band: { before, after } }) => pair(pointSwr(before.worst), pointSwr(after.worst)),
  },
  { key: "withinLimitFractionBefore", about: "0 to 1", value: ({ band }) => band.before.withinLimit.fraction },
  { key: "withinLimitFractionAfter", about: "0 to 1", value: ({ band }) => band.after.withinLimit.fraction },
  {
    key: "withinLimit",
    title: `Within ${limits.swr}:1`,
    align: "right",
    text: ({ band: { before, after } }) => pair(shareText(before), shareText(after)),
  },
  { key: "withinLimitHzChange", value: ({ band }) => band.change.withinLimitWidthHz },
  { key: "gainedHz", value: ({ band }) => band.change.gainedHz },
  { key: "lostHz", value: ({ band }) => band.change.lostHz },
  { key: "gains", title: "gained, lost", align: "right", spare: 4, text: ({ band }) => gainsText(band) },
  { key: "needBefore", value: ({ band }) => band.before.need },
  { key: "needAfter", value: ({ band }) => band.after.need },
  { key: "bestIsAtLeastBefore", about: "the scale ended", value: ({ band }) => band.before.best?.isAtLeast ?? null },
  { key: "bestIsAtLeastAfter", value: ({ band }) => band.after.best?.isAtLeast ?? null },
  { key: "worstIsAtLeastBefore", value: ({ band }) => band.before.worst?.isAtLeast ?? null },
  { key: "worstIsAtLeastAfter", value: ({ band }) => band.after.worst?.isAtLeast ?? null },
  { key: "isHidden", about: "unchanged only because the repeats differ too much", value: ({ band }) => band.isHidden },
  { key: "isPerhaps", about: "no more than putting it up again may do", value: ({ band }) => band.isPerhaps },
  { key: "plan", value: ({ result }) => result.plan.id },
  { key: "planCertainty", value: ({ result }) => result.plan.certainty },
  { key: "severity", about: "of the gravest finding", value: (row) => gravest(findingsOf(row)) },
  { key: "findings", about: "codes, the gravest first", value: (row) => codesOf(findingsOf(row)) },
];

const moveText = ({ before, after, change }: BandDiff): string =>
  before.restsOn === "curve" &&
  after.restsOn === "curve" &&
  isDip(before) &&
  isDip(after) &&
  change.bestFrequencyHz !== null
    ? `${signed(change.bestFrequencyHz / 1000, 0)} kHz`
    : "–";

function gainsText({ change: { gainedHz, lostHz } }: BandDiff): string {
  const parts = [gainedHz, lostHz].map((width, i) => (width < 500 ? "" : `${i === 0 ? "+" : "−"}${kilohertz(width)}`));
  return parts.filter((part) => part !== "").join(", ") || "–";
}
