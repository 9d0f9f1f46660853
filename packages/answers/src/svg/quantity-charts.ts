import { impedanceFromReflection, returnLossDb, type Sweep } from "@feedpoint/core";
import type { Markup } from "../text/markup.js";
import { type Axis, ohmsAxis, returnLossAxis } from "./axes.js";
import { type Frame, frequencyChart, type Limit } from "./frequency-chart.js";
import { type PlotPoint, plotRuns } from "./plot-points.js";
import type { Series } from "./series.js";
import { rangeOf, shadesOf } from "./swr-chart.js";

/** Enough points to find what an axis must hold. */
const POINTS_TO_MEASURE = 2000;

/** Return loss over the whole sweep. */
export function returnLossChart(series: readonly Series[]): Markup {
  const frame = frameFor(series);
  const value = ({ reflectionMagnitude }: PlotPoint) => Math.min(99, returnLossDb(reflectionMagnitude));
  const greatest = Math.max(...valuesOf(series, value));
  return quantityChart(series, "Return loss", "dB", value, returnLossAxis(greatest, [frame.bottom, frame.top]), []);
}

/** Resistance over the whole sweep, with the reference impedance marked; for vector sweeps. */
export function resistanceChart(series: readonly Series[]): Markup {
  const { bottom, top } = frameFor(series);
  const value = ({ reflection }: PlotPoint) => impedanceOf(reflection, series).real;
  const { referenceOhms } = firstSweep(series);
  const axis = ohmsAxis(0, Math.max(...valuesOf(series, value)), [bottom, top]);
  return quantityChart(series, "Resistance R", "Ω", value, axis, [
    { value: referenceOhms, label: String(referenceOhms), note: "" },
  ]);
}

/** Reactance over the whole sweep, with 0 marked; for vector sweeps. */
export function reactanceChart(series: readonly Series[]): Markup {
  const { bottom, top } = frameFor(series);
  const value = ({ reflection }: PlotPoint) => impedanceOf(reflection, series).imaginary;
  const values = valuesOf(series, value);
  const axis = ohmsAxis(Math.min(-50, ...values), Math.max(50, ...values), [bottom, top]);
  return quantityChart(series, "Reactance X", "Ω", value, axis, [{ value: 0, label: "0", note: "" }]);
}

function quantityChart(
  series: readonly Series[],
  name: string,
  unit: string,
  value: (point: PlotPoint) => number,
  valueAxis: Axis,
  limits: readonly Limit[],
): Markup {
  return frequencyChart({
    name: `${name} over the whole sweep${series.length > 1 ? ", before and after" : ""}`,
    frame: frameFor(series),
    range: rangeOf(series),
    series,
    value,
    valueAxis,
    valueTitle: unit,
    limits,
    bands: shadesOf(series),
    withBandNames: true,
  });
}

const frameFor = (series: readonly Series[]): Frame => ({
  width: 480,
  height: 316,
  left: 50,
  right: 472,
  top: series.length > 1 ? 44 : 28,
  bottom: 290,
});

const impedanceOf = (reflection: PlotPoint["reflection"], series: readonly Series[]) =>
  reflection === null
    ? { real: Number.NaN, imaginary: Number.NaN }
    : impedanceFromReflection(reflection, firstSweep(series).referenceOhms);

const firstSweep = (series: readonly Series[]): Sweep => (series[0] as Series).sweep;

const valuesOf = (series: readonly Series[], value: (point: PlotPoint) => number): readonly number[] =>
  series
    .flatMap(({ trace }) => plotRuns(trace, rangeOf(series), POINTS_TO_MEASURE))
    .flatMap((run) => run.map(value))
    .filter(Number.isFinite);
