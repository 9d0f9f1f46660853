/**
 * Pairs of modelled sweeps with a known cause between them. Antennas: NEC-2 (tests/nec), 18 m of RG-58 type coax (see
 * modelled-sweeps.ts); the changes are invented.
 */
import type { CauseCode, VectorSweep } from "@feedpoint/core";
import { COAX } from "./modelled-sweeps.js";
import { type Line, type NecAntenna, polarReflection, readNec } from "./nec-truth.js";
import { seededNormal } from "./seeded-noise.js";
import { type Pair, sweepOfReflections } from "./sweeps.js";

export interface CausePair {
  readonly name: string;
  /** Everything that changed and is to be told; none: nothing */
  readonly causes: readonly CauseCode[];
  /** What changed as well, and may be told or left open */
  readonly besides?: readonly CauseCode[];
  readonly before: View;
  readonly after: View;
  /** What was done, for the checks of size */
  readonly truth: { readonly addedM?: number; readonly addedDbAt10MHz?: number; readonly scale?: number };
}

/** An antenna as it is swept. */
interface View {
  readonly antenna: NecAntenna;
  readonly line: Line;
  /** Added one-way loss at 10 MHz, dB, growing with the root of frequency */
  readonly extraDbAt10MHz?: number;
  /** The same, at all frequencies alike, and growing in proportion to frequency */
  readonly padDb?: number;
  readonly wetDbAt10MHz?: number;
  /** Lossless line of another kind between the usual one and the analyser */
  readonly added?: { readonly lengthM: number; readonly velocityFactor: number; readonly characteristicOhms: number };
  /** The file says 50 Ω, the analyser reckoned with this */
  readonly reckonedOhms?: number;
  /** Whether some samples in a hundred jump */
  readonly isUneasy?: boolean;
}

/** Standard deviations from which on a sample jumps: 3 in 100 do. */
const JUMP_FROM = 2.17;

const coax = (lengthM: number): Line => ({ ...COAX, lengthM });
const VELOCITY = COAX.velocityFactor;

/** An antenna with all its frequencies multiplied: a wire of another length. */
const scaled = ({ frequencyHz, impedance }: NecAntenna, scale: number): NecAntenna => ({
  frequencyHz: frequencyHz.map((frequency) => frequency * scale),
  impedance,
});

/** An antenna with more resistance in series: a worse ground or counterpoise. */
const withResistance = ({ frequencyHz, impedance }: NecAntenna, ohms: number): NecAntenna => ({
  frequencyHz,
  impedance: impedance.map(([resistance, reactance]) => [resistance + ohms, reactance]),
});

