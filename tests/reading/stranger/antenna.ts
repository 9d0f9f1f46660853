/** Invented antennas: one to four resonances behind a lossy line. Γ is known exactly at every frequency. */
import { at, type Rng } from "./random.js";

export interface Complex {
  re: number;
  im: number;
}

const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const sub = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
const mul = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
const div = (a: Complex, b: Complex): Complex => {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
};
const real = (value: number): Complex => ({ re: value, im: 0 });

/** |a| */
export const abs = (a: Complex): number => Math.hypot(a.re, a.im);

/** 1 / a, which makes an admittance of an impedance. */
export const inverse = (a: Complex): Complex => div(real(1), a);

/** A number from its magnitude and angle. */
export const polar = (magnitude: number, radians: number): Complex => ({
  re: magnitude * Math.cos(radians),
  im: magnitude * Math.sin(radians),
});

/** Γ of an impedance, written here once more so that the library is not judged by its own arithmetic. */
export const gammaOf = (z: Complex, reference: number): Complex =>
  div(sub(z, real(reference)), add(z, real(reference)));

const impedanceOf = (gamma: Complex, reference: number): Complex =>
  mul(real(reference), div(add(real(1), gamma), sub(real(1), gamma)));

/** SWR from |Γ|, and back. */
export const swrOf = (rho: number): number => (1 + rho) / (1 - rho);
export const rhoOf = (swr: number): number => (swr - 1) / (swr + 1);

export interface Swept {
  /** Frequencies in Hz, ascending, whole kHz. */
  hz: readonly number[];
  /** Impedance at the analyser. */
  z: readonly Complex[];
}

/** Spans in kHz as an amateur sweeps them: whole short wave, single bands, a little more than a band; from memory. */
const RANGES: readonly (readonly [number, number])[] = [
  [3000, 30000],
  [1800, 30000],
  [1800, 2000],
  [3500, 3800],
  [3400, 4000],
  [6900, 7300],
  [7000, 7200],
  [6500, 7700],
  [10100, 10150],
  [13800, 14500],
  [14000, 14350],
  [18000, 18200],
  [20800, 21600],
  [24800, 25000],
  [27500, 30000],
  [49000, 55000],
  [144000, 148000],
  [5200, 5500],
  [430000, 440000],
  [2000, 16000],
  [6000, 15000],
];

export interface SweptOptions {
  points?: number;
  kHz?: readonly [number, number];
}

/** Frequencies: a range cut into equal steps of whole kHz. */
function grid(rng: Rng, options: SweptOptions): number[] {
  const [low, high] = options.kHz ?? rng.pick(RANGES);
  const wanted = options.points ?? rng.pick([11, 21, 26, 31, 41, 51, 61, 81, 101, 121]);
  const step = Math.max(1, Math.floor((high - low) / (wanted - 1)));
  const count = Math.min(wanted, Math.floor((high - low) / step) + 1);
  return Array.from({ length: count }, (_, i) => (low + i * step) * 1000);
}

/** An antenna over a range of frequencies, both by chance. */
export function sweptBy(rng: Rng, options: SweptOptions = {}): Swept {
  const hz = grid(rng, options);
  return { hz, z: impedances(rng, hz) };
}

/** Impedances of another antenna at given frequencies. */
export function impedances(rng: Rng, hz: readonly number[]): Complex[] {
  const first = at(hz, 0);
  const last = at(hz, hz.length - 1);
  const middle = Math.sqrt(first * last);
  const wide = last > 2 * first;
  const elsewhere = (): number => (wide ? rng.between(first, last) : middle * rng.pick([0.5, 0.7, 1.5, 2, 2.9]));
  const resonances = Array.from({ length: rng.int(1, 4) }, (_, i) => ({
    hz: i === 0 ? middle * rng.between(0.97, 1.03) : elsewhere(),
    ohms: rng.between(18, 130),
    q: rng.between(5, wide ? 9 : 22),
  }));
  const shunt = rng.between(600, 3000);
  const delay = rng.between(4e-9, 90e-9);
  const loss = rng.between(0.02, 0.12);
  return hz.map((f) => {
    const branches = resonances.map((r) => inverse({ re: r.ohms, im: r.ohms * r.q * (f / r.hz - r.hz / f) }));
    const load = gammaOf(inverse(branches.reduce(add, real(1 / shunt))), 50);
    const down = Math.exp(-2 * loss * Math.sqrt(f / 1e7) * Math.min(1, delay / 5e-8));
    return impedanceOf(mul(load, polar(down, -4 * Math.PI * f * delay)), 50);
  });
}
