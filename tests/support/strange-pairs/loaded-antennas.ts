import type { Pair } from "../sweeps.js";
import { type AntennaState, drawWire, type Family, type Impedance } from "./antenna.js";
import { at } from "./at.js";
import { inBand, lowEdge, type Metres } from "./bands.js";
import { add, divide, hyperbolicCotangent, inverse, scaled } from "./complex.js";
import { drawGround, groundEffect } from "./ground.js";
import { LIGHT } from "./lines.js";
import { perhapsBalun, throughTransformer } from "./transformers.js";
import { alongWire, wireAngles } from "./wires.js";

/** Where a function first goes from below zero to zero or above; the middle of the limits where it never does. */
function rootBetween(value: (x: number) => number, low: number, high: number): number {
  let x0 = low;
  let y0 = value(low);
  for (let i = 1; i <= 200; i++) {
    const x1 = low + ((high - low) * i) / 200;
    const y1 = value(x1);
    if (y0 < 0 && y1 >= 0) {
      let below = x0;
      let above = x1;
      for (let step = 0; step < 40; step++) {
        const middle = (below + above) / 2;
        if (value(middle) < 0) below = middle;
        else above = middle;
      }
      return (below + above) / 2;
    }
    x0 = x1;
    y0 = y1;
  }
  return (low + high) / 2;
}

/** One arm of a trap dipole: metres of wire inside and outside of the trap, the trap in F and H. */
interface TrapArm {
  readonly innerM: number;
  readonly outerM: number;
  readonly trapF: number;
  readonly trapH: number;
  readonly trapQ: number;
}

function trapArm(state: AntennaState, arm: TrapArm, index: number): Impedance {
  const inner = arm.innerM * state.scale * at(state.scatter, index);
  const outer = arm.outerM * state.scale * at(state.scatter, index);
  const waveOhms = state.waveOhms / 2;
  const farad = arm.trapF * (state.detuneIndex === index ? state.detune : 1);
  return (hz) => {
    const w = 2 * Math.PI * hz;
    const ground = groundEffect(state, hz);
    const { nepers, radians } = wireAngles(hz / (1 + ground.shift), {
      lengthM: inner + outer,
      velocity: state.velocity,
      waveOhms,
      quarterOhms: 36.5 * ground.radiation,
      lossOhms: 36.5 * ground.loss + (state.lossOhms + state.waterOhms) / 2,
    });
    const trap = inverse(add(inverse([(w * arm.trapH) / arm.trapQ, w * arm.trapH]), [1e-7, w * farad]));
    const part = outer / (inner + outer);
    const end = scaled(hyperbolicCotangent(nepers * part, radians * part), waveOhms);
    return alongWire(add(end, trap), waveOhms, nepers * (1 - part), radians * (1 - part));
  };
}

const TRAP_BANDS: readonly (readonly [Metres, Metres])[] = [
  [80, 40],
  [40, 20],
  [20, 10],
  [20, 15],
  [30, 17],
];

export const trapDipole: Family = {
  traits: ["height", "detune"],
  make(random) {
    const [low, high] = random.pick(TRAP_BANDS);
    const wire = { ...drawWire(random), ...drawGround(random) };
    const waveOhms = random.range(850, 1050);
    const start: AntennaState = { ...wire, waveOhms, firstHz: inBand(random, low), heldBack: true };
    const innerHz = inBand(random, high);
    const trapHz = lowEdge(high) * random.range(0.97, 1.0);
    const trapF = (random.range(4e-11, 1.2e-10) * 14e6) / trapHz;
    const trapH = 1 / ((2 * Math.PI * trapHz) ** 2 * trapF);
    const trapQ = random.range(90, 250);
    const innerM = ((LIGHT * start.velocity) / (4 * innerHz)) * 0.975;
    const armOf = (outerM: number): TrapArm => ({ innerM, outerM, trapF, trapH, trapQ });
    // The outer wire is cut until the whole is resonant on the lower band.
    const reactance = (outerM: number) => trapArm(start, armOf(outerM), 0)(start.firstHz)[1];
    const arm = armOf(rootBetween(reactance, 0.05, LIGHT / (4 * start.firstHz)));
    const balun = perhapsBalun(random, 0.7);
    return {
      state: start,
      impedance: (state) => {
        const first = trapArm(state, arm, 0);
        const second = trapArm(state, arm, 1);
        return (hz) => throughTransformer(add(first(hz), second(hz)), hz, balun);
      },
    };
  },
};

