import type { Instrument } from "../curve/uncertainty/instrument.js";
import type { Dial } from "../facts/activity/dial.js";
import type { BandPlan } from "../facts/band-plan/band-plan.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Mode } from "../facts/modes.js";
import { demand, isFiniteAbove0, isRecord } from "../input/argument.js";
import { quote } from "../input/read-error.js";
import type { People } from "./exposure.js";
import type { Scope } from "./scope.js";

/** What the options of a job are held to at its door, so that a slip is told by the name of the argument. */

/**
 * Plan, class, bands and modes.
 *
 * @throws TypeError for one that is not what it must be
 * @throws RangeError for a band or a licence class that the plan does not know
 */
export function checkScope(options: Scope): void {
  demand(isRecord(options), "options", "an object with a plan at least: { plan }", options);
  const { plan, licenceClass, bands, modes } = options;
  const isPlan = isRecord(plan) && Array.isArray(plan.bands);
  demand(isPlan, "plan", 'a band plan, such as planById("itu-r1") gives', plan);
  if (licenceClass !== undefined && licenceClass !== null) checkClass(plan, licenceClass);
  if (bands !== undefined) {
    demand(Array.isArray(bands), "bands", 'a list of names such as ["40m", "20m"]', bands);
    bands.forEach((name, i) => {
      checkBandName(plan, name, `bands[${i}]`);
    });
  }
  if (modes !== undefined) {
    demand(Array.isArray(modes), "modes", 'a list of modes such as [modeOf("cw")]', modes);
    modes.forEach((mode, i) => {
      checkMode(mode, `modes[${i}]`);
    });
  }
}

/** @throws RangeError for a name that no band of the plan has */
export function checkBandName(plan: BandPlan, name: string, argument: string): void {
  demand(typeof name === "string", argument, 'the name of a band such as "40m"', name);
  if (plan.bands.some(({ band }) => band === name)) return;
  const known = plan.bands.map(({ band }) => band).join(", ");
  throw new RangeError(`${argument}: there is no band ${quote(name)} in ${plan.id}; its bands are ${known}`);
}

function checkClass({ id, classes = [] }: BandPlan, licenceClass: string): void {
  demand(typeof licenceClass === "string", "licenceClass", "the name of a class, or null", licenceClass);
  if (classes.includes(licenceClass)) return;
  const known = classes.length === 0 ? "it knows none" : `its classes are ${classes.join(", ")}`;
  throw new RangeError(`licenceClass: there is no class ${quote(licenceClass)} in ${id}; ${known}`);
}

function checkMode(mode: Mode, argument: string): void {
  const isMode =
    isRecord(mode) && typeof mode.emission === "string" && [mode.widthHz, mode.bandwidthHz].every(isFiniteAbove0);
  demand(isMode, argument, `a mode, such as modeOf("cw") gives`, mode);
}

/** @throws TypeError for details that a feedline is only made from */
export function checkFeedline(feedline: Feedline | null | undefined): void {
  if (feedline === undefined || feedline === null) return;
  const isFeedline =
    isRecord(feedline) &&
    [feedline.lengthM, feedline.characteristicOhms, feedline.velocityFactor].every(isFiniteAbove0) &&
    typeof feedline.loss === "object";
  demand(isFeedline, "feedline", "a feedline, as feedlineFrom gives one, or null", feedline);
}

/** @throws TypeError */
export function checkInstrument(instrument: Instrument | null | undefined): void {
  if (instrument === undefined || instrument === null) return;
  const isKnown = isRecord(instrument) && typeof instrument.directivityDb === "number";
  demand(isKnown, "instrument", "an object with its directivity: { directivityDb: 35 }, or null", instrument);
}

/** @throws TypeError */
export function checkDials(dials: readonly Dial[] | undefined): void {
  if (dials === undefined) return;
  demand(Array.isArray(dials), "dials", "a list of dial frequencies, { frequencyHz, mode, activity }", dials);
  dials.forEach((dial, i) => {
    const isDial = isRecord(dial) && isFiniteAbove0(dial.frequencyHz);
    demand(isDial, `dials[${i}]`, "a dial frequency, { frequencyHz, mode, activity }", dial);
    if (dial.mode !== null) checkMode(dial.mode, `dials[${i}].mode`);
  });
}

/** @throws TypeError for a distance that is not above 0, or a share that is not above 0 and up to 1 */
export function checkPeople(people: People | undefined): void {
  if (people === undefined) return;
  demand(isRecord(people), "people", "an object such as { distanceM: 3, onAir: 0.5 }", people);
  const { distanceM, onAir } = people;
  if (distanceM !== undefined)
    demand(isFiniteAbove0(distanceM), "people.distanceM", "a distance above 0, m", distanceM);
  if (onAir !== undefined)
    demand(isFiniteAbove0(onAir) && onAir <= 1, "people.onAir", "a share above 0 up to 1", onAir);
}
