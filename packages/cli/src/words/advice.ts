import type { AdviseResult, WishOutcome } from "@feedpoint/core";
import { percent } from "../present/units.js";

/** The answer in a sentence or two. */
export function adviceHeadline(result: AdviseResult): string {
  const { verdict, advice, experiment, wishes } = result;
  switch (verdict) {
    case "leave-it":
      return `Leave it as it is: all of ${titles(result)} is within reach without a tuner, and the power arrives.`;
    case "measure-first":
      return `Measure first: too little is known of ${wishes.map(({ title }) => title).join(", ") || "what is wanted"} for anything to be foretold.${experiment === null ? "" : ` ${experiment.message}`}`;
    case "nothing-better":
      return `Nothing that was tried is better than things as they are by more than what is not sure. ${worstText(result, nowOf(result), "As it is")}`;
    case "try": {
      const [first] = advice;
      if (first === undefined) return "";
      return `Try first: ${first.what.charAt(0).toLowerCase()}${first.what.slice(1)}. ${worstText(result, first.outcomes, "Then")}`;
    }
  }
}

const nowOf = ({ wishes }: AdviseResult) => wishes.flatMap(({ now }) => now ?? []);

const foretold = ({ wishes }: AdviseResult) => wishes.filter(({ now }) => now !== null);

const titles = (result: AdviseResult) =>
  foretold(result)
    .map(({ title }) => title)
    .join(", ");

/** The wish that is served worst, and by how much. */
function worstText(result: AdviseResult, outcomes: readonly WishOutcome[], when: string): string {
  const shares = outcomes.map(({ reached }) => reached);
  const worst = Math.min(...shares);
  const names = foretold(result)
    .filter((_, i) => shares[i] === worst)
    .map(({ title }) => title);
  const before = nowOf(result).filter((_, i) => shares[i] === worst);
  if (worst === 1) return `${when} all that is wanted is within reach.`;
  const was = Math.min(...before.map(({ reached }) => reached));
  const change = when === "Then" ? ` (now ${percent(was)})` : "";
  return `${when} ${names.join(", ")} ${names.length > 1 ? "are" : "is"} served worst: ${percent(worst)} within reach${change}.`;
}
