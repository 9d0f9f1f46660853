/** What the columns hold, or what their numbers mean, stated only above the table. */
import { joinRows } from "./layout.js";
import { plainTable } from "./plain-tables.js";
import { linesOf, type Table, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng, words } from "./random.js";
import { talk } from "./talk.js";

/** What is stated above a header that does not say it: kind, statements, names in the header. Units are the plain ones. */
const TOLD: readonly (readonly [kind: string, statements: readonly string[], names: readonly string[]])[] = [
  [
    "swr",
    words("Quantity: SWR; The second column is the standing wave ratio; Measured: VSWR; Value = SWR; Parameter: SWR"),
    ["Value"],
  ],
  ["return-loss", ["Quantity: return loss in dB", "Value = return loss (dB)", "Parameter: return loss, dB"], ["Value"]],
  [
    "gamma-re-im",
    [
      "Parameter: reflection coefficient; format: real and imaginary part",
      "Quantity: S11, real/imaginary",
      "Parameter: Γ, format re/im",
    ],
    ["Real", "Imag"],
  ],
  [
    "r-x",
    [
      "Quantity: impedance in ohm; format: resistance and reactance",
      "Parameter: Z (ohm), real and imaginary part",
      "Parameter: impedance, ohms, format R + jX",
    ],
    ["Real", "Imag"],
  ],
  [
    "db-angle",
    ["Parameter: S11; format: magnitude in dB, angle in degrees", "Quantity: reflection coefficient, dB and degrees"],
    ["Magnitude", "Phase"],
  ],
  [
    "z-angle",
    ["Quantity: impedance; format: magnitude in ohm, phase in degrees", "Parameter: Z, ohm and degrees"],
    ["Magnitude", "Phase"],
  ],
];

function told(rng: Rng): { table: Table; statement: string } {
  const [kind, statements, names] = rng.pick(TOLD);
  const table = tableOf(rng, { kinds: [kind] });
  // The statement says degrees and ohms.
  if (table.scales.some((scale) => scale !== 1)) return told(rng);
  names.forEach((name, i) => {
    table.head[at(table.valuesAt, i)] = name;
  });
  return { table, statement: rng.pick(statements) };
}

export const TOLD_ABOVE: Variants = {
  "quantity stated above": (rng) => {
    const { table, statement } = told(rng);
    return { table, lines: [...talk(rng, rng.int(0, 2)), statement, ...rng.maybe(""), ...linesOf(table)] };
  },
  "unit of frequency stated above": (rng) => {
    const table = plainTable(rng);
    table.head[0] = rng.pick(["Frequency", "Freq", "f"]);
    const { unit } = table.layout;
    return {
      table,
      lines: [
        ...talk(rng, 2),
        rng.pick([
          `Unit of frequency: ${unit}`,
          `Frequencies in ${unit}`,
          `All frequencies are in ${unit}`,
          `Frequency unit,${unit}`,
          `frequency unit = ${unit}`,
        ]),
        ...linesOf(table),
      ],
    };
  },
  "no header, told above": (rng) => {
    const [kind, name] = rng.pick([
      ["swr", "the SWR"],
      ["return-loss", "the return loss in dB"],
      ["r-x", "R and X in ohm"],
    ] as const);
    const table = tableOf(rng, { kinds: [kind], plainUnits: true });
    return {
      table,
      lines: [
        `The rows hold the frequency in ${table.layout.unit} and ${name}, without a header`,
        "",
        ...joinRows(table.rows, table.layout),
      ],
    };
  },
  "angle unit stated above": (rng) => {
    const table = tableOf(rng, { kinds: [rng.pick(["gamma-angle", "z-angle", "db-angle"])] });
    const radians = at(table.scales, 1) !== 1;
    table.head[2] = at(table.names, 2);
    return {
      table,
      lines: [
        rng.pick(radians ? ["All angles in radians", "Angle unit: rad"] : ["All angles in degrees", "Angle unit: deg"]),
        ...linesOf(table),
      ],
    };
  },
  "sign of return loss stated above": (rng) => {
    const negative = rng.chance(0.5);
    const table = tableOf(rng, { kinds: [negative ? "return-loss-negative" : "return-loss"] });
    return {
      table,
      lines: [`Return loss is written as a ${negative ? "negative" : "positive"} number`, ...linesOf(table)],
    };
  },
};
