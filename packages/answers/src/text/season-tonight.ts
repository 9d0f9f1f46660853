import { dateOf, type ForTonight, type Wish, type WishGrade } from "@feedpoint/core";
import { STANDINGS } from "../words/season.js";
import { needText } from "../words/verdicts.js";
import type { SeasonTable } from "./season-table.js";
import { sweepNames } from "./sweep-names.js";
import type { TableColumn } from "./table.js";
import { fixed, megahertz, percent, swr, watts } from "./units.js";

/** Which deployment for what is wanted, the best first. */
export function tonightTable(tonight: readonly ForTonight[], wishes: readonly Wish[]): SeasonTable {
  const nameOf = sweepNames(tonight.map(({ graded }) => graded));
  const columns: readonly TableColumn[] = [
    { title: "Rank", align: "right" },
    { title: "Deployment" },
    { title: "Date", spare: 1 },
    ...wishes.map(({ title }) => ({ title })),
    { title: "Against it" },
  ];
  const rows = tonight.map((each) => [
    each.rank === null ? "–" : String(each.rank),
    nameOf(each.graded.sweep),
    dateOf(each.graded) ?? "–",
    ...each.graded.wishes.map(wishText),
    againstIt(each),
  ]);
  const dials = wishes.flatMap(({ title, dialsHz }) =>
    dialsHz.length === 0 ? [] : [`${title}: ${dialsHz.map((hz) => megahertz(hz)).join(", ")} MHz`],
  );
  const several = wishes.length > 1 ? ", by the one that goes worst" : "";
  const above = `For ${wishes.map(({ title }) => title).join(" and ")}, the best first${several}${dials.length === 0 ? "" : ` (${dials.join("; ")})`}. Each cell: what it takes, the worst SWR, the power, the least share of it that the line lets arrive. Those whose low SWR may be loss come last; against them stands how much: ≤ may be lost beside the line, + is lost more than in the best of these, at 10 MHz:`;
  return { name: "For tonight", above, columns, rows, isRanking: true };
}

/** What each wish takes, a sentence for each: "20m FT8: your tuner, SWR up to 2.31, 100 W, 84 % arrives." */
export const wishSentences = (wishes: readonly WishGrade[]): readonly string[] =>
  wishes.map((wish) => `${wish.title}: ${wishText(wish)}.`);

/** "your tuner, 2.31, 100 W, 84 %" */
function wishText({
  worstSwr,
  isAtLeast,
  watts: power,
  arrives,
  need,
  sweptFraction,
  reachedFraction,
}: WishGrade): string {
  if (worstSwr === null || sweptFraction < 1) return "not known";
  const what =
    need === "none"
      ? "no tuner"
      : reachedFraction === 1
        ? "your tuner"
        : need === "beyond-tuner"
          ? reachedFraction > 0
            ? `${percent(reachedFraction)} of it`
            : "no tuner helps"
          : needText(need);
  return [
    what,
    `${isAtLeast ? "≥" : ""}${swr(worstSwr)}`,
    ...(power === null ? [] : [watts(power)]),
    ...(arrives === null ? [] : [percent(arrives.least)]),
  ].join(", ");
}

function againstIt({ hiddenLossDb, hiddenLossIs, why, standing, worst, graded }: ForTonight): string {
  if (why === "problem") return "in doubt, see below";
  if (why === "not-swept") return `${worst} not known`;
  if (hiddenLossDb !== null) return `${hiddenLossIs === "most" ? "≤" : "+"}${fixed(hiddenLossDb, 1)} dB lost`;
  if (standing === "out-of-reach" || standing === "in-part") return `${worst} ${STANDINGS[standing]}`;
  return graded.lossBoundDb === null ? "loss not known" : "";
}
