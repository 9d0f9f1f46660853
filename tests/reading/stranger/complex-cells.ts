/** Cells that hold a complex number: both parts, or magnitude and angle. */
import { roomy } from "./layout.js";
import { plainestTable } from "./plain-tables.js";
import type { Made, Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";

type Write = (first: string, second: string) => string;

function complexCells(rng: Rng, kind: string, write: Write, heads: readonly string[]): Made {
  const table = plainestTable(rng, { ...roomy(rng), decimal: "." }, kind);
  // Angles here are in degrees.
  if ((kind === "gamma-angle" || kind === "z-angle") && at(table.scales, 1) !== 1) {
    return complexCells(rng, kind, write, heads);
  }
  table.head = [at(table.head, 0), rng.pick(heads)];
  table.rows = table.rows.map(([frequency = "", first = "", second = ""]) => [frequency, write(first, second)]);
  return { table };
}

/** Real part, sign, imaginary part; the letter before or behind that. */
function cartesian(order: "letter first" | "letter last", gap: string, letter: string): Write {
  return (real, imaginary) => {
    const sign = imaginary.startsWith("-") ? "-" : "+";
    const size = imaginary.replace("-", "");
    return `${real}${gap}${sign}${gap}${order === "letter first" ? letter + size : size + letter}`;
  };
}

/** A style in which {m} is the magnitude and {a} the angle. */
const polar =
  (style: string): Write =>
  (magnitude, angle) =>
    style.replace("{m}", magnitude).replace("{a}", angle);

const GAMMA = ["Γ", "S11", "Reflection coefficient"];

export const COMPLEX_CELLS: Variants = {
  "complex cells, j behind": (rng) => {
    const write = cartesian("letter last", rng.pick(["", " "]), rng.pick(["j", "i"]));
    return complexCells(rng, "r-x", write, ["Z (ohm)", "Impedance (ohm)", "Z"]);
  },
  "complex cells, j before": (rng) => {
    const write = cartesian("letter first", rng.pick(["", " "]), rng.pick(["j", "j", "i"]));
    return complexCells(rng, "r-x", write, ["Z (ohm)", "Impedance", "Z = R + jX"]);
  },
  "complex cells with ohm": (rng) => {
    const write = cartesian("letter first", " ", "j");
    const withUnit: Write = (real, imaginary) => write(real, imaginary) + rng.pick([" Ω", " ohm"]);
    return complexCells(rng, "r-x", withUnit, ["Z", "Impedance"]);
  },
  "complex cells of gamma": (rng) => {
    const order = rng.chance(0.5) ? "letter first" : "letter last";
    return complexCells(rng, "gamma-re-im", cartesian(order, rng.pick(["", " "]), "j"), GAMMA);
  },
  "polar cells of gamma": (rng) => {
    const style = rng.pick(["{m}∠{a}°", "{m} @ {a}", "{m} ∠ {a}", "{m} < {a}°", "{m} at {a} deg"]);
    return complexCells(rng, "gamma-angle", polar(style), GAMMA);
  },
  "polar cells of Z": (rng) => {
    const style = rng.pick(["{m}∠{a}°", "{m} Ω ∠ {a}°", "{m} @ {a}°"]);
    return complexCells(rng, "z-angle", polar(style), ["Z (ohm)", "Impedance (Ω)"]);
  },
  "pairs in brackets": (rng) => {
    const write: Write = (real, imaginary) => `(${real}, ${imaginary})`;
    return complexCells(rng, "r-x", write, ["Z (ohm)", "Z = (R, X) in ohm"]);
  },
};