/** Every pair, for all antennas that it makes sense for. */
export function causePairs(): readonly CausePair[] {
  const vee = readNec("vee-40m");
  const antennas: Readonly<Record<string, NecAntenna>> = {
    vee,
    fan: readNec("fan-dipole-40-20m"),
    endfed: readNec("end-fed-49-to-1"),
    vertical: readNec("loaded-vertical-80m"),
  };
  const everywhere = Object.entries(antennas).flatMap(([name, antenna]): CausePair[] => {
    const before = { antenna, line: COAX };
    const pair = (
      what: string,
      causes: readonly CauseCode[],
      after: Partial<View>,
      truth: CausePair["truth"] = {},
      besides: readonly CauseCode[] = [],
    ): CausePair => ({ name: `${name}: ${what}`, causes, besides, before, after: { ...before, ...after }, truth });
    return [
      pair("nothing", [], {}),
      pair("9 m more line", ["line-length-changed"], { line: coax(27) }, { addedM: 9 / VELOCITY }),
      pair("2 m more line", ["line-length-changed"], { line: coax(20) }, { addedM: 2 / VELOCITY }),
      pair("6 m less line", ["line-length-changed"], { line: coax(12) }, { addedM: -6 / VELOCITY }),
      pair("all of the line gone", ["line-length-changed"], { line: coax(0) }, { addedM: -18 / VELOCITY }),
      pair("1.6 dB more loss", ["loss-added"], { extraDbAt10MHz: 1.584 }, { addedDbAt10MHz: 1.584 }),
      pair("0.5 dB more loss", ["loss-added"], { extraDbAt10MHz: 0.5 }, { addedDbAt10MHz: 0.5 }),
      pair("a 3 dB pad", ["loss-added"], { padDb: 3 }, { addedDbAt10MHz: 3 }),
      pair("a wet dielectric", ["loss-added"], { wetDbAt10MHz: 0.8 }, { addedDbAt10MHz: 0.8 }),
      pair("40 m more line", ["line-length-changed"], { line: coax(58) }, { addedM: 40 / VELOCITY }),
      pair("0.5 m more line", ["line-length-changed"], { line: coax(18.5) }, { addedM: 0.5 / VELOCITY }),
      pair(
        "9 m of foam-filled line more",
        ["line-length-changed"],
        { added: { lengthM: 9, velocityFactor: 0.82, characteristicOhms: 50 } },
        { addedM: 9 / 0.82 },
      ),
      pair(
        "9 m of 75 ohm line more",
        ["line-length-changed"],
        { added: { lengthM: 9, velocityFactor: 0.82, characteristicOhms: 75 } },
        { addedM: 9 / 0.82 },
      ),
      // What slows the wave by three in a hundred is no other place of measuring: the loss is what counts.
      pair(
        "soaked line: slower and 2 dB more loss",
        ["loss-added"],
        { line: { ...COAX, velocityFactor: 0.64 }, extraDbAt10MHz: 1, wetDbAt10MHz: 1 },
        { addedDbAt10MHz: 2 },
      ),
      pair("0.15 dB more loss", ["loss-added"], { extraDbAt10MHz: 0.15 }, { addedDbAt10MHz: 0.15 }),
      pair("6 dB more loss", ["loss-added"], { extraDbAt10MHz: 6 }, { addedDbAt10MHz: 6 }),
      pair("0.5 % longer wire", ["resonance-moved"], { antenna: scaled(antenna, 0.995) }, { scale: 0.995 }),
      pair("7 % shorter wire", ["resonance-moved"], { antenna: scaled(antenna, 1.07) }, { scale: 1.07 }),
      pair(
        "9 m more line and 15 ohm more ground resistance",
        ["line-length-changed"],
        { antenna: withResistance(antenna, 15), line: coax(27) },
        { addedM: 9 / VELOCITY },
        ["antenna-changed"],
      ),
      pair("75 ohm reckoned with", ["reference-changed"], { reckonedOhms: 75 }),
      pair("a bad contact", ["interference"], { isUneasy: true }),
      pair("2 % shorter wire", ["resonance-moved"], { antenna: scaled(antenna, 1.02) }, { scale: 1.02 }),
      pair("1 % longer wire", ["resonance-moved"], { antenna: scaled(antenna, 0.99) }, { scale: 0.99 }),
      pair("5 % shorter wire", ["resonance-moved"], { antenna: scaled(antenna, 1.05) }, { scale: 1.05 }),
      pair(
        "2 % shorter wire and 9 m more line",
        ["resonance-moved", "line-length-changed"],
        { antenna: scaled(antenna, 1.02), line: coax(27) },
        { scale: 1.02, addedM: 9 / VELOCITY },
      ),
      pair(
        "2 % longer wire and 1 dB more loss",
        ["resonance-moved", "loss-added"],
        { antenna: scaled(antenna, 0.98), extraDbAt10MHz: 1 },
        { scale: 0.98, addedDbAt10MHz: 1 },
      ),
      pair("15 ohm more ground resistance", ["antenna-changed"], { antenna: withResistance(antenna, 15) }),
    ];
  });
  const between = (what: string, cause: CauseCode, antenna: string, truth: CausePair["truth"] = {}): CausePair => ({
    name: `vee: ${what}`,
    causes: [cause],
    before: { antenna: vee, line: COAX },
    after: { antenna: readNec(antenna), line: COAX },
    truth,
  });
  return [
    ...everywhere,
    between("wire cut to 0.980", "resonance-moved", "vee-40m-trimmed", { scale: 1 / 0.98 }),
    between("legs drooped", "antenna-changed", "vee-40m-drooped"),
    between("another antenna", "antenna-changed", "fan-dipole-40-20m"),
  ];
}

