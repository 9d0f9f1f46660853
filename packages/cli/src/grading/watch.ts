import { statSync } from "node:fs";
import { fileGroups } from "@feedpoint/answers/asked/deployments";
import { compareOnBand } from "@feedpoint/answers/judged/order";
import { printable } from "@feedpoint/answers/text/escape";
import { signed, swr } from "@feedpoint/answers/text/units";
import { MADE_BY_LOSS_DB } from "@feedpoint/answers/words/season";
import { type BandGrade, lossChange, type SweepGrade } from "@feedpoint/core";
import { graderOf } from "./grader.js";
import type { GradingSettings } from "./grading-settings.js";

/** How often the folders are looked at, ms; a file that has not grown from one look to the next is whole. */
const EVERY_MS = 500;

/**
 * Grades what appears in folders, a line each, against the last one and the best so far, until it is interrupted.
 *
 * @param findFiles the sweep files that there are now
 */
export async function watchFolders(
  findFiles: () => Promise<readonly string[]>,
  settings: GradingSettings,
): Promise<void> {
  const grade = graderOf({ ...settings, isStreamed: false });
  const gradedOf = (file: string) => {
    const [group] = fileGroups({ files: [file], named: new Set([file]) }, { said: "each", log: settings.log });
    return group === undefined ? null : grade([group]);
  };
  const seen = new Map<string, string>();
  const told = new Set<string>();
  const past: SweepGrade[] = [];
  const look = async (isFirst: boolean) => {
    for (const file of await findFiles()) {
      const state = stateOf(file);
      const isWhole = seen.get(file) === state || isFirst;
      seen.set(file, state);
      if (!isWhole || told.has(`${file}\n${state}`)) continue;
      told.add(`${file}\n${state}`);
      const batch = gradedOf(file);
      if (!isFirst)
        for (const { reason } of batch?.unreadable ?? []) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
      for (const sweep of batch?.sweeps ?? []) {
        if (!isFirst) process.stdout.write(`${lineOf(sweep, past)}\n`);
        past.push(sweep);
      }
    }
  };
  await look(true);
  process.stderr.write(`feedpoint: watching, ${past.length} graded so far. Ctrl-C ends it.\n`);
  await new Promise<void>((resolve) => {
    let isOver = false;
    process.once("SIGINT", () => {
      isOver = true;
      resolve();
    });
    const again = async () => {
      if (isOver) return;
      await look(false);
      if (!isOver) setTimeout(again, EVERY_MS);
    };
    setTimeout(again, EVERY_MS);
  });
}

/** What changes as a file grows; of one that is gone nothing. */
function stateOf(file: string): string {
  try {
    const { size, mtimeMs } = statSync(file);
    return `${size} ${mtimeMs}`;
  } catch {
    return "";
  }
}

/** "may.s1p: 40m A 1.36 (was B 1.49, best), 20m C 2.10 (was C 2.40, best A 1.30 of april.s1p)" */
function lineOf(graded: SweepGrade, past: readonly SweepGrade[]): string {
  const last = past.at(-1);
  const bands = graded.bands.flatMap((entry) => {
    const { band, grade, bestSwr } = entry;
    if (bestSwr === null) return [];
    const was = last?.bands.find((each) => each.band === band && each.bestSwr !== null);
    const best = bestOn(past, band);
    const isBest = best === null || compareOnBand(entry, best.entry) < 0;
    const notes = [
      ...(was === undefined ? [] : [`was ${was.grade ?? "?"} ${swr(was.bestSwr)}`]),
      ...(past.length === 0
        ? []
        : [isBest ? "best so far" : `best ${best.entry.grade ?? "?"} ${swr(best.entry.bestSwr)} of ${best.label}`]),
    ];
    return [`${band} ${grade ?? "?"} ${swr(bestSwr)}${notes.length === 0 ? "" : ` (${notes.join(", ")})`}`];
  });
  return printable(`${graded.sweep.label}: ${bands.join(", ") || "no band swept"}${lossNote(graded, last)}`);
}

/** A better SWR may be no more than loss: what the last one did not lose is said. */
function lossNote(graded: SweepGrade, last: SweepGrade | undefined): string {
  const change = last === undefined ? null : lossChange(last, graded);
  if (change === null || Math.abs(change.at10MHzDb) - change.marginDb < MADE_BY_LOSS_DB) return "";
  const means = change.at10MHzDb > 0 ? "; a better SWR may be no more than that" : "";
  return `; ${signed(change.at10MHzDb, 1)} dB of loss at 10 MHz against ${last?.sweep.label ?? ""}${means}`;
}

interface Best {
  readonly entry: BandGrade;
  readonly label: string;
}

/** The best on a band so far; the first of equal ones. */
function bestOn(past: readonly SweepGrade[], name: string): Best | null {
  return past.reduce<Best | null>((best, { bands, sweep }) => {
    const entry = bands.find(({ band, bestSwr }) => band === name && bestSwr !== null);
    return entry === undefined || (best !== null && compareOnBand(entry, best.entry) >= 0)
      ? best
      : { entry, label: sweep.label };
  }, null);
}
