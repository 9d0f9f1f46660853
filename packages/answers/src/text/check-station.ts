import type { CheckResult, DialResult, Finding, PowerLimit, PowerResult } from "@feedpoint/core";
import { HINTS, type Voice } from "../words/remedies.js";
import { needText } from "../words/verdicts.js";
import { exposureTable, keepAway, keepAwayNote } from "./exposure.js";
import { feedlineTable, pathTable } from "./feedline-tables.js";
import type { NamedTable } from "./named-table.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { fixed, percent, power, span, swr, watts } from "./units.js";

/** What a check says of dial frequencies, power and feedline; nothing where none was stated. */
export function stationTables(result: CheckResult, voice: Voice = "command"): readonly NamedTable[] {
  return [
    dialTable(result, voice),
    powerTable(result, voice),
    exposureTable(result),
    feedlineTable(result),
    pathTable(result, voice),
  ].filter((table) => table !== null);
}

/** The same for a terminal. */
export function stationTexts(result: CheckResult, width: number): readonly string[] {
  const said = (text: string | null) => (text === null ? [] : [wrap(text, width, "  ")]);
  return stationTables(result).map(({ intro, columns, rows, outro }) =>
    [...said(intro), ...(rows.length === 0 ? [] : [textTable(columns, rows, { width })]), ...said(outro)].join("\n"),
  );
}

/** The table that answers what was asked of single frequencies. */
export const DIALS = "Dial frequencies";

const DIAL_COLUMNS: readonly TableColumn[] = [
  { title: "Dial MHz" },
  { title: "For" },
  { title: "Mode" },
  { title: "Occupies MHz", spare: 2 },
  { title: "Permitted" },
  { title: "Licence limit", spare: 1 },
  { title: "SWR", align: "right" },
  { title: "Needs" },
  { title: "At most PEP", align: "right" },
  { title: "limited by" },
  { title: "keep away", align: "right" },
];

function dialTable(result: CheckResult, voice: Voice): NamedTable | null {
  const { dials } = result;
  if (dials.length === 0) return null;
  const isBare = dials.some(({ mode }) => mode === null);
  const outro = isBare ? HINTS[voice].whatIsPermitted : null;
  return {
    name: DIALS,
    intro: null,
    columns: DIAL_COLUMNS,
    rows: dials.map((dial) => dialRow(dial, result)),
    outro,
  };
}

function dialRow(dial: DialResult, result: CheckResult): readonly string[] {
  return [
    fixed(dial.frequencyHz / 1e6, 4),
    dial.activity ?? "–",
    dial.mode ?? "–",
    dial.highHz > dial.lowHz ? span(dial) : "–",
    permission(dial),
    dial.isPermitted === true ? licenceText(dial.licenceLimits) : "–",
    `${dial.point?.isAtLeast ? "≥" : ""}${swr(dial.worstSwr)}`,
    needText(dial.need),
    watts(dial.watts),
    limiterText(dial, result),
    keepAway(dial),
  ];
}

/** Where the plan does not say what the licence allows, that stands beside the power. */
const licenceText = (limits: readonly PowerLimit[]) =>
  limits.length === 0 ? "not stated" : limits.map(power).join(", ");

/** What sets a power, that nothing else is known to, and that a maker's rating does not hold there. */
function limiterText(
  { limitedBy, isRatingCovered }: Pick<PowerResult, "limitedBy" | "isRatingCovered">,
  { findings }: CheckResult,
): string {
  if (limitedBy === null) return "–";
  const isAlone = limitedBy === "licence" && findings.some(({ code }) => code === "no-rating-stated");
  return `${limitedBy}${isAlone ? " alone" : ""}${isRatingCovered === false ? "; SWR beyond rating" : ""}`;
}

function permission({ isPermitted, band }: DialResult): string {
  if (band === null) return "in no band of the plan";
  if (isPermitted === null) return "–";
  return isPermitted ? "yes" : "no";
}

const POWER_COLUMNS: readonly TableColumn[] = [
  { title: "Band" },
  { title: "Mode" },
  { title: "MHz", spare: 2 },
  { title: "In reach", align: "right" },
  { title: "Licence", align: "right", spare: 1 },
  { title: "At most PEP", align: "right" },
  { title: "limited by" },
  { title: "at SWR", align: "right" },
  { title: "at best SWR", align: "right", spare: 3 },
  { title: "averaged", align: "right", spare: 4 },
  { title: "keep away", align: "right" },
];

/** More pieces than these are counted, not listed. */
const MOST_PIECES = 2;

/** null where no power is known: nothing limits it, or nothing is within reach, which the bands' own table says. */
function powerTable(result: CheckResult, voice: Voice): NamedTable | null {
  const { bands, people } = result;
  const results = bands.flatMap(({ power: ofBand }) => ofBand);
  const inReach = results.filter((result) => result.watts !== null);
  const out = [...new Set(results.filter(({ usableFraction }) => usableFraction === 0).map(({ band }) => band))];
  if (inReach.length === 0) return nothingInReach(bands, voice);
  const never = out.filter((band) => !inReach.some((result) => result.band === band));
  const outOfReach = never.length === 0 ? "" : ` No power where the SWR is out of reach: ${never.join(", ")}.`;
  const outro = `${keepAwayNote(people, voice)}${outOfReach}`;
  return {
    name: "Power",
    intro: null,
    columns: POWER_COLUMNS,
    rows: inReach.map((row) => powerRow(row, result)),
    outro,
  };
}

/** Why no power is told though it was asked for; null where it was not, or nothing limits it. */
function nothingInReach(bands: CheckResult["bands"], voice: Voice): NamedTable | null {
  const asked = bands.filter(({ power: ofBand }) => ofBand.some(({ usableFraction }) => usableFraction > 0));
  if (asked.length > 0) {
    const where = asked.map(({ band }) => band).join(", ");
    const outro = `No power is told on ${where}: neither the plan nor you state a limit. ${HINTS[voice].powerOfRadio}`;
    return { name: "Power", intro: null, columns: POWER_COLUMNS, rows: [], outro };
  }
  const out = bands.filter(
    ({ power: ofBand }) => ofBand.length > 0 && ofBand.every(({ usableFraction }) => usableFraction === 0),
  );
  if (out.length === 0) return null;
  const outro = `No power is told: the SWR is out of reach, or not known but at single points, on ${out.map(({ band }) => band).join(", ")}`;
  return { name: "Power", intro: null, columns: POWER_COLUMNS, rows: [], outro };
}

function powerRow(row: PowerResult, result: CheckResult): readonly string[] {
  const { pieces, licenceLimits } = row;
  return [
    row.band,
    row.mode,
    pieces.length > MOST_PIECES ? `${pieces.length} pieces` : pieces.map(span).join(", "),
    percent(row.usableFraction),
    `${licenceText(licenceLimits)}${isWeak(row, result) ? " (weak)" : ""}`,
    watts(row.watts),
    limiterText(row, result),
    swr(row.worstSwr),
    watts(row.bestWatts),
    watts(row.averageWatts),
    keepAway(row),
  ];
}

/** Whether what the plan says of the licence's power rests on one secondary page. */
const isWeak = ({ band }: PowerResult, { findings }: CheckResult): boolean =>
  findings
    .filter((each): each is Finding<"plan-power-weak"> => each.code === "plan-power-weak")
    .some(({ params }) => params.bands.includes(band));
