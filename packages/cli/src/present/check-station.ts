import type {
  AntennaEnd,
  CheckResult,
  DialResult,
  Feedline,
  LossRange,
  PowerLimit,
  PowerResult,
} from "@feedpoint/core";
import { needText } from "../words/verdicts.js";
import { exposureTable, keepAway, keepAwayNote } from "./exposure.js";
import type { NamedTable } from "./named-table.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { fixed, percent, power, span, swr, watts } from "./units.js";

/** What a check says of dial frequencies, power and feedline; nothing where none was stated. */
export function stationTables(result: CheckResult): readonly NamedTable[] {
  return [
    dialTable(result),
    powerTable(result),
    exposureTable(result),
    feedlineTable(result),
    pathTable(result),
  ].filter((table) => table !== null);
}

/** The same for a terminal. */
export function stationTexts(result: CheckResult, width: number): readonly string[] {
  const said = (text: string | null) => (text === null ? [] : [wrap(text, width, "  ")]);
  return stationTables(result).map(({ intro, columns, rows, outro }) =>
    [...said(intro), ...(rows.length === 0 ? [] : [textTable(columns, rows, { width })]), ...said(outro)].join("\n"),
  );
}

const DIAL_COLUMNS: readonly TableColumn[] = [
  { title: "Dial MHz" },
  { title: "For" },
  { title: "Mode" },
  { title: "Occupies MHz", spare: 2 },
  { title: "Permitted" },
  { title: "Licence limit", spare: 1 },
  { title: "SWR", align: "right" },
  { title: "Needs" },
  { title: "At most", align: "right" },
  { title: "limited by" },
  { title: "keep away", align: "right" },
];

function dialTable({ dials }: CheckResult): NamedTable | null {
  if (dials.length === 0) return null;
  const isBare = dials.some(({ mode }) => mode === null);
  const outro = isBare
    ? "Say --modes to be told what is permitted there, and judged over all that a signal occupies."
    : null;
  return { name: "Dial frequencies", intro: null, columns: DIAL_COLUMNS, rows: dials.map(dialRow), outro };
}

function dialRow(dial: DialResult): readonly string[] {
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
    limiterText(dial),
    keepAway(dial),
  ];
}

/** Where the plan does not say what the licence allows, that stands beside the power. */
const licenceText = (limits: readonly PowerLimit[]) =>
  limits.length === 0 ? "not stated" : limits.map(power).join(", ");

/** What sets a power, and that a maker's rating does not hold there. */
const limiterText = ({ limitedBy, isRatingCovered }: Pick<PowerResult, "limitedBy" | "isRatingCovered">): string =>
  isRatingCovered === false ? `${limitedBy ?? "–"}; SWR beyond rating` : (limitedBy ?? "–");

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
  { title: "At most", align: "right" },
  { title: "limited by" },
  { title: "at SWR", align: "right" },
  { title: "at best SWR", align: "right", spare: 3 },
  { title: "averaged", align: "right", spare: 4 },
  { title: "keep away", align: "right" },
];

/** More pieces than these are counted, not listed. */
const MOST_PIECES = 2;

/** null where no power is known: nothing limits it, or nothing is within reach, which the bands' own table says. */
function powerTable({ bands, people }: CheckResult): NamedTable | null {
  const results = bands.flatMap(({ power: ofBand }) => ofBand);
  const inReach = results.filter((result) => result.watts !== null);
  const out = [...new Set(results.filter(({ usableFraction }) => usableFraction === 0).map(({ band }) => band))];
  if (inReach.length === 0) return nothingInReach(bands);
  const never = out.filter((band) => !inReach.some((result) => result.band === band));
  const outOfReach = never.length === 0 ? "" : ` No power where the SWR is out of reach: ${never.join(", ")}.`;
  const outro = `${keepAwayNote(people)}${outOfReach}`;
  return { name: "Power", intro: null, columns: POWER_COLUMNS, rows: inReach.map(powerRow), outro };
}

/** Why no power is told though it was asked for; null where it was not, or nothing limits it. */
function nothingInReach(bands: CheckResult["bands"]): NamedTable | null {
  const asked = bands.filter(({ power: ofBand }) => ofBand.some(({ usableFraction }) => usableFraction > 0));
  if (asked.length > 0) {
    const where = asked.map(({ band }) => band).join(", ");
    const outro = `No power is told on ${where}: neither the plan nor you state a limit. Say --power for the radio's.`;
    return { name: "Power", intro: null, columns: POWER_COLUMNS, rows: [], outro };
  }
  const out = bands.filter(
    ({ power: ofBand }) => ofBand.length > 0 && ofBand.every(({ usableFraction }) => usableFraction === 0),
  );
  if (out.length === 0) return null;
  const outro = `No power is told: the SWR is out of reach, or not known but at single points, on ${out.map(({ band }) => band).join(", ")}`;
  return { name: "Power", intro: null, columns: POWER_COLUMNS, rows: [], outro };
}

