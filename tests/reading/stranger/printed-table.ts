/** A sweep as a printed table: header, rows, and what rounding may do to the truth. */
import { present } from "../../support/sweeps.js";
import { abs, type Complex, gammaOf, type Swept, type SweptOptions, sweptBy } from "./antenna.js";
import { addFurther } from "./further-columns.js";
import { joinRows, type Layout, layoutOf, number, UNIT_HZ } from "./layout.js";
import { KINDS } from "./quantities.js";
import type { Column, Kind, Unit } from "./quantity.js";
import { at, type Rng, words } from "./random.js";
import type { Draft, Truth, TruthPoint, TruthSweep } from "./truth.js";

export interface TableOptions extends SweptOptions {
  kinds?: readonly string[];
  reference?: number;
  layout?: Partial<Layout>;
  swept?: Swept;
  decimals?: number;
  /** No multiples of units: only those of the first one's size. */
  plainUnits?: boolean;
  /** Columns beside that are nothing of the sweep. */
  further?: boolean;
}

export interface Table {
  head: string[];
  rows: string[][];
  /** The name and the unit of each column apart, for headers of two lines. */
  names: string[];
  units: string[];
  truth: TruthSweep;
  swept: Swept;
  layout: Layout;
  /** Where the quantities stand (frequency comes first unless a further column stands before). */
  valuesAt: number[];
  /** Scales of the units, one for each quantity. */
  scales: number[];
}

/** What a group makes: a table, its lines if they are not just the table, and what is special about it. */
export interface Made {
  table: Table;
  lines?: string[];
  clear?: boolean;
  truth?: Truth;
  mustCaution?: boolean;
  fileName?: string;
}

/** The ways of writing of a group, by name. */
export type Variants<Item = Made> = Readonly<Record<string, (rng: Rng) => Item>>;

const FREQUENCY = words("Frequency; Freq; freq; f; Freq.; FREQUENCY; Test frequency; F");
type Wrap = (name: string, unit: string) => string;
const WITH_COMMA: Wrap = (name, unit) => `${name}, ${unit}`;
const WRAPS: readonly Wrap[] = [
  (name, unit) => `${name} (${unit})`,
  (name, unit) => `${name} [${unit}]`,
  (name, unit) => `${name}/${unit}`,
  (name, unit) => `${name} in ${unit}`,
  WITH_COMMA,
  (name, unit) => `${name} ${unit}`,
  (name, unit) => `${name}_${unit}`,
  (name, unit) => `${name}(${unit})`,
];

/** How units stand in this file's header: all alike. */
export function wrapOf(rng: Rng, layout: Layout): Wrap {
  const wrap = rng.pick(WRAPS.filter((each) => each !== WITH_COMMA || layout.delimiter !== ","));
  return (name, unit) => (unit === "" ? name : wrap(name, unit));
}

/** Decimals that print each of these frequencies exactly, up to a whole kHz. */
function frequencyDecimals(unit: Layout["unit"], rng: Rng): number {
  if (unit === "Hz") return 0;
  if (unit === "kHz") return rng.pick([0, 0, 1, 3]);
  if (unit === "MHz") return rng.pick([3, 3, 4, 6]);
  return rng.pick([6, 6, 7, 9]);
}

interface Printed {
  unit: Unit;
  decimals: number;
}

function printedAs({ units, decimals: [fewest, most] }: Column, rng: Rng, options: TableOptions): Printed {
  const unit = rng.pick(options.plainUnits ? units.filter(({ scale }) => scale === units[0]?.scale) : units);
  const decimals = options.decimals ?? rng.int(fewest, most);
  // Radians: one decimal more than their size asks for.
  const more = unit.scale < 1 && unit.scale > 0.01 ? 1 : 0;
  return { unit, decimals: Math.max(0, Math.round(decimals - Math.log10(unit.scale)) + more) };
}

/** How far Γ and its magnitude may lie from the truth, with each printed number up to half a last digit off. */
function tolerance(kind: Kind, cells: readonly PrintedCell[], reference: number, gamma: Complex): [number, number] {
  const [first, second = { value: 0, half: 0 }] = cells;
  if (first === undefined) throw new Error("missing: a cell");
  let [vector, magnitude] = [0, 0];
  for (const a of [-1, 0, 1]) {
    for (const b of [-1, 0, 1]) {
      const got = kind.decode(first.value + a * first.half, second.value + b * second.half, reference);
      if (kind.vector) vector = Math.max(vector, Math.hypot(got.re - gamma.re, got.im - gamma.im));
      magnitude = Math.max(magnitude, Math.abs(abs(got) - abs(gamma)));
    }
  }
  return [vector, magnitude];
}

interface PrintedCell {
  text: string;
  /** The rounded number in plain units, and half its last digit. */
  value: number;
  half: number;
}

