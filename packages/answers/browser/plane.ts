import { nearestRow, type Row } from "./values.js";

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** How a kind of chart turns places into rows and rows into places. */
export interface Plane {
  /** Whether a frequency is on the chart */
  readonly holds: (row: Row) => boolean;
  readonly nearest: (rows: readonly Row[], place: Place) => number;
  /** Where a row is marked on a curve; null where it cannot be told */
  readonly placeOf: (row: Row, curve: number) => Place | null;
  /** A line through the chart at a row, as an SVG path; empty where there is none */
  readonly lineAt: (row: Row) => string;
}

const numberOf = (chart: Element, name: string): number => Number(chart.getAttribute(`data-${name}`));

/** The Smith chart: Γ = (Z - Z0) / (Z + Z0) in a circle. */
export function smithPlane(chart: Element): Plane {
  const [ohms, x, y, radius] = ["ohms", "x", "y", "radius"].map((name) => numberOf(chart, name)) as [
    number,
    number,
    number,
    number,
  ];
  const placeOf = ({ cells }: Row): Place => {
    const [resistance, reactance] = [cells[3], cells[4]].map((cell) => Number((cell ?? "").replace("−", "-")));
    if (resistance === undefined || reactance === undefined || Number.isNaN(resistance + reactance))
      return { x: x + radius, y };
    const square = (resistance + ohms) ** 2 + reactance ** 2;
    const real = (resistance ** 2 - ohms ** 2 + reactance ** 2) / square;
    return { x: x + radius * real, y: y - (radius * 2 * reactance * ohms) / square };
  };
  return {
    holds: () => true,
    nearest: (rows, place) => {
      const distances = rows.map((row) => Math.hypot(placeOf(row).x - place.x, placeOf(row).y - place.y));
      return distances.indexOf(Math.min(...distances));
    },
    placeOf,
    lineAt: () => "",
  };
}

/** A chart over frequency. */
export function frequencyPlane(chart: Element): Plane {
  const [low, high, left, right, top, bottom] = ["low", "high", "left", "right", "top", "bottom"].map((name) =>
    numberOf(chart, name),
  ) as [number, number, number, number, number, number];
  const isLogarithmic = chart.hasAttribute("data-log");
  const along = (megahertz: number) =>
    isLogarithmic ? Math.log(megahertz / low) / Math.log(high / low) : (megahertz - low) / (high - low);
  const xOf = ({ megahertz }: Row) => left + along(megahertz) * (right - left);
  const curves = Array.from(chart.querySelectorAll("path.line:not([d*=H])"), (path) =>
    corners(path.getAttribute("d") ?? ""),
  );
  return {
    holds: ({ megahertz }) => megahertz >= low && megahertz <= high,
    nearest: (rows, { x }) => {
      const share = (x - left) / (right - left);
      return nearestRow(rows, isLogarithmic ? low * (high / low) ** share : low + share * (high - low));
    },
    placeOf: (row, curve) => placeOn(curves[curve] ?? [], xOf(row)),
    lineAt: (row) => `M${xOf(row).toFixed(1)},${top}V${bottom}`,
  };
}

/** The corners of a path of straight lines, by its runs. */
function corners(path: string): readonly (readonly Place[])[] {
  return path
    .split("M")
    .filter((run) => run !== "")
    .map((run) =>
      run
        .replace("Z", "")
        .split("L")
        .map((corner) => {
          const [x = Number.NaN, y = Number.NaN] = corner.split(",").map(Number);
          return { x, y };
        }),
    );
}

/** The place on a curve at an x; null in a gap. */
function placeOn(runs: readonly (readonly Place[])[], x: number): Place | null {
  const slack = 0.3;
  for (const run of runs) {
    for (const [i, end] of run.entries()) {
      const start = run[i - 1] ?? end;
      if (x < start.x - slack || x > end.x + slack) continue;
      const share = end.x === start.x ? 0 : (x - start.x) / (end.x - start.x);
      return { x, y: start.y + Math.min(1, Math.max(0, share)) * (end.y - start.y) };
    }
  }
  return null;
}
