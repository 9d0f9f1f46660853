import type { Pair } from "../sweeps.js";
import { type AntennaState, drawWire, type Family } from "./antenna.js";
import { at } from "./at.js";
import { inBand, type Metres } from "./bands.js";
import { add, divide, hyperbolicCotangent, inverse, multiply, parallel, scaled, subtract } from "./complex.js";
import { drawGround } from "./ground.js";
import { LIGHT, type Line, throughLine } from "./lines.js";
import type { Random } from "./random.js";
import { drawTransformer, perhapsBalun, throughTransformer } from "./transformers.js";
import { halfWaveM, modalWire, radiationGrowth } from "./wires.js";

/** A wire of half a wave on one of the bands, above ground; the wave impedance in ohms lies between the limits. */
function drawHalfWave(random: Random, bands: readonly Metres[], low = 850, high = 1100): AntennaState {
  const firstHz = inBand(random, random.pick(bands));
  return { ...drawWire(random), ...drawGround(random), firstHz, waveOhms: random.range(low, high) };
}

/** The two arms of a wire in metres, the first being the given part of the whole. */
const armsOf = (lengthM: number, part: number): readonly [number, number] => [lengthM * part, lengthM * (1 - part)];

export const dipole: Family = {
  traits: ["height", "braid"],
  make(random) {
    const start = drawHalfWave(random, [80, 40, 40, 30, 20, 20, 15]);
    const arms = armsOf(halfWaveM(start), 0.5);
    const balun = perhapsBalun(random, 0.7);
    return {
      state: start,
      impedance: (state) => {
        const wire = modalWire(state, arms);
        return (hz) => throughTransformer(wire(hz), hz, balun);
      },
    };
  },
};

export const endFed: Family = {
  traits: ["height", "counterpoise"],
  make(random) {
    const start = drawHalfWave(random, [80, 40, 40, 20]);
    const arms = armsOf(halfWaveM(start), random.range(0.04, 0.07));
    const bare = drawTransformer(random, random.pick([49, 49, 64]), [5e-8, 2.5e-7], [2.5e-6, 8e-6], [300, 1500]);
    const transformer = { ...bare, capF: random.pick([0, 1e-10, 1e-10]) };
    return {
      state: start,
      impedance: (state) => {
        // The short arm counts for less with the mode's number, so that the harmonics stay high in impedance.
        const wire = modalWire({ ...state, lossOhms: state.lossOhms * state.counterpoiseLoss }, arms, {
          firstArm: state.counterpoiseLength,
          weight: (number, place) => Math.sin(Math.PI * place * number ** 0.35) ** 2,
        });
        return (hz) => throughTransformer(wire(hz), hz, transformer);
      },
    };
  },
};

/** A doublet with an open-wire line down to a transformer. */
export const ladderDoublet: Family = {
  traits: ["height"],
  make(random) {
    const lengthM = random.range(18, 42);
    const wire = { ...drawWire(random), ...drawGround(random) };
    const waveOhms = random.range(850, 1100);
    const arms = armsOf(lengthM, 0.5);
    const line: Line = {
      z0: random.range(370, 450),
      velocity: random.range(0.88, 0.95),
      k1: random.range(0.1, 0.2),
      k2: random.range(0.002, 0.01),
    };
    const lineM = random.range(7, 20);
    const transformer = drawTransformer(random, random.pick([1, 4, 4]), [5e-8, 4e-7], [1e-5, 4e-5], [800, 4000]);
    return {
      state: { ...wire, waveOhms, firstHz: (LIGHT * wire.velocity) / (2 * lengthM), heldBack: true },
      impedance: (state) => {
        const doublet = modalWire(state, arms);
        return (hz) => throughTransformer(throughLine(doublet(hz), line, lineM, hz), hz, transformer);
      },
    };
  },
};

export const offCentre: Family = {
  traits: ["height", "braid"],
  make(random) {
    const start = drawHalfWave(random, [80, 80, 40]);
    const arms = armsOf(halfWaveM(start), random.pick([1 / 3, 0.2, 0.36]));
    const transformer = drawTransformer(random, random.pick([4, 4, 6]), [5e-8, 3e-7], [1e-5, 4e-5], [800, 4000]);
    return {
      state: start,
      impedance: (state) => {
        const wire = modalWire(state, arms);
        return (hz) => throughTransformer(wire(hz), hz, transformer);
      },
    };
  },
};

