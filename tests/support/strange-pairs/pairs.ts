/**
 * Pairs of sweeps with one known change between them, of antennas seen through coaxial line. All antennas and changes
 * are invented, computed from lumped and line models; no sweep was measured. The same seed gives the same numbers.
 */
import type { Pair } from "../sweeps.js";
import { ANTENNA_FAMILIES, FAMILIES, type FamilyName } from "./antennas.js";
import { at } from "./at.js";
import { calibratedAgain } from "./calibration.js";
import { applicable, CHANGES, type ChangeName, MAKE_CHANGE } from "./changes.js";
import { add, magnitude, subtract } from "./complex.js";
import { type Cable, dbAt10MHz, drawCable } from "./lines.js";
import { drawBraid } from "./part-changes.js";
import { type Random, randomStream } from "./random.js";
import { reflectionsOf, type Station } from "./station.js";
import type { ChangeFacts } from "./truth.js";
import { type Place, type ViewPart, type ViewRange, viewOf } from "./views.js";

export { ANTENNA_FAMILIES, type FamilyName } from "./antennas.js";
export { applicable, CHANGES, type ChangeName } from "./changes.js";
export type { ViewRange } from "./views.js";

/** What to make; whatever is left out is drawn from the seed. The noise is the standard deviation per part of Γ. */
export interface PairOptions {
  readonly family?: FamilyName;
  readonly change?: ChangeName;
  readonly range?: ViewRange;
  readonly points?: number;
  readonly noise?: number;
}

/** One sweep: Γ against 50 ohms at frequencies in Hz. */
export interface SweptPart {
  readonly label: string;
  readonly frequencyHz: readonly number[];
  readonly real: readonly number[];
  readonly imaginary: readonly number[];
}

/** The change, its size |ΔΓ| without noise, and the noise. */
interface PairTruth extends ChangeFacts {
  readonly kind: ChangeName;
  readonly rmsDelta: number;
  readonly maxDelta: number;
  readonly noise: number;
}

/** The line as it was before: see `Line` for its units. */
interface LineBefore extends Pick<Cable, "kind" | "z0" | "velocity" | "k1" | "k2"> {
  readonly lengthM: number;
  readonly dbAt10MHz: number;
}

/** A pair of sweeps and everything that is known about it. */
export interface StrangePair {
  readonly family: FamilyName;
  readonly change: ChangeName;
  readonly range: ViewRange;
  readonly seed: number;
  readonly beforeLine: LineBefore;
  readonly place: Place | null;
  readonly truth: PairTruth;
  readonly before: readonly SweptPart[];
  readonly after: readonly SweptPart[];
}

type Clean = readonly (readonly Pair[])[];

const among = <Item>(list: readonly Item[], chance: number): Item => at(list, Math.floor(chance * list.length));

function chooseKind(seed: number, { family, change }: PairOptions): { family: FamilyName; change: ChangeName } {
  const random = randomStream(seed, "choice");
  const familyChance = random.uniform();
  const changeChance = random.uniform();
  const fitting = (name: FamilyName) => change === undefined || applicable(name, change);
  const chosen = family ?? among(ANTENNA_FAMILIES.filter(fitting), familyChance);
  const made =
    change ??
    among(
      CHANGES.filter((name) => applicable(chosen, name)),
      changeChance,
    );
  if (!applicable(chosen, made)) throw new RangeError(`change "${made}" has no meaning for family "${chosen}"`);
  return { family: chosen, change: made };
}

function sizeOfChange(before: Clean, after: Clean): { readonly rmsDelta: number; readonly maxDelta: number } {
  const deltas = before.flatMap((part, i) => part.map((gamma, k) => magnitude(subtract(gamma, at(at(after, i), k)))));
  const squares = deltas.reduce((sum, delta) => sum + delta * delta, 0);
  const maxDelta = deltas.reduce((most, delta) => Math.max(most, delta), 0);
  return { rmsDelta: Math.sqrt(squares / deltas.length), maxDelta };
}

function sweptParts(parts: readonly ViewPart[], clean: Clean, sigma: number, random: Random): SweptPart[] {
  return parts.map(({ label, frequencyHz }, i) => {
    const gammas = at(clean, i).map((gamma) => add(gamma, random.noise(sigma)));
    return { label, frequencyHz, real: gammas.map(([real]) => real), imaginary: gammas.map(([, part]) => part) };
  });
}

/** The pair of a seed. */
export function makePair(seed: number, options: PairOptions = {}): StrangePair {
  const range = options.range ?? "wide";
  const { family, change } = chooseKind(seed, options);
  const noise = options.noise ?? randomStream(seed, "sigma").log(0.0005, 0.004);
  const lineRandom = randomStream(seed, "line");
  const line = drawCable(lineRandom);
  const lengthM = lineRandom.range(5, 40);
  const antenna = FAMILIES[family].make(randomStream(seed, `antenna ${family}`));
  const changeRandom = randomStream(seed, `change ${change}`);
  const station: Station = {
    family,
    antenna: antenna.state,
    impedance: antenna.impedance,
    line,
    lengthM,
    feed: change === "braid-choked" ? [drawBraid(changeRandom, lengthM)] : [],
    plug: [],
    referenceOhms: 50,
  };
  const changed = MAKE_CHANGE[change](station, changeRandom);
  const { parts, place } = viewOf(range, station, randomStream(seed, `grid ${range}`), options.points);
  const before = parts.map(({ frequencyHz }) => reflectionsOf(station, frequencyHz));
  const seen = parts.map(({ frequencyHz }) => reflectionsOf(changed.after, frequencyHz));
  const calibrated =
    change === "another-calibration"
      ? calibratedAgain(withFrequencies(parts, seen), noise, changeRandom)
      : { parts: seen, facts: changed.facts };
  const noiseOf = (when: string) => randomStream(seed, `${when} ${range}${change}`);
  return {
    family,
    change,
    range,
    seed,
    beforeLine: { ...line, lengthM, dbAt10MHz: dbAt10MHz(line, lengthM) },
    place,
    truth: { kind: change, ...calibrated.facts, ...sizeOfChange(before, calibrated.parts), noise },
    before: sweptParts(parts, before, noise, noiseOf("before")),
    after: sweptParts(parts, calibrated.parts, noise, noiseOf("after")),
  };
}

const withFrequencies = (parts: readonly ViewPart[], gammas: Clean) =>
  gammas.map((part, i) => part.map((gamma, k) => ({ gamma, hz: at(at(parts, i).frequencyHz, k) })));
