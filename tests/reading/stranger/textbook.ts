/**
 * Does the printed text say what the truth says? A reader of its own, of tables whose header it need not guess, by the formulas
 * of textbooks written out in real arithmetic: nothing here is shared with what prints the tables.
 */
import { present } from "../../support/sweeps.js";
import { UNIT_HZ } from "./layout.js";
import { linesOf, tableOf } from "./printed-table.js";
import { KINDS } from "./quantities.js";
import { at, Rng } from "./random.js";

type Pair = readonly [number, number];

const RADIAN = Math.PI / 180;

function ofImpedance(r: number, x: number, z0: number): Pair {
  const square = (r + z0) ** 2 + x * x;
  return [(r * r - z0 * z0 + x * x) / square, (2 * z0 * x) / square];
}

function ofAdmittance(g: number, b: number, z0: number): Pair {
  const [re, im] = ofImpedance(g, b, 1 / z0);
  return [-re, -im];
}

const turned = (size: number, degrees: number): Pair => [
  size * Math.cos(degrees * RADIAN),
  size * Math.sin(degrees * RADIAN),
];
const root = (square: number): number => Math.sqrt(Math.max(0, square));

/** Γ, or its magnitude and 0, from columns in plain units: ohm, siemens, degrees, dB, watts, parts of one. */
const FORMULAS: Readonly<Record<string, (first: number, second: number, z0: number) => Pair>> = {
  swr: (s) => [(s - 1) / (s + 1), 0],
  "return-loss": (d) => [1 / Math.sqrt(10 ** (d / 10)), 0],
  "return-loss-negative": (d) => [Math.sqrt(10 ** (d / 10)), 0],
  "s11-db": (d) => [Math.sqrt(10 ** (d / 10)), 0],
  rho: (rho) => [rho, 0],
  "rho-percent": (rho) => [rho, 0],
  "gamma-re-im": (re, im) => [re, im],
  "gamma-angle": turned,
  "db-angle": (d, angle) => turned(Math.sqrt(10 ** (d / 10)), angle),
  "return-loss-angle": (d, angle) => turned(1 / Math.sqrt(10 ** (d / 10)), angle),
  "r-x": ofImpedance,
  "z-angle": (size, angle, z0) => ofImpedance(...turned(size, angle), z0),
  "z-and-r": (size, r, z0) => [Math.hypot(...ofImpedance(r, root(size * size - r * r), z0)), 0],
  "r-and-size-of-x": (r, x, z0) => [Math.hypot(...ofImpedance(r, x, z0)), 0],
  "g-b": ofAdmittance,
  "y-angle": (size, angle, z0) => ofAdmittance(...turned(size, angle), z0),
  parallel: (r, x, z0) => ofAdmittance(1 / r, -1 / x, z0),
  "reflected-share": (share) => [root(share), 0],
  "reflected-fraction": (share) => [root(share), 0],
  "accepted-share": (share) => [root(1 - share), 0],
  "mismatch-loss": (d) => [root(1 - 10 ** (-d / 10)), 0],
  "forward-reflected": (forward, reflected) => [root(reflected / forward), 0],
};

/** What a number in this unit is multiplied by to be in plain units; 1 for all others. */
const SCALES: ReadonlyMap<string, number> = new Map([
  ["kΩ", 1e3],
  ["kohm", 1e3],
  ["rad", 1 / RADIAN],
  ["radians", 1 / RADIAN],
  ["mS", 1e-3],
  ["µS", 1e-6],
  ["millisiemens", 1e-3],
  ["mW", 1e-3],
  ["%", 0.01],
  ["percent", 0.01],
]);

/** The cells of a line of numbers; those that hold the delimiter are quoted. */
function cellsOf(line: string, delimiter: string): string[] {
  if (delimiter === " ") return line.trim().split(/ +/);
  const parts = line.split('"');
  // What stands between quotes has its delimiters kept.
  const hidden = parts.map((part, i) => (i % 2 === 0 ? part.replaceAll(delimiter, "\n") : part));
  return hidden.join("").split("\n");
}

/** What is wrong with an ordinary table, by its number; nothing if the text says what the truth says. */
export function faultsOfTruth(seed: number, index: number): string[] {
  const rng = new Rng(seed, index);
  const kind = rng.pick([...KINDS.keys()]);
  const z0 = rng.pick([50, 50, 75, 200]);
  const table = tableOf(rng, { kinds: [kind], reference: z0 });
  const formula = present(FORMULAS[kind], kind);
  const [, ...lines] = linesOf(table);
  return lines.flatMap((line, row) => {
    const [frequency = Number.NaN, ...values] = cellsOf(line, table.layout.delimiter).map((cell, column) => {
      const scale = column === 0 ? UNIT_HZ[table.layout.unit] : (SCALES.get(at(table.units, column)) ?? 1);
      return Number(cell.replace(",", ".")) * scale;
    });
    const [re, im] = formula(values[0] ?? Number.NaN, values[1] ?? 0, z0);
    const truth = at(table.truth.points, row);
    const size = Math.hypot(truth.re, truth.im);
    const faults = [
      !(Math.abs(frequency - truth.hz) <= truth.hzTol) && "frequency",
      !(Math.abs(Math.hypot(re, im) - size) <= truth.tolRho) && "magnitude",
      table.truth.vector === true && !(Math.hypot(re - truth.re, im - truth.im) <= truth.tol) && "phase",
      !(size < 1) && "more reflected than received",
    ];
    return faults.filter((fault) => fault !== false).map((fault) => `table ${index}, ${kind}, ${line}: ${fault}`);
  });
}
