import type { AdviseResult, WishNow, WishOutcome } from "@feedpoint/core";
import { percent } from "../text/units.js";

/** The answer in a few sentences. */
export function adviceHeadline(result: AdviseResult): string {
  const { verdict, advice, experiment, wishes, findings } = result;
  const open = wishes.filter(({ now }) => now === null).map(({ title }) => title);
  const untold = open.length === 0 ? "" : ` Nothing can be told of ${open.join(", ")}.`;
  switch (verdict) {
    case "leave-it":
      return `Leave it as it is: all of ${told(wishes).join(", ")} is within reach without a tuner.${untold}`;
    case "measure-first":
      return `Measure first: too little is known of ${titles(wishes) || "what is wanted"} for a change to be foretold.${experiment === null ? "" : ` ${experiment.message}`}`;
    case "nothing-better": {
      const onlyWire = findings.some(({ code }) => code === "advice-without-phase");
      const tried = onlyWire
        ? "No change of the wire, which is all that an SWR alone can tell of,"
        : "Nothing that was tried";
      const isLineDoubtful = experiment?.code === "at-antenna";
      return isLineDoubtful
        ? `The line is not what was stated: it would explain more than came back. ${experiment.message}`
        : `${tried} is better than things as they are by more than what is not sure.${untold}`;
    }
    case "try": {
      const [first] = advice;
      if (first === undefined) return "";
      return `Try first: ${first.what.charAt(0).toLowerCase()}${first.what.slice(1)}. ${changesText(wishes, first.outcomes)}${untold}`;
    }
  }
}

const titles = (wishes: readonly WishNow[]) => wishes.map(({ title }) => title).join(", ");
const told = (wishes: readonly WishNow[]) => wishes.filter(({ now }) => now !== null).map(({ title }) => title);

/** Changes below this are none, for a person. */
const POINT = 0.01;
/** A share that may differ by more than this is told with what it may be. */
const WIDE = 0.2;

/** What gets better by an advice, what gets worse, and what stays out of reach. */
function changesText(wishes: readonly WishNow[], outcomes: readonly WishOutcome[]): string {
  const foretold = wishes.filter(({ notForetold }) => notForetold === null);
  const changes = foretold.flatMap(({ title, now }, i) => {
    const after = outcomes[i];
    return now === null || after === undefined
      ? []
      : [{ title, from: now.reached, to: after.reached, between: after.reachedBetween }];
  });
  const moved = ({ title, from, to, between: { low, high } }: (typeof changes)[number]) => {
    const isWide = high - low > WIDE;
    const perhaps = isWide ? ` (it may be ${Math.round(100 * low)}-${Math.round(100 * high)})` : "";
    return `${title} from ${percent(from)} to ${percent(to)}${perhaps}`;
  };
  const better = changes.filter(({ from, to }) => to > from + POINT);
  const worse = changes.filter(({ from, to }) => to < from - POINT);
  const left = changes.filter(({ from, to }) => Math.abs(to - from) <= POINT && to < 1 - POINT);
  return [
    better.length === 0
      ? "It saves the tuner on more of what is wanted."
      : `It should bring ${better.map(moved).join(", ")}.`,
    ...(worse.length === 0 ? [] : [`At the cost of ${worse.map(moved).join(", ")}.`]),
    ...(left.length === 0
      ? []
      : [`It does nothing for ${left.map(({ title, to }) => `${title} (${percent(to)})`).join(", ")}.`]),
  ].join(" ");
}
