import type { Equipment } from "../../bands/power.js";
import type { Wish } from "../../bands/wish.js";
import type { Feedline } from "../../facts/feedline/feedline.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { AdviseResult, NotForetold, WishNow } from "./advise-result.js";

/** What belongs beside every advice. Common practice, no source. */
export const ADVICE_CAUTIONS: readonly string[] = [
  "Cut less than computed, fold back before cutting, both legs of a dipole alike, and measure again after each step. A change of length moves all bands of the wire.",
  "Coils, capacitors, transformers and stubs must bear the voltage and current told (effective values; peaks are 1.4 times as much, a mistuned or moving wire makes more), and be weatherproof and out of reach. The open end of a stub carries high voltage.",
];

/** Beside lines of two bare wires. Common practice, no source. */
export const BALANCED_CAUTION =
  "Window and open-wire line is balanced: where it meets coax or a radio it needs a balun, it runs free of metal, walls and ground, and what is too long hangs in wide bends, never coiled.";

/** Whether any part is a line of two bare wires. */
export const hasBalanced = (advice: AdviseResult["advice"]): boolean =>
  advice.some(({ parts }) => parts.some(({ part }) => "feedline" in part && isBalanced(part.feedline)));

/** Of balanced kinds of the catalogue the loss is computed, and the least that it can be. */
export const isBalanced = ({ lossIs }: Feedline): boolean => lossIs === "at-least";

/** Wishes on which the antenna's end of the line is too unsure to tell a limit. */
export function endFindings(
  wishes: readonly Wish[],
  unsure: ReadonlySet<number>,
  feedline: Feedline | null,
): readonly Finding[] {
  const bands = [...new Set(wishes.filter((_, wish) => unsure.has(wish)).map(({ title }) => title))];
  if (feedline === null || bands.length === 0) return [];
  return [finding("caution", "antenna-end-unsure", { bands, lossIs: "of-its-kind" })];
}

/** What is to be kept in mind with an advice. */
export function adviseFindings(
  wishes: readonly WishNow[],
  { radio = {} }: Equipment,
  { ends, powerW, isPowerStated, advice }: Pick<AdviseResult, "ends" | "powerW" | "isPowerStated" | "advice">,
  hasPhase: boolean,
): readonly Finding[] {
  const untold = (reason: NotForetold) =>
    wishes.filter(({ notForetold }) => notForetold === reason).map(({ title }) => title);
  const reasons: readonly NotForetold[] = ["not-swept", "only-readings", "no-phase"];
  const canTell = wishes.some(({ notForetold }) => notForetold === null);
  const hasParts = advice.some(({ parts }) => parts.length > 0);
  const isTuned = radio.tuner !== undefined && radio.tuner !== "none" && radio.tunerLossDb === undefined;
  return [
    ...reasons.flatMap((reason) => {
      const titles = untold(reason);
      return titles.length === 0 ? [] : [finding("caution", "wish-not-foretold", { reason, wishes: titles })];
    }),
    ...(canTell && !hasPhase ? [finding("caution", "advice-without-phase", {})] : []),
    ...(canTell && ends === "analyser" ? [finding("caution", "advice-at-analyser", {})] : []),
    ...(hasParts && !isPowerStated ? [finding("info", "advice-power-assumed", { powerW })] : []),
    ...(canTell && isTuned ? [finding("info", "advice-tuner-loss", {})] : []),
  ];
}