/** A short vertical with a coil in it, over a lossy ground. */
export const loadedWhip: Family = {
  traits: ["counterpoise", "detune"],
  make(random) {
    const firstHz = inBand(random, random.pick([80, 40, 40, 30, 20]));
    const wire = drawWire(random);
    const lengthM = random.range(2, 4.5);
    const coilAt = random.pick([0.02, 0.4, 0.55]);
    const waveOhms = random.range(280, 380);
    const groundOhms = random.log(5, 28);
    const coilQ = random.range(120, 350);
    const coilF = random.range(1e-12, 3e-12);
    const ground = { heightM: 0, reflection: 0, groundLoss: 0, vertical: true };
    const start: AntennaState = { ...wire, ...ground, firstHz, waveOhms, heldBack: true };
    const withCoil = (state: AntennaState, henry: number): Impedance => {
      const whip = {
        lengthM: lengthM * state.scale * at(state.scatter, 0) * (1 + 0.03 * (state.counterpoiseLength - 1)),
        velocity: state.velocity,
        waveOhms,
        quarterOhms: 36.5,
        lossOhms: state.waterOhms + 0.3,
      };
      const coilH = henry * state.detune;
      const above = 1 - coilAt;
      return (hz) => {
        const w = 2 * Math.PI * hz;
        const { nepers, radians } = wireAngles(hz, whip);
        const winding: Pair = [((w * coilH) / coilQ) * (hz / firstHz) ** -0.5, w * coilH];
        const coil = inverse(add(inverse(winding), [0, w * coilF]));
        const top = scaled(hyperbolicCotangent(nepers * above, radians * above), waveOhms);
        const foot = alongWire(add(top, coil), waveOhms, nepers * coilAt, radians * coilAt);
        return add(foot, [groundOhms * state.counterpoiseLoss * (hz / firstHz) ** 0.4, 0]);
      };
    };
    // The coil is wound until the whip is resonant.
    const henry = rootBetween((coil) => withCoil(start, coil)(firstHz)[1], 1e-7, 1.5e-4);
    return { state: start, impedance: (state) => withCoil(state, henry) };
  },
};

/** A loop far smaller than the wave, tuned by a capacitor and fed by a smaller loop. */
export const smallLoop: Family = {
  traits: ["height", "detune"],
  make(random) {
    const firstHz = inBand(random, random.pick([40, 30, 20, 20, 17, 15]));
    const across = random.range(0.7, 1.3) * (firstHz < 9e6 ? 1.3 : 1);
    const radius = random.range(0.006, 0.014);
    const wire = { ...drawWire(random), ...drawGround(random) };
    const heightM = random.range(1.5, 6);
    const loopH = ((4e-7 * Math.PI * across) / 2) * (Math.log((4 * across) / radius) - 2);
    const loopF = 1 / ((2 * Math.PI * firstHz) ** 2 * loopH);
    const q = random.range(150, 500);
    const coupleH = loopH * random.range(0.1, 0.18);
    const lossOhms = (2 * Math.PI * firstHz * loopH) / q;
    const mutualH = Math.sqrt(random.range(32, 75) * lossOhms) / (2 * Math.PI * firstHz);
    return {
      state: { ...wire, heightM, firstHz, waveOhms: 600 },
      impedance: (state) => {
        // A factor on the length acts squared on the inductance, so that the resonance goes exactly with its inverse.
        const length = state.scale * at(state.scatter, 0);
        const henry = loopH * length * length;
        const farad = loopF * state.detune;
        const near = Math.exp(-state.heightM / 1.5);
        return (hz) => {
          const w = 2 * Math.PI * hz;
          const ratio = hz / firstHz;
          const loop: Pair = [
            lossOhms * (0.8 * Math.sqrt(ratio) + 0.2 * ratio ** 4) * (1 + near * state.groundLoss) +
              state.waterOhms * 0.01,
            w * henry * (1 - 0.004 * near) - 1 / (w * farad),
          ];
          const mutual = w * mutualH;
          return add([0.1, w * coupleH], divide([mutual * mutual, 0], loop));
        };
      },
    };
  },
};
