/** Two or three series in one file: told apart by a column, side by side, or one below the other. */
import { present } from "../../support/sweeps.js";
import { impedances } from "./antenna.js";
import { joinRows, roomy } from "./layout.js";
import { swrTable } from "./plain-tables.js";
import { draftOf, linesOf, type Made, type Table, tableOf, type Variants } from "./printed-table.js";
import { KINDS } from "./quantities.js";
import { at, type Rng } from "./random.js";
import { BESIDE } from "./tables-beside.js";
import type { Draft, TruthSweep } from "./truth.js";

const PAIRS: readonly (readonly [string, string])[] = [
  ["before", "after"],
  ["sloper", "vee"],
  ["east", "west"],
  ["short counterpoise", "long counterpoise"],
  ["dry", "wet"],
  ["A", "B"],
  ["Reedmere", "Withy Lock"],
];

/** A first series, and others of other antennas with the same frequencies, quantity and print. */
function seriesOf(rng: Rng, kind: string): { first: Table; another: () => Table } {
  const first = tableOf(rng, { kinds: [kind], layout: { ...roomy(rng), down: false }, plainUnits: true });
  const [, decimals] = present(KINDS.get(kind), kind).first.decimals;
  const { layout, head } = first;
  const another = (): Table => {
    const swept = { hz: first.swept.hz, z: impedances(rng, first.swept.hz) };
    const next = tableOf(rng, { kinds: [kind], layout, swept, decimals, plainUnits: true });
    next.rows = next.rows.map(([, ...cells], i) => [at(at(first.rows, i), 0), ...cells]);
    next.truth.points.forEach((point, i) => {
      point.hzTol = at(first.truth.points, i).hzTol;
    });
    return { ...next, head };
  };
  return { first, another };
}

function pairOf(rng: Rng, kind = "swr"): [Table, Table] {
  const { first, another } = seriesOf(rng, kind);
  return [first, another()];
}

/** A file of these tables, each of which is a sweep. */
function fileOf(tables: readonly [Table, ...Table[]], lines: string[]): Made {
  return { table: tables[0], lines, truth: { kind: "sweeps", ways: [tables.map(({ truth }) => truth)] } };
}

/** The rows of tables beside each other; the frequencies stand only once. */
function besideEachOther(first: Table, others: readonly Table[]): string[][] {
  return first.rows.map((row, i) => [...row, ...others.flatMap(({ rows }) => at(rows, i).slice(1))]);
}

function sideBySide(rng: Rng, count: 2 | 3): Made {
  const kind = rng.pick(["swr", "swr", "return-loss", "s11-db"]);
  const { first, another } = seriesOf(rng, kind);
  const others = Array.from({ length: count - 1 }, another);
  const names = count === 3 ? ["bow", "stern", "mast"] : rng.pick(PAIRS);
  const base = kind === "swr" ? rng.pick(["SWR", "VSWR"]) : kind === "return-loss" ? "Return loss (dB)" : "S11 (dB)";
  const style = rng.pick(["{base} {name}", "{base}, {name}", "{name} {base}", "{base} - {name}"]);
  const heads = names.map((name) => style.replace("{base}", base).replace("{name}", name));
  const rows = [[at(first.head, 0), ...heads], ...besideEachOther(first, others)];
  return fileOf([first, ...others], joinRows(rows, first.layout));
}