const FANS: readonly (readonly Metres[])[] = [
  [80, 40],
  [40, 20],
  [40, 20, 10],
  [80, 40, 20],
  [20, 15, 10],
  [30, 17, 12],
];

/** Dipoles for several bands on one feed. */
export const fan: Family = {
  traits: ["height", "detune", "braid"],
  make(random) {
    const bands = random.pick(FANS);
    const wire = { ...drawWire(random), ...drawGround(random) };
    const waveOhms = random.range(850, 1100);
    const firsts = bands.map((metres) => inBand(random, metres));
    const detuneIndex = Math.floor(random.uniform() * bands.length);
    const balun = perhapsBalun(random, 0.7);
    return {
      state: { ...wire, velocity: wire.velocity * 0.985, waveOhms, firstHz: at(firsts, 0), detuneIndex },
      impedance: (state) => {
        const dipoles = firsts.map((firstHz, i) => {
          const own = { ...state, firstHz, scatter: [at(state.scatter, i), at(state.scatter, i)] };
          return modalWire(own, armsOf(halfWaveM(own) * (i === state.detuneIndex ? state.detune : 1), 0.5));
        });
        return (hz) => {
          const y = dipoles.reduce<Pair>((sum, one) => add(sum, inverse(one(hz))), [0, 0]);
          return throughTransformer(inverse(y), hz, balun);
        };
      },
    };
  },
};

/** A dipole beside a longer or shorter element that is not fed. */
export const parasitic: Family = {
  traits: ["height", "detune"],
  make(random) {
    const drawn = drawHalfWave(random, [20, 17, 15, 12, 10], 600, 850);
    const arms = armsOf(halfWaveM(drawn), 0.5);
    const lengthRatio = random.pick([random.range(1.025, 1.06), random.range(0.93, 0.965)]);
    const coupling = random.range(0.62, 0.8);
    const mutualOhms = random.range(-25, 15);
    const balun = perhapsBalun(random, 0.5);
    return {
      state: { ...drawn, lossOhms: drawn.lossOhms * 0.4 },
      impedance: (state) => {
        const other = state.scale * lengthRatio * state.detune * at(state.scatter, 2);
        const mean = (state.scale * (at(state.scatter, 0) + at(state.scatter, 1))) / 2;
        const wire = modalWire(state, arms, {
          firstMode: (hz, own, mode) => {
            const otherHz = (mode.hz * mean) / other;
            const growth = radiationGrowth(hz / mode.hz);
            const neighbour: Pair = [
              mode.radiation * growth + state.lossOhms + state.waterOhms,
              2 * Math.PI * hz * mode.inductance * (1 - (otherHz / hz) ** 2),
            ];
            const mutual: Pair = [coupling * mode.radiation * growth, mutualOhms * Math.min(2, hz / mode.hz)];
            return subtract(own, divide(multiply(mutual, mutual), neighbour));
          },
        });
        return (hz) => throughTransformer(wire(hz), hz, balun);
      },
    };
  },
};

export const foldedDipole: Family = {
  traits: ["height", "braid"],
  make(random) {
    const start = drawHalfWave(random, [80, 40, 30, 20, 15], 650, 850);
    const arms = armsOf(halfWaveM(start), 0.5);
    const stubOhms = random.range(300, 600);
    const stubVelocity = random.range(0.9, 0.98);
    const transformer = drawTransformer(random, random.pick([4, 6]), [5e-8, 3e-7], [1e-5, 4e-5], [1200, 5000]);
    return {
      state: start,
      impedance: (state) => {
        const wire = modalWire(state, arms);
        const halfM = (state.scale * (arms[0] * at(state.scatter, 0) + arms[1] * at(state.scatter, 1))) / 2;
        return (hz) => {
          // Each half is also a line shorted at its end, for the current that does not radiate.
          const radians = (2 * Math.PI * hz * halfM) / (LIGHT * stubVelocity);
          const stub = scaled(inverse(hyperbolicCotangent(0.006 * Math.sqrt(hz / 7e6), radians)), stubOhms);
          return throughTransformer(parallel(scaled(wire(hz), 4), scaled(stub, 2)), hz, transformer);
        };
      },
    };
  },
};
