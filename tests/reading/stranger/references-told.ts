/** Where and how a file states its reference impedance; phrases from memory. */
import { joinRows, number } from "./layout.js";
import { under } from "./plain-tables.js";
import { linesOf, type Made, type Table, type TableOptions, tableOf } from "./printed-table.js";
import { RELATIVE } from "./quantities.js";
import { at, type Rng, words } from "./random.js";
import { talk } from "./talk.js";

/** Ways of writing with a reference of z ohms. */
export type ReferenceVariants = Readonly<Record<string, (rng: Rng, z: number) => Made>>;

/** A table of a quantity that hangs on the reference. */
export function relative(rng: Rng, reference: number, options: TableOptions = {}): Table {
  return tableOf(rng, { kinds: [rng.pick(RELATIVE)], reference, ...options });
}

/** The ohms as this table writes numbers. */
export function tongue(ohms: number, { layout }: Table): string {
  return String(ohms).replace(".", layout.decimal);
}

/** {u} is a unit of ohm, which {z} may also stand without. */
const MISTAKABLE = words("Calibrated to {z}{u}; normalised to {z}{u}; Base impedance {z}{u}");
const UNMISTAKABLE = words(
  "Reference impedance: {z}{u}; Z0 = {z}{u}; Z0={z}; Zo: {z}{u}; R0 = {z}{u}; All values against {z}{u}; \
System impedance {z}{u}; Measured in a {z}{u} system; Everything is referred to {z}{u}; reference (ohm): {z}; \
Ref. impedance {z}{u}; Reference: {z}{u}; SWR and reflection relative to {z}{u}; \
Characteristic impedance of the system: {z}{u}; Nominal impedance {z}{u}; Z_ref = {z}{u}; Port impedance: {z}{u}; ref. Z {z}{u}",
);

/** A line that states the reference. */
export function statement(rng: Rng, z: string, unmistakable = false): string {
  const unit = rng.pick([" ohm", " ohms", " Ω", "Ω", " Ohm", " ohm"]);
  const phrase = rng.pick(unmistakable ? UNMISTAKABLE : [...MISTAKABLE, ...UNMISTAKABLE]);
  return phrase.replace("{z}", z).replace("{u}", unit);
}

const NUMBER_WORDS: readonly (readonly [number, string])[] = [
  [75, "seventy-five"],
  [75, "seventy five"],
  [300, "three hundred"],
  [100, "a hundred"],
  [200, "two hundred"],
  [600, "six hundred"],
];
const SETTING = "Reference impedance; Z0 (ohm); System impedance (ohm); Z0; Reference resistance [ohm]; Ref impedance";
const SWR_HEADS = words(
  "SWR ({z} ohm); SWR @ {z} ohm; SWR @{z}Ω; SWR re {z} ohms; SWR [Z0={z}]; VSWR (Z0 = {z} Ω); SWR ref. {z} ohm; \
SWR, {z} ohms; SWR against {z} ohm; SWR_{z}ohm; SWR in {z} ohm",
);
const OTHER_IMPEDANCES = [
  "Feeder: 12 m of 50 ohm coax",
  "Dummy load of 47 ohm at hand",
  "Transformer 450 ohm to 50 ohm not in use",
  "Line: 300 ohm ribbon, 4 m",
];

export const TOLD_REFERENCES: ReferenceVariants = {
  "stated above": (rng, z) => {
    const table = relative(rng, z);
    return under([...talk(rng, rng.int(0, 2)), statement(rng, tongue(z, table)), ...rng.maybe("")], table);
  },
  "stated above by a mark": (rng, z) => {
    const table = relative(rng, z);
    const above = [...talk(rng, 2), statement(rng, tongue(z, table))];
    return under(
      above.map((line) => rng.pick(["# ", "# ", "#"]) + line),
      table,
    );
  },
  "stated below": (rng, z) => {
    const table = relative(rng, z);
    return { table, lines: [...linesOf(table), "", ...rng.maybe("End of data"), statement(rng, tongue(z, table))] };
  },
  "in the settings": (rng, z) => {
    const table = relative(rng, z, { layout: { delimiter: rng.pick([",", ";", "\t"]) } });
    const setting = [rng.pick(words(SETTING)), tongue(z, table)];
    const settings = joinRows([["Points", String(table.rows.length)], setting, ["Averages", "2"]], table.layout);
    return under([...settings, ""], table);
  },
  "in the header": (rng, z) => {
    const table = tableOf(rng, { kinds: ["swr"], reference: z });
    table.head[1] = rng.pick(SWR_HEADS).replace("{z}", String(z));
    return { table };
  },
  "in the header of dB or gamma": (rng, z) => {
    const [kind, name] = rng.pick([
      ["s11-db", "S11 (dB)"],
      ["return-loss", "Return loss (dB)"],
      ["rho", "|Γ|"],
    ] as const);
    const table = tableOf(rng, { kinds: [kind], reference: z });
    table.head[1] = name + rng.pick([` @ ${z} ohm`, ` ref ${z} ohm`, ` [Z0=${z} Ω]`, ` at ${z} ohms`]);
    return { table };
  },
  "a column of its own": (rng, z) => {
    const table = relative(rng, z);
    const inHeader = rng.chance(0.5);
    const name = rng.pick(["Z0", "Reference", "Ref. impedance", "Z0", "System impedance"]);
    table.head.push(inHeader ? `${name} (ohm)` : name);
    for (const row of table.rows) row.push(tongue(z, table) + (inHeader ? "" : " ohm"));
    return { table };
  },
  "in every cell": (rng, z) => {
    const layout = { delimiter: rng.pick([",", ";", "\t"] as const) };
    const table = tableOf(rng, { kinds: ["swr"], reference: z, layout });
    const behind = rng.pick([` (${z} ohm)`, ` @ ${z} Ω`, ` at ${z} ohm`]);
    for (const row of table.rows) row[1] = at(row, 1) + behind;
    return { table };
  },
  "in words": (rng) => {
    const [z, number] = rng.pick(NUMBER_WORDS);
    const table = relative(rng, z);
    const before = rng.pick(["Reference impedance:", "All of it against", "measured in a system of"]);
    return under([`${before} ${number} ohms`], table);
  },
  "in kilohm": (rng) => {
    const z = rng.pick([75, 300, 450, 600]);
    const table = relative(rng, z);
    const k = number(z / 1000, 3, table.layout).replace(/0+$/, "");
    return under([rng.pick([`Reference impedance: ${k} kΩ`, `Z0 = ${k} kohm`, `System impedance ${k} kOhm`])], table);
  },
  "beside another impedance that is none": (rng, z) => {
    const table = relative(rng, z);
    const both = [rng.pick(OTHER_IMPEDANCES), statement(rng, tongue(z, table))];
    return under([...(rng.chance(0.5) ? both : both.reverse()), ""], table);
  },
  "stated twice alike": (rng, z) => {
    const table = relative(rng, z);
    const said = (): string => statement(rng, tongue(z, table));
    return { table, lines: [said(), ...linesOf(table), "", said()] };
  },
  "impedances with a reference": (rng, z) => {
    const table = tableOf(rng, { kinds: [rng.pick(["r-x", "z-angle", "g-b"])], reference: z });
    return under([statement(rng, tongue(z, table))], table);
  },
};