function cellOf(value: number, { unit, decimals }: Printed, layout: Layout): PrintedCell {
  const scaled = value * unit.scale;
  return {
    text: number(scaled, decimals, layout),
    value: Number(scaled.toFixed(decimals)) / unit.scale,
    half: (0.5 * 10 ** -decimals) / unit.scale,
  };
}

const UNSIGNED_IF_POSITIVE = new Set(["r-x", "parallel", "z-angle", "g-b", "y-angle"]);

/** A reactance that is nowhere negative may have lost its sign: a person may doubt its phase, or not. */
function vectorOf(kinds: readonly Kind[], swept: Swept): TruthSweep["vector"] {
  const vectors = kinds.filter((kind) => kind.vector);
  if (vectors.length === 0) return false;
  const hasSign = vectors.some((kind) => !UNSIGNED_IF_POSITIVE.has(kind.id)) || swept.z.some((z) => z.im < -0.1);
  return hasSign ? true : "either";
}

/** A table of an invented antenna; what is not in the options is left to chance. */
export function tableOf(rng: Rng, options: TableOptions = {}): Table {
  const layout = layoutOf(rng, options.layout);
  const kinds = (options.kinds ?? ["swr"]).map((id) => present(KINDS.get(id), id));
  const { reference = 50, swept = sweptBy(rng, options) } = options;
  const wrap = wrapOf(rng, layout);
  const decimalsHz = frequencyDecimals(layout.unit, rng);
  const hzTol = 0.5 * 10 ** -decimalsHz * UNIT_HZ[layout.unit] + 1;
  const names = [rng.pick(FREQUENCY)];
  const units: string[] = [layout.unit];
  const scales: number[] = [];
  const formats = kinds.map((kind) => {
    // A pair is named alike (both by S11, both by Γ) and printed alike, as one program would.
    const naming = rng.int(0, 99);
    const first = printedAs(kind.first, rng, options);
    const put = (column: Column, printed: Printed): Printed => {
      names.push(at(column.names, naming % column.names.length));
      // Ohms need not be told; a unit that changes the number, or is not usual, is.
      units.push(printed.unit.scale === 1 && !column.unitNeeded && rng.chance(0.3) ? "" : printed.unit.text);
      scales.push(printed.unit.scale);
      return printed;
    };
    const formatted = [put(kind.first, first)];
    const { second } = kind;
    if (second !== null) {
      formatted.push(put(second, second.units === kind.first.units ? first : printedAs(second, rng, options)));
    }
    return { kind, formatted };
  });
  const points: TruthPoint[] = [];
  const rows = swept.hz.map((hz, row) => {
    const z = at(swept.z, row);
    const gamma = gammaOf(z, reference);
    const point = { hz, hzTol, re: gamma.re, im: gamma.im, tol: 0, tolRho: 0 };
    const texts = formats.flatMap(({ kind, formatted }) => {
      const cells = kind.encode(z, reference).map((value, i) => cellOf(value, at(formatted, i), layout));
      const [tol, tolRho] = tolerance(kind, cells, reference, gamma);
      point.tol = Math.max(point.tol, tol * 1.02 + 2e-6);
      point.tolRho = Math.max(point.tolRho, tolRho * 1.02 + 2e-6);
      return cells.map(({ text }) => text);
    });
    // The size may be taken from one quantity and the angle from another.
    point.tol = Math.hypot(point.tol, point.tolRho);
    points.push(point);
    return [number(hz / UNIT_HZ[layout.unit], decimalsHz, layout), ...texts];
  });
  const table: Table = {
    head: names.map((name, i) => wrap(name, at(units, i))),
    rows,
    names,
    units,
    swept,
    layout,
    scales,
    truth: { vector: vectorOf(kinds, swept), reference, points },
    valuesAt: scales.map((_, i) => i + 1),
  };
  if (options.further) addFurther(rng, table);
  if (layout.down) {
    table.rows.reverse();
    table.truth.points.reverse();
  }
  return table;
}

/** The table as lines. */
export function linesOf(table: Table, quoteAll = false): string[] {
  return joinRows([table.head, ...table.rows], table.layout, quoteAll);
}

/** A file of one of these variants, with what is usual where the variant says nothing else. */
export function draftOf(rng: Rng, variants: Variants): Draft {
  const [variant, make] = rng.pick(Object.entries(variants));
  const { table, lines = linesOf(table), truth, clear = true, mustCaution = false, fileName } = make(rng);
  const { layout } = table;
  return { variant, lines, layout, truth: truth ?? oneSweep(table), clear, mustCaution, fileName };
}

const oneSweep = (table: Table): Truth => ({ kind: "sweeps", ways: [[table.truth]] });
