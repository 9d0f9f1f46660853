import type { AntennaEnd, CheckResult, Feedline, LossRange } from "@feedpoint/core";
import { HINTS, type Voice } from "../words/remedies.js";
import type { NamedTable } from "./named-table.js";
import type { TableColumn } from "./table.js";
import { fixed, percent, swr, watts } from "./units.js";

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

export function feedlineTable({ bands, feedline }: CheckResult): NamedTable | null {
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
export function pathTable({ bands, feedline }: CheckResult, voice: Voice): NamedTable | null {
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
  const outro = `Tuner: what was stated, or 0.1 to 1 dB as one may. How much of what reaches the wire is radiated, and how much heats wire, ground and core, no sweep can tell. These tests would: ${HINTS[voice].lineAlone}; hold the line or add a choke and sweep again, for a change shows that the line radiates; compare reports of who heard you.`;
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