function powerRow(result: PowerResult): readonly string[] {
  const { pieces, licenceLimits } = result;
  return [
    result.band,
    result.mode,
    pieces.length > MOST_PIECES ? `${pieces.length} pieces` : pieces.map(span).join(", "),
    percent(result.usableFraction),
    licenceText(licenceLimits),
    watts(result.watts),
    limiterText(result),
    swr(result.worstSwr),
    watts(result.bestWatts),
    watts(result.averageWatts),
    keepAway(result),
  ];
}

const FEEDLINE_COLUMNS: readonly TableColumn[] = [
  { title: "Band" },
  { title: "Matched loss", align: "right" },
  { title: "Best SWR" },
  { title: "loss", align: "right" },
  { title: "delivered", align: "right" },
  { title: "Worst SWR", spare: 2 },
  { title: "loss", align: "right", spare: 2 },
  { title: "delivered", align: "right", spare: 2 },
  { title: "On the line at most", align: "right", spare: 3 },
];

function feedlineTable({ bands, feedline }: CheckResult): NamedTable | null {
  if (feedline === null) return null;
  const rows = bands.flatMap(({ band, best, worst, feedline: result }) => {
    if (result?.atBest == null || result.atWorst === null) return [];
    const { atBest, atWorst, stress, powerW } = result;
    return [
      [
        band,
        `${fixed(atBest.matchedLossDb, 2)} dB`,
        ...endOf(best?.swr ?? null, atBest),
        ...endOf(worst?.swr ?? null, atWorst),
        stress === null
          ? "–"
          : `${fixed(stress.volts, 0)} V rms, ${fixed(stress.amperes, 1)} A rms at ${watts(powerW)}`,
      ],
    ];
  });
  if (rows.length === 0) return null;
  const intro = `Through the feedline: ${feedlineText(feedline)}. SWR at the analyser → at the antenna's end:`;
  return { name: "Feedline", intro, columns: FEEDLINE_COLUMNS, rows, outro: null };
}

function endOf(swrHere: number | null, { antennaSwr, totalLossDb, deliveredFraction }: AntennaEnd): readonly string[] {
  const pair = `${swr(swrHere)} → ${swr(antennaSwr)}`;
  if (totalLossDb === Number.POSITIVE_INFINITY) return [pair, "–", "–"];
  return [pair, `${fixed(totalLossDb, 2)} dB`, percent(deliveredFraction)];
}

const PATH_COLUMNS: readonly TableColumn[] = [
  { title: "Band" },
  { title: "in the line" },
  { title: "in the tuner" },
  { title: "in the transformer" },
  { title: "reaches the wire" },
];

/** null where nothing is known of line, tuner and transformer. */
function pathTable({ bands, feedline }: CheckResult): NamedTable | null {
  const rows = bands.flatMap(({ band, path }) => {
    if (path === null) return [];
    const { line, tuner, transformer, arrives } = path;
    const shares = `${percent(arrives.least)} to ${percent(arrives.most)}`;
    return [
      [
        band,
        line === null && feedline !== null ? "not sure" : lossText(line),
        tuner === null ? "–" : lossText(tuner),
        lossText(transformer),
        shares,
      ],
    ];
  });
  if (rows.length === 0) return null;
  const outro =
    "Tuner: what was stated, or 0.1 to 1 dB as one may. How much of what reaches the wire is radiated, and how much heats wire, ground and core, no sweep can tell. These tests would: sweep the line alone (feedpoint line); hold the line or add a choke and sweep again, for a change shows that the line radiates; compare reports of who heard you.";
  return { name: "Where the watts go", intro: "Where the watts go:", columns: PATH_COLUMNS, rows, outro };
}

function lossText(loss: LossRange | null): string {
  if (loss === null) return "not stated";
  const { leastDb, greatestDb } = loss;
  return leastDb === greatestDb ? `${fixed(leastDb, 1)} dB` : `${fixed(leastDb, 1)} to ${fixed(greatestDb, 1)} dB`;
}

/** A feedline in a few words. */
export const feedlineText = ({ title, lengthM, characteristicOhms, velocityFactor }: Feedline): string =>
  `${title}, ${lengthM} m, ${characteristicOhms} Ω, velocity factor ${velocityFactor}`;
