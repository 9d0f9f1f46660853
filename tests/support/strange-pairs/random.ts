import type { Pair } from "../sweeps.js";
import { at } from "./at.js";

/** A stream of chance: the same draws in the same order for the same seed and name. */
export interface Random {
  /** From 0 up to 1. */
  readonly uniform: () => number;
  /** Evenly between two numbers. */
  readonly range: (low: number, high: number) => number;
  /** Evenly in the logarithm between two positive numbers. */
  readonly log: (low: number, high: number) => number;
  readonly pick: <Item>(list: readonly Item[]) => Item;
  readonly sign: () => number;
  /** Complex normal noise, `sigma` per part. */
  readonly noise: (sigma: number) => Pair;
}

function hash(text: string, seed: number): number {
  let mixed = (0x811c9dc5 ^ Math.imul(seed | 0, 0x9e3779b1) ^ Math.floor(seed / 4294967296)) >>> 0;
  for (let i = 0; i < text.length; i++) mixed = Math.imul(mixed ^ text.charCodeAt(i), 0x01000193) >>> 0;
  mixed ^= mixed >>> 16;
  mixed = Math.imul(mixed, 0x85ebca6b);
  mixed ^= mixed >>> 13;
  mixed = Math.imul(mixed, 0xc2b2ae35);
  mixed ^= mixed >>> 16;
  return mixed >>> 0;
}

/** One named stream of a seed; one more draw in one stream leaves the others as they are. */
export function randomStream(seed: number, stream: string): Random {
  let state = hash(stream, seed);
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  for (let i = 0; i < 4; i++) uniform();
  return {
    uniform,
    range: (low, high) => low + (high - low) * uniform(),
    log: (low, high) => low * (high / low) ** uniform(),
    pick: (list) => at(list, Math.min(list.length - 1, Math.floor(uniform() * list.length))),
    sign: () => (uniform() < 0.5 ? -1 : 1),
    noise: (sigma) => {
      // The tail beyond 4.5 sigma (4 in 100 000) is drawn again: it would make |Γ| that no analyser shows.
      for (;;) {
        const size = Math.sqrt(-2 * Math.log(1 - uniform()));
        const angle = 2 * Math.PI * uniform();
        if (size <= 4.5) return [sigma * size * Math.cos(angle), sigma * size * Math.sin(angle)];
      }
    },
  };
}
