import type { AntennaState, Family } from "./antenna.js";
import { FAMILIES, type FamilyName } from "./antennas.js";
import { at } from "./at.js";
import { BANDS } from "./bands.js";
import { groundEffect } from "./ground.js";
import { lineLonger, lineShorter } from "./line-changes.js";
import type { Random } from "./random.js";
import type { Station } from "./station.js";
import { awayFromOne, type Change, type Changed, type ChangeFacts, type HeightEffect, withAntenna } from "./truth.js";

/** The same antenna hung again, or swept on another day. */
export const anotherSweep: Change = (before, random) => {
  const family: Family = FAMILIES[before.family];
  // A loop on a capacitor is not hung again: only its tuning plays a little.
  const play = before.family === "small-loop" ? 0.15 : 1;
  const scatter = before.antenna.scatter.map(() => 1 + random.sign() * play * random.range(0.001, 0.01));
  const heightFactor = family.traits.includes("height") ? random.range(0.98, 1.02) : 1;
  return {
    after: withAntenna(before, { scatter, heightM: before.antenna.heightM * heightFactor }),
    facts: { scatter, scale: at(scatter, 0), heightFactor },
  };
};

function scaledBy(before: Station, scale: number): Changed {
  const frequencyFactor = before.antenna.heldBack ? null : 1 / scale;
  return { after: withAntenna(before, { scale }), facts: { scale, frequencyFactor } };
}

export const wireLonger: Change = (before, random) => scaledBy(before, 1 + random.range(0.01, 0.08));

export const wireShorter: Change = (before, random) => scaledBy(before, 1 - random.range(0.01, 0.08));

export const wireAndLine: Change = (before, random) => {
  const wire = scaledBy(before, 1 + random.sign() * random.range(0.01, 0.08));
  const line = random.uniform() < 0.5 ? lineLonger(wire.after, random) : lineShorter(wire.after, random);
  return { after: line.after, facts: { ...wire.facts, ...line.facts } };
};

/** Water slows the wave, as if the wire were longer, and adds loss. */
export const waterOnWire: Change = (before, random) => {
  const slowing = before.family === "small-loop" ? random.range(0.0005, 0.003) : random.range(0.005, 0.02);
  const ohms = random.log(0.5, 8);
  const wire = scaledBy(before, 1 / (1 - slowing));
  return { after: withAntenna(wire.after, { waterOhms: ohms }), facts: { ...wire.facts, ohms } };
};

function loopHeightEffect(old: AntennaState, now: AntennaState): Omit<HeightEffect, "label"> {
  const before = Math.exp(-old.heightM / 1.5);
  const after = Math.exp(-now.heightM / 1.5);
  return {
    resistanceFactor: (1 + after * old.groundLoss) / (1 + before * old.groundLoss),
    shift: Math.sqrt((1 - 0.004 * before) / (1 - 0.004 * after)) - 1,
  };
}

function heightEffect(old: AntennaState, now: AntennaState, hz: number): Omit<HeightEffect, "label"> {
  const before = groundEffect(old, hz);
  const after = groundEffect(now, hz);
  return {
    resistanceFactor: (after.radiation + after.loss) / (before.radiation + before.loss),
    shift: (1 + after.shift) / (1 + before.shift) - 1,
  };
}

/** A vertical is lifted by its foot: its middle then moves as far as the foot does. */
function atHeight(old: AntennaState, factor: number): AntennaState {
  if (old.baseM === undefined) return { ...old, heightM: old.heightM * factor };
  const baseM = old.baseM * (factor * factor);
  return { ...old, baseM, heightM: old.heightM + baseM - old.baseM };
}

export const height: Change = (before, random) => {
  const old = before.antenna;
  const now = atHeight(old, awayFromOne(random, [0.5, 0.8], [1.25, 1.8]));
  const perBand = BANDS.map(({ label, low, high }) => ({
    label,
    ...(before.family === "small-loop" ? loopHeightEffect(old, now) : heightEffect(old, now, (low + high) / 2)),
  }));
  return {
    after: { ...before, antenna: now },
    facts: { heightBeforeM: old.heightM, heightAfterM: now.heightM, perBand },
  };
};

/** How far the length of a counterpoise counts: a resonant radial moves less, an earth rod has none. */
function counterpoiseFactor(family: FamilyName, drawn: number): number {
  if (family === "vertical-radials") return drawn ** 0.22;
  return family === "terminated" ? 1 : drawn;
}

export const counterpoise: Change = (before, random) => {
  const counterpoiseLength = counterpoiseFactor(before.family, awayFromOne(random, [0.4, 0.75], [1.35, 2.3]));
  const counterpoiseLoss = awayFromOne(random, [0.45, 0.8], [1.3, 2.5]);
  return {
    after: withAntenna(before, { counterpoiseLength, counterpoiseLoss }),
    facts: { counterpoiseLengthFactor: counterpoiseLength, counterpoiseResistanceFactor: counterpoiseLoss },
  };
};

/** The part that can go out of tune, and by how much of itself. */
const DETUNED: Readonly<
  Partial<Record<FamilyName, { readonly limits: readonly [number, number]; readonly what: string }>>
> = {
  "trap-dipole": { limits: [0.03, 0.15], what: "capacitor of one trap" },
  "loaded-whip": { limits: [0.005, 0.05], what: "coil" },
  fan: { limits: [0.02, 0.08], what: "length of one dipole" },
  parasitic: { limits: [0.01, 0.05], what: "length of the parasitic element" },
  "small-loop": { limits: [0.005, 0.05], what: "tuning capacitor" },
  "vertical-radials": { limits: [0.08, 0.3], what: "length of one radial" },
};

const detunedIndex = (before: Station, random: Random): number =>
  before.family === "trap-dipole" ? random.pick([0, 1]) : before.antenna.detuneIndex;

export const elementDetuned: Change = (before, random) => {
  const part = DETUNED[before.family];
  if (!part) throw new RangeError(`nothing to detune in ${before.family}`);
  const detuneIndex = detunedIndex(before, random);
  const detune = 1 + random.sign() * random.range(...part.limits);
  const facts: ChangeFacts = { what: part.what, index: detuneIndex, detuneFactor: detune };
  return { after: withAntenna(before, { detune, detuneIndex }), facts };
};
