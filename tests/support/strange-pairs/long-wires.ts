import type { Pair } from "../sweeps.js";
import { type AntennaState, drawWire, type Family } from "./antenna.js";
import { at } from "./at.js";
import { inBand } from "./bands.js";
import { add, hyperbolicCotangent, inverse, scaled } from "./complex.js";
import { drawGround, groundEffect } from "./ground.js";
import { LIGHT, throughLine } from "./lines.js";
import { drawBalun, drawTransformer, throughTransformer } from "./transformers.js";
import { alongWire, openWire, radiationAttenuation } from "./wires.js";

interface Wire {
  readonly lengthM: number;
  readonly waveOhms: number;
  /** Radiation resistance of a quarter wave in free space, and the share of the ground's loss that it sees */
  readonly freeOhms: number;
  readonly groundShare: number;
}

/** Impedance of a wire with an open end over ground, in the state that it is in. */
const wireOver = (
  ground: ReturnType<typeof groundEffect>,
  state: AntennaState,
  hz: number,
  { lengthM, waveOhms, freeOhms, groundShare }: Wire,
): Pair =>
  openWire(hz / (1 + ground.shift), {
    lengthM: lengthM * state.scale * at(state.scatter, 0),
    velocity: state.velocity,
    waveOhms,
    quarterOhms: freeOhms * ground.radiation,
    lossOhms: freeOhms * ground.loss * groundShare + state.lossOhms + state.waterOhms,
  });

/** A wire of no special length against a counterpoise on the ground. */
export const randomWire: Family = {
  traits: ["height", "counterpoise"],
  make(random) {
    const lengthM = random.range(8, 26);
    const wire = { ...drawWire(random), ...drawGround(random) };
    const waveOhms = random.range(480, 650);
    const counterM = random.range(3, 10);
    const counterOhms = random.range(200, 400);
    const counterLossOhms = random.log(15, 60);
    const heightM = random.range(3, 10);
    const transformer = drawTransformer(random, 9, [1e-7, 5e-7], [6e-6, 2.5e-5], [500, 2500]);
    const firstHz = (LIGHT * wire.velocity) / (4 * lengthM);
    return {
      state: { ...wire, heightM, firstHz, waveOhms, heldBack: true },
      impedance: (state) => (hz) => {
        const ground = groundEffect(state, hz);
        const z = wireOver(ground, state, hz, { lengthM, waveOhms, freeOhms: 40, groundShare: 1 });
        const counterpoise = openWire(hz, {
          lengthM: counterM * state.counterpoiseLength * at(state.scatter, 1),
          velocity: 0.85,
          waveOhms: counterOhms,
          quarterOhms: 8,
          lossOhms: counterLossOhms * state.counterpoiseLoss,
        });
        return throughTransformer(add(z, counterpoise), hz, transformer);
      },
    };
  },
};

/** A long wire that ends in a resistor to ground. */
export const terminated: Family = {
  traits: ["height", "counterpoise"],
  make(random) {
    const wire = { ...drawWire(random), ...drawGround(random) };
    const lengthM = random.range(15, 60);
    const waveOhms = random.range(420, 560);
    const endOhms = random.range(390, 820);
    const groundOhms = random.log(20, 120);
    const heightM = random.range(2, 8);
    const transformer = drawTransformer(random, random.pick([9, 9, 12]), [1e-7, 4e-7], [8e-6, 3e-5], [800, 3000]);
    const firstHz = (LIGHT * wire.velocity) / (4 * lengthM);
    return {
      state: { ...wire, heightM, firstHz, waveOhms, heldBack: true },
      impedance: (state) => {
        const metres = lengthM * state.scale * at(state.scatter, 0);
        const ohms = waveOhms * (1 + 0.06 * Math.log(state.heightM / 4));
        return (hz) => {
          const ground = groundEffect(state, hz);
          const spread = 0.4 * ground.radiation + 0.6 * ground.loss + 0.2;
          const nepers = (metres / 30) * (0.02 + 0.12 * Math.sqrt(hz / 1e7) * spread) + state.waterOhms / ohms;
          const shifted = hz / (1 + ground.shift * 0.3);
          const radians = (2 * Math.PI * shifted * metres) / (LIGHT * state.velocity);
          const z = alongWire([endOhms + groundOhms, 0], ohms, nepers, radians);
          return throughTransformer(add(z, [groundOhms * state.counterpoiseLoss, 0]), hz, transformer);
        };
      },
    };
  },
};

