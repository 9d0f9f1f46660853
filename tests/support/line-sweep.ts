/** Sweeps of a line alone, from closed form. */
import { evenly, type Pair, sweepOfReflections } from "./sweeps.js";

const LIGHT = 299_792_458;
/** Every 500 kHz. */
export const LINE_AXIS = evenly(1e6, 50e6, 500_000);
/** dB one way. */
export type LineLoss = (megahertz: number) => number;

/** A line of so many metres of vacuum with a real reflection at its end: a short unless said. */
export function lineSweep(electricalM: number, loss: LineLoss, end = -1, axis: readonly number[] = LINE_AXIS) {
  const reflections = axis.map((frequency): Pair => {
    const size = end * 10 ** (-loss(frequency / 1e6) / 10);
    const angle = (-4 * Math.PI * frequency * electricalM) / LIGHT;
    return [size * Math.cos(angle), size * Math.sin(angle)];
  });
  return sweepOfReflections(axis, reflections);
}
