/** Columns and tables beside the sweep that must not join it. */
import { rhoOf } from "./antenna.js";
import { joinRows, number, roomy, UNIT_HZ } from "./layout.js";
import { swrsOf, swrTable } from "./plain-tables.js";
import { linesOf, type Made, type Table, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";
import type { TruthSweep } from "./truth.js";

/** A column that is no series of its own. */
function beside(names: readonly string[], cell: (value: number, row: number, table: Table) => string) {
  return (rng: Rng): Made => {
    const name = rng.pick(names);
    const table = swrTable(rng, { layout: roomy(rng) });
    table.head.push(name);
    swrsOf(table).forEach((value, i) => {
      at(table.rows, i).push(cell(value, i, table));
    });
    return { table };
  };
}

/** The same sweep with other values of SWR. */
function withSwr(truth: TruthSweep, swr: readonly number[]): TruthSweep {
  return { ...truth, points: truth.points.map((point, i) => ({ ...point, re: rhoOf(at(swr, i)), im: 0 })) };
}

const LIMITS = ["Limit", "SWR limit", "Limit SWR", "Max. allowed", "Wanted SWR", "Target"];
const DIFFERENCES = ["Change", "Difference to last time", "Delta", "Δ SWR"];
const UNCERTAINTIES = ["±", "Uncertainty", "SWR uncertainty", "Std. dev. of SWR", "sigma"];
/** An open and a short as an analyser might measure them; invented. */
const STANDARDS = [0.999, -0.012, -0.998, 0.011];

export const BESIDE: Variants = {
  "a limit beside": beside(LIMITS, (_value, _row, { layout }) => number(2, 1, layout)),
  "pass or fail beside": beside(["Result", "OK?", "Within 2:1"], (value) => (value <= 2 ? "yes" : "no")),
  "a difference beside": beside(DIFFERENCES, (_value, row, { layout }) => number(0.05 * Math.sin(row), 2, layout)),
  "an uncertainty beside": beside(UNCERTAINTIES, (value, _row, { layout }) => number(0.02 * value, 3, layout)),
  "extremes of repeats beside": (rng) => {
    const table = swrTable(rng, { decimals: 2, layout: roomy(rng) });
    const { layout, truth } = table;
    const spread = (by: number): number[] => swrsOf(table).map((value) => value + by * (value - 1));
    const [low, high] = [spread(-0.03), spread(0.03)];
    table.head = [at(table.head, 0), "SWR min", "SWR mean", "SWR max"];
    table.rows = table.rows.map(([frequency = "", mean = ""], i) => [
      frequency,
      number(at(low, i), 2, layout),
      mean,
      number(at(high, i), 2, layout),
    ]);
    const ways = [[truth], [withSwr(truth, low), truth, withSwr(truth, high)]];
    return { table, clear: false, truth: { kind: "sweeps", ways } };
  },
  "markers below": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const rows = [2, 5, 8].map((row, i) => [`M${i + 1}`, ...at(table.rows, row).slice(0, 2)]);
    const markers = joinRows([["Marker", "Frequency", "SWR"], ...rows], table.layout);
    const below = rng.chance(0.5);
    return {
      table,
      lines: below ? [...linesOf(table), "", "Markers", ...markers] : [...markers, "", ...linesOf(table)],
    };
  },
  "markers beside": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    table.head.push("", "Marker", `Marker ${table.layout.unit}`);
    table.rows.forEach((row, i) => {
      row.push(...(i < 3 ? ["", `M${i + 1}`, at(at(table.rows, i * 2 + 1), 0)] : ["", "", ""]));
    });
    return { table };
  },
  "limits table below": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const { layout } = table;
    const limit = (band: string, low: number, high: number, swr: number): string[] => [
      band,
      number(low, 3, layout),
      number(high, 3, layout),
      number(swr, 1, layout),
    ];
    const head = ["Band", "From MHz", "To MHz", "SWR limit"];
    const limits = joinRows([head, limit("40m", 7, 7.2, 2), limit("20m", 14, 14.35, 1.5)], layout);
    return { table, lines: [...linesOf(table), "", "Limits wanted", ...limits] };
  },
  "calibration table beside": (rng) => {
    const table = tableOf(rng, { kinds: ["gamma-re-im"], layout: { ...roomy(rng), down: false } });
    const { layout, swept } = table;
    const head = [`Frequency (${layout.unit})`, "Open re", "Open im", "Short re", "Short im"];
    const cells = STANDARDS.map((value) => number(value, 3, layout));
    const rows = swept.hz.slice(0, 4).map((hz) => [number(hz / UNIT_HZ[layout.unit], 6, layout), ...cells]);
    const calibration = [
      rng.pick(["Calibration", "Calibration standards as measured"]),
      ...joinRows([head, ...rows], layout),
    ];
    const above = rng.chance(0.5);
    return {
      table,
      lines: above ? [...calibration, "", "Antenna", ...linesOf(table)] : [...linesOf(table), "", ...calibration],
    };
  },
  "two quantities of one sweep, one below the other": (rng) => {
    const first = swrTable(rng, { layout: roomy(rng) });
    const second = tableOf(rng, { kinds: ["r-x"], swept: first.swept, layout: first.layout });
    const ways = [[second.truth], [first.truth, second.truth], [first.truth]];
    const lines = [...linesOf(first), "", ...linesOf(second)];
    return { table: first, lines, clear: false, truth: { kind: "sweeps", ways } };
  },
};