/** A quarter wave upright over a few raised radials. */
export const verticalRadials: Family = {
  traits: ["height", "counterpoise", "detune"],
  make(random) {
    const firstHz = inBand(random, random.pick([40, 30, 20, 17, 15, 10]));
    const wire = { ...drawWire(random), ...drawGround(random, true) };
    const waveOhms = random.range(350, 520);
    const lengthM = ((LIGHT * wire.velocity) / (4 * firstHz)) * 0.99;
    const baseM = random.log(0.5, 4);
    const radials = random.pick([2, 3, 4, 4]);
    const radialM = ((LIGHT * 0.95) / (4 * firstHz)) * random.range(0.97, 1.05);
    const radialOhms = random.range(350, 550);
    const radialLossOhms = random.log(4, 30);
    return {
      state: { ...wire, heightM: baseM + lengthM / 2, baseM, firstHz, waveOhms, freeOhms: 36.5 },
      impedance: (state) => (hz) => {
        const ground = groundEffect(state, hz);
        const z = wireOver(ground, state, hz, { lengthM, waveOhms, freeOhms: 36.5, groundShare: 0.3 });
        let y: Pair = [0, 0];
        for (let i = 0; i < radials; i++) {
          const factor = i === 0 ? state.detune : 1;
          const radial = openWire(hz, {
            lengthM: radialM * state.scale * at(state.scatter, i + 1) * state.counterpoiseLength * factor,
            velocity: 0.95,
            waveOhms: radialOhms,
            quarterOhms: 4,
            lossOhms: radialLossOhms * state.counterpoiseLoss * (0.4 + ground.loss),
          });
          y = add(y, inverse(radial));
        }
        return add(z, inverse(y));
      },
    };
  },
};

/** A loop of one wave, fed straight, through a 2:1 transformer or through a quarter wave of 75 ohm line. */
export const fullLoop: Family = {
  traits: ["height", "braid"],
  make(random) {
    const firstHz = inBand(random, random.pick([80, 40, 40, 20, 15]));
    const wire = { ...drawWire(random), ...drawGround(random) };
    const waveOhms = random.range(480, 620);
    const aroundM = (LIGHT / firstHz) * random.range(1.015, 1.03);
    const feed = random.pick(["direct", "two", "section"]);
    const transformer = { ...drawBalun(random), ratio: feed === "two" ? 2 : 1 };
    const section = { z0: 75, velocity: 0.66, k1: 1.1, k2: 0.01 };
    const sectionM = (0.66 * LIGHT) / (4 * firstHz);
    return {
      state: { ...wire, firstHz, waveOhms, freeOhms: 110, heldBack: feed === "section" },
      // Half the way round is a line shorted at the far side.
      impedance: (state) => (hz) => {
        const ground = groundEffect(state, hz);
        const metres = aroundM * state.scale * at(state.scatter, 0);
        const ratio = ((hz / (1 + ground.shift)) * metres) / LIGHT;
        const lossOhms = 110 * ground.loss * 0.5 + 2 * state.lossOhms + state.waterOhms * 2;
        const nepers =
          (110 / waveOhms) * ground.radiation * radiationAttenuation(ratio) + (lossOhms / waveOhms) * Math.sqrt(ratio);
        const loop = scaled(inverse(hyperbolicCotangent(nepers, Math.PI * ratio)), waveOhms);
        const z = throughTransformer(loop, hz, transformer);
        return feed === "section" ? throughLine(z, section, sectionM, hz) : z;
      },
    };
  },
};
