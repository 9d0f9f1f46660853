/** Marks, remarks and bounds beside the readings in their cells. */
import { rhoOf } from "./antenna.js";
import { number, roomy } from "./layout.js";
import { mark, marked } from "./marking.js";
import { swrsOf, swrTable } from "./plain-tables.js";
import { linesOf, type Made, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng, words } from "./random.js";

/** Beyond a limit of the scale only a bound is printed, in one of these styles; {} is the limit. */
function bounded(styles: readonly string[], side: "above" | "below"): (rng: Rng) => Made {
  return (rng) => {
    const style = rng.pick(styles);
    const table = swrTable(rng, { layout: roomy(rng) });
    const values = swrsOf(table);
    const sorted = values.toSorted((a, b) => a - b);
    const share = (part: number): number => at(sorted, Math.floor(sorted.length * part));
    const limit = Number((side === "above" ? share(0.7) : share(0.15) + 0.05).toFixed(1));
    const text = style.replace("{}", number(limit, limit === Math.round(limit) ? 0 : 1, table.layout));
    // A word tells no number; it is at least as much as the greatest that is printed.
    const greatest = Math.max(1, ...values.filter((value) => value <= limit));
    const known = style.includes("{}") ? limit : greatest;
    values.forEach((value, i) => {
      if (side === "above" ? value <= limit : value >= limit) return;
      at(table.rows, i)[1] = text;
      const bound = side === "above" ? "atLeast" : "atMost";
      Object.assign(at(table.truth.points, i), { re: rhoOf(known), im: 0, tolRho: 0.004, bound, droppable: true });
    });
    return { table };
  };
}

/** Two values in a cell, the second a tenth higher: either is right. */
function doubled(between: string): (rng: Rng) => Made {
  return (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    mark(rng, table, (cell, i) => {
      at(table.truth.points, i).tolRho += 0.06;
      return cell + between + number(Number(cell.replace(",", ".")) + 0.1, 2, table.layout);
    });
    return { table, clear: false };
  };
}

export const IN_CELLS: Variants = {
  "question mark": marked(["{}?", "{} ?", "{}??", "{}(?)"]),
  asterisk: marked(["{}*", "{} *", "{}**", "*{}"]),
  about: marked(["~{}", "~ {}", "ca. {}", "≈{}", "about {}", "approx. {}", "{} or so"]),
  exclamation: marked(["{}!", "{} (!)"]),
  "remark behind a mark": marked(["{} # dip", "{} // best so far", "{} <- here", "{} ; gust"]),
  "remark in brackets": marked(["{} (wind)", "{} (rope slack)", "{} [wet]", "{} (see note)", "{} (2nd try)"]),
  "ratio to one": marked(["{}:1", "{} : 1", "{} to 1"], 1),
  "ratio one to": marked(["1:{}", "1 : {}"], 1),
  "uncertainty beside": marked(["{} ± 0.1", "{} +/- 0.05", "{}±0.1"], 0.5),
  "equals sign": marked(["= {}", "={}"], 1),
  footnote: (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    mark(rng, table, (cell) => cell + rng.pick([" a)", " ¹)", " †", " [1]"]));
    return { table, lines: [...linesOf(table), "", "a) rope was slack here; also marked otherwise"] };
  },
  "greater than": bounded([">{}", "> {}", ">{}:1", "over {}", "≥{}"], "above"),
  "and more": bounded(["{}+", "{} +", "{} or more", "{} and up"], "above"),
  "less than": bounded(["<{}", "< {}", "under {}", "≤{}"], "below"),
  "beyond the scale in words": bounded(words("over; OL; off scale; high; ∞; inf; Inf; too high"), "above"),
  "two values with a stroke": doubled("/"),
  "a range in a cell": doubled("-"),
  "a corrected value": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const { decimal } = table.layout;
    mark(rng, table, (cell) => rng.pick([`9${decimal}9 -> ${cell}`, `${cell} (was 3${decimal}3)`]), { share: 0.05 });
    return { table, clear: false };
  },
  "units in a few cells": (rng) => {
    const table = tableOf(rng, { kinds: ["return-loss"], layout: { ...roomy(rng), down: false } });
    mark(rng, table, (cell) => cell + rng.pick([" dB", "dB"]), { share: 0.2 });
    return { table };
  },
};