/** A view as an analyser would sweep it, on the grid of the antenna as it was before. */
export function sweepOfView(view: View, axis: readonly number[], noise: number, seed: number): VectorSweep {
  const normal = seededNormal(seed);
  const { antenna, line, added, reckonedOhms = 50, isUneasy = false } = view;
  const { extraDbAt10MHz = 0, padDb = 0, wetDbAt10MHz = 0 } = view;
  const frequencies = axis.filter(
    (frequency) => frequency >= (antenna.frequencyHz[0] ?? 0) && frequency <= (antenna.frequencyHz.at(-1) ?? 0),
  );
  const reflections = frequencies.map((frequency): Pair => {
    const [rho, angle] = polarReflection(impedanceAt(antenna, frequency), line, frequency);
    const extraDb = padDb + extraDbAt10MHz * Math.sqrt(frequency / 10e6) + wetDbAt10MHz * (frequency / 10e6);
    const lost = rho * 10 ** (-extraDb / 10);
    const atLine: Pair = [lost * Math.cos(angle), lost * Math.sin(angle)];
    const [real, imaginary] = against(added ? throughAdded(atLine, added, frequency) : atLine, 50, reckonedOhms);
    const jump = isUneasy && Math.abs(normal()) > JUMP_FROM ? 0.15 : 0;
    return [real + noise * normal() + jump * normal(), imaginary + noise * normal() + jump * normal()];
  });
  return sweepOfReflections(frequencies, reflections);
}

/** Straight lines between the model's grid points, which lie closer than any sweep's step. */
function impedanceAt({ frequencyHz, impedance }: NecAntenna, frequency: number): Pair {
  const first = frequencyHz[0] ?? 0;
  const step = (frequencyHz[1] ?? 0) - first;
  const index = Math.min(Math.max(0, Math.floor((frequency - first) / step)), frequencyHz.length - 2);
  const share = (frequency - first) / step - index;
  const [r0, x0] = impedance[index] ?? [Number.NaN, Number.NaN];
  const [r1, x1] = impedance[index + 1] ?? [Number.NaN, Number.NaN];
  return [r0 + share * (r1 - r0), x0 + share * (x1 - x0)];
}

/** Γ against one impedance turned into Γ against another: Γb = (Γa - r) / (1 - r Γa), r = (Zb - Za) / (Zb + Za). */
function against([real, imaginary]: Pair, fromOhms: number, toOhms: number): Pair {
  const r = (toOhms - fromOhms) / (toOhms + fromOhms);
  const [a, b, c, d] = [real - r, imaginary, 1 - r * real, -r * imaginary];
  const square = c * c + d * d;
  return [(a * c + b * d) / square, (b * c - a * d) / square];
}

/** Γ against 50 Ω at the near end of a lossless line of its own impedance. */
function throughAdded(reflection: Pair, added: NonNullable<View["added"]>, frequencyHz: number): Pair {
  const [real, imaginary] = against(reflection, 50, added.characteristicOhms);
  const angle = (-4 * Math.PI * frequencyHz * added.lengthM) / (added.velocityFactor * 299_792_458);
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return against([real * cosine - imaginary * sine, real * sine + imaginary * cosine], added.characteristicOhms, 50);
}

/** Steps of 50 kHz, or as many as it takes for 100 points. */
const STEP_HZ = 50_000;
const FEWEST_STEPS = 100;

/** Frequencies of a sweep in even steps over what an antenna was modelled for. */
export const axisOf = ({ frequencyHz }: NecAntenna): number[] => {
  const first = frequencyHz[0] ?? 0;
  const last = frequencyHz.at(-1) ?? 0;
  const stepHz = Math.min(STEP_HZ, (last - first) / FEWEST_STEPS);
  return Array.from({ length: Math.floor((last - first) / stepHz) + 1 }, (_, i) => first + i * stepHz);
};