const SERIES: Variants = {
  "told apart by a column, in blocks": (rng) => {
    const tables = pairOf(rng, rng.pick(["swr", "r-x", "return-loss"]));
    const [{ head, layout }] = tables;
    const names = rng.pick(PAIRS);
    const before = rng.chance(0.5);
    const put = (row: readonly string[], cell: string): string[] => (before ? [cell, ...row] : [...row, cell]);
    const rows = tables.flatMap((table, k) => table.rows.map((row) => put(row, at(names, k))));
    const name = rng.pick(["Deployment", "Antenna", "Run", "Series", "Mooring"]);
    return fileOf(tables, joinRows([put(head, name), ...rows], layout));
  },
  "told apart by a column, in turns": (rng) => {
    const [first, second] = pairOf(rng, rng.pick(["swr", "r-x"]));
    const names = rng.pick(PAIRS);
    const rows = first.rows.flatMap((row, i) => [
      [...row, names[0]],
      [...at(second.rows, i), names[1]],
    ]);
    const head = [...first.head, rng.pick(["Antenna", "State", "Which"])];
    return fileOf([first, second], joinRows([head, ...rows], first.layout));
  },
  "side by side": (rng) => sideBySide(rng, 2),
  "three side by side": (rng) => sideBySide(rng, 3),
  "side by side, R and X each": (rng) => {
    const [first, second] = pairOf(rng, "r-x");
    const heads = rng.pick(PAIRS).flatMap((name) => [`R ${name} (ohm)`, `X ${name} (ohm)`]);
    const rows = [[at(first.head, 0), ...heads], ...besideEachOther(first, [second])];
    return fileOf([first, second], joinRows(rows, first.layout));
  },
  "side by side with frequencies each": (rng) => {
    const [first, second] = pairOf(rng);
    const gap = rng.maybe("");
    const rows = first.rows.map((row, i) => [...row, ...gap, ...at(second.rows, i)]);
    const [left, right] = rng.pick(PAIRS);
    const title = rng.chance(0.6) ? [[left, "", ...gap, right, ""]] : [];
    const head = [...first.head, ...gap, ...second.head];
    // The title apart: it is no row of the columns, and is not aligned with them.
    const lines = [...joinRows(title, first.layout), ...joinRows([head, ...rows], first.layout)];
    return fileOf([first, second], lines);
  },
  "one below the other with titles": (rng) => {
    const [first, second] = pairOf(rng, rng.pick(["swr", "r-x", "return-loss"]));
    const [upper, lower] = rng.pick(PAIRS);
    return fileOf([first, second], [upper, ...linesOf(first), "", lower, ...linesOf(second)]);
  },
  "one below the other, header once": (rng) => {
    const [first, second] = pairOf(rng);
    const [upper, lower] = rng.pick(PAIRS);
    const { layout } = first;
    const head = joinRows([first.head], layout);
    const blocks = [`[${upper}]`, ...joinRows(first.rows, layout), `[${lower}]`, ...joinRows(second.rows, layout)];
    return fileOf([first, second], [...head, ...blocks]);
  },
  "one below the other, header again": (rng) => {
    const [first, second] = pairOf(rng);
    return fileOf([first, second], [...linesOf(first), "", ...linesOf(second)]);
  },
  "one below the other, nothing between": (rng) => {
    const [first, second] = pairOf(rng);
    const lines = [...linesOf(first), ...joinRows(second.rows, second.layout)];
    return { ...fileOf([first, second], lines), clear: false };
  },
  "rows in turns, nothing tells": (rng) => {
    const [first, second] = pairOf(rng);
    const rows = first.rows.flatMap((row, i) => [row, at(second.rows, i)]);
    const lines = joinRows([first.head, ...rows], first.layout);
    return { table: first, lines, clear: false, truth: { kind: "refuse", cautionSuffices: true } };
  },
  "other bands one below the other": (rng) => {
    const first = swrTable(rng, { kHz: [7000, 7200], points: 21, layout: roomy(rng), decimals: 2 });
    const { layout } = first;
    const second = swrTable(rng, { kHz: [14000, 14350], points: 15, layout, decimals: 2 });
    second.head = first.head;
    const joined: TruthSweep = { ...first.truth, points: [...first.truth.points, ...second.truth.points] };
    const lines = ["40 m band", ...linesOf(first), "", "20 m band", ...linesOf(second)];
    return { table: first, lines, truth: { kind: "sweeps", ways: [[joined], [first.truth, second.truth]] } };
  },
};

/** A file of several series, or of one with something beside it. */
export function series(rng: Rng): Draft {
  return draftOf(rng, { ...SERIES, ...BESIDE });
}
