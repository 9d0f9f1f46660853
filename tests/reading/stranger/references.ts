/** Reference impedances other than 50 ohm: stated in any way and place, twice and otherwise, or hidden in normalised values. */
import { gammaOf } from "./antenna.js";
import { number } from "./layout.js";
import { under } from "./plain-tables.js";
import { draftOf, linesOf, type Made, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";
import { type ReferenceVariants, relative, statement, TOLD_REFERENCES, tongue } from "./references-told.js";
import type { Draft, Truth } from "./truth.js";

const OTHERS = [25, 28, 37.5, 60, 72, 75, 75, 75, 93, 95, 100, 150, 200, 240, 300, 300, 450, 600];
const REFUSE: Truth = { kind: "refuse", cautionSuffices: false };
const REFUSED = { clear: false, truth: REFUSE } as const;

const DOUBTFUL: ReferenceVariants = {
  "only a feeder is told": (rng) => {
    const table = relative(rng, 50);
    const feeder = rng.pick(["Feeder: 12 m of 75 ohm coax", "through 4 m of 300 ohm ribbon", "Line: 20 m, 75 ohm"]);
    return { ...under([feeder, ""], table), clear: false };
  },
  "two that differ, above": (rng, z) => {
    const table = relative(rng, z);
    const other = String(z === 75 ? 50 : 75);
    return { ...under([statement(rng, tongue(z, table), true), statement(rng, other, true)], table), ...REFUSED };
  },
  "two that differ, above and below": (rng, z) => {
    const table = relative(rng, z);
    const above = statement(rng, tongue(z, table), true);
    const below = statement(rng, String(z === 100 ? 75 : 100), true);
    return { table, lines: [above, ...linesOf(table), "", below], ...REFUSED };
  },
  "two that differ, above and in the header": (rng, z) => {
    const table = tableOf(rng, { kinds: ["swr"], reference: z });
    table.head[1] = `SWR (${z === 200 ? 100 : 200} ohm)`;
    return { ...under([statement(rng, tongue(z, table), true)], table), ...REFUSED };
  },
  "two that differ, in a column": (rng, z) => {
    const table = relative(rng, z);
    table.head.push("Z0 (ohm)");
    const half = Math.floor(table.rows.length / 2);
    table.rows.forEach((row, i) => {
      row.push(i < half ? tongue(z, table) : "50");
    });
    return { table, clear: false, truth: { kind: "refuse", cautionSuffices: true } };
  },
  "normalised impedance, reference told": (rng, z) => {
    const { table } = normalised(rng, z);
    const names = rng.pick([
      ["r", "x"],
      ["R/Z0", "X/Z0"],
      ["r (normalised)", "x (normalised)"],
      ["Normalised R", "Normalised X"],
      [`R/${z}`, `X/${z}`],
    ]);
    table.head.splice(1, 2, ...names);
    const told = [
      `z = Z/Z0, Z0 = ${z} ohm`,
      `Impedance normalised to ${z} ohm`,
      `Normalised impedance, reference ${z} ohm`,
    ];
    return under([rng.pick(told)], table);
  },
  "normalised impedance, reference untold": (rng) => {
    const { table } = normalised(rng, 50);
    const names = rng.pick([
      ["R/Z0", "X/Z0"],
      ["r (normalised)", "x (normalised)"],
      ["Normalised resistance", "Normalised reactance"],
      ["Re(Z/Z0)", "Im(Z/Z0)"],
    ]);
    table.head.splice(1, 2, ...names);
    return { table };
  },
  "SWR against two impedances side by side": (rng, z) => {
    const table = tableOf(rng, { kinds: ["swr"], reference: 50, layout: { down: false } });
    const other = tableOf(rng, { kinds: ["swr"], reference: z, swept: table.swept, layout: table.layout });
    table.head = [at(table.head, 0), "SWR (50 ohm)", `SWR (${z} ohm)`];
    table.rows.forEach((row, i) => {
      row.push(at(at(other.rows, i), 1));
    });
    const ways = [[table.truth], [other.truth], [table.truth, other.truth]];
    return { table, clear: false, truth: { kind: "sweeps", ways } };
  },
};

/** R and X as multiples of the reference, and how far Γ may be off by their rounding. */
function normalised(rng: Rng, z: number): Made {
  const table = tableOf(rng, { kinds: ["r-x"], reference: z, plainUnits: true, layout: { down: false } });
  const decimals = rng.int(3, 4);
  const half = 0.5 * 10 ** -decimals * z * 1.5;
  table.rows.forEach((row, i) => {
    const load = at(table.swept.z, i);
    row.splice(1, 2, number(load.re / z, decimals, table.layout), number(load.im / z, decimals, table.layout));
    const slope = (2 * z) / ((load.re + z) ** 2 + load.im ** 2);
    const tol = slope * half * 1.1 + 2e-6;
    Object.assign(at(table.truth.points, i), gammaOf(load, z), { tol, tolRho: tol });
  });
  return { table };
}

/** A file that refers to some other impedance than 50 ohm. */
export function references(rng: Rng): Draft {
  const variants: Variants = Object.fromEntries(
    Object.entries({ ...TOLD_REFERENCES, ...DOUBTFUL }).map(([name, make]) => [
      name,
      (chance) => make(chance, chance.pick(OTHERS)),
    ]),
  );
  return draftOf(rng, variants);
}
