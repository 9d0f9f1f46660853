import { lookUp } from "../../input/look-up.js";
import type { ModeName } from "../mode-names.js";
import type { BandPlan, Emission, Grant, PlanBand, PlanSegment, PowerLimit, UsableBand } from "./band-plan.js";

/** What a band plan asks of a signal. */
export interface Signal {
  /** As what it counts */
  readonly emission: Emission;
  /** What the signal takes up, Hz */
  readonly bandwidthHz: number;
  /** The mode, where it is known: a rule may bar one, or give single sidebands more power */
  readonly name?: ModeName;
}

/**
 * The bands of a plan as a licence class may use them; without a class, as any class may.
 *
 * @param licenceClass one of the classes of the plan; null: any
 * @param signals only where one of these may be sent; null: wherever anything may
 * @returns ascending, without the bands in which nothing of that may be sent
 */
export function usableBands(
  plan: BandPlan,
  licenceClass: string | null,
  signals: readonly Signal[] | null = null,
): readonly UsableBand[] {
  return plan.bands.flatMap(({ band, segments }) => {
    const usable = segments.filter(
      (segment) =>
        isGranted(segment, licenceClass) &&
        (signals === null || signals.some((signal) => takesSignal(segment, licenceClass, signal))),
    );
    const pieces: { lowHz: number; highHz: number }[] = [];
    for (const { lowHz, highHz } of usable) {
      const last = pieces.at(-1);
      if (last !== undefined && last.highHz === lowHz) last.highHz = highHz;
      else pieces.push({ lowHz, highHz });
    }
    const first = pieces[0];
    const last = pieces.at(-1);
    return first === undefined || last === undefined
      ? []
      : [{ band, lowHz: first.lowHz, highHz: last.highHz, pieces, segments: usable }];
  });
}

/** What a segment's use leaves to be sent, where the plan says no more than the use. */
const EMISSIONS_BY_USE: Readonly<Record<string, readonly Emission[]>> = { cw: ["cw"], beacon: [], guard: [] };

/**
 * What may be sent in a segment by a class.
 *
 * @param licenceClass one of the classes of the plan; null: any
 * @returns null where the plan does not say; empty where nothing may be sent
 */
export function emissionsIn(segment: PlanSegment, licenceClass: string | null): readonly Emission[] | null {
  if (segment.grants === undefined)
    return segment.emissions ?? lookUp(EMISSIONS_BY_USE, segment.use.toLowerCase()) ?? null;
  const granted = grantsTo(segment, licenceClass).map(({ emissions = null }) => emissions);
  return granted.includes(null) ? null : [...new Set(granted.flatMap((names) => names ?? []))];
}

/**
 * The limits of the grant that gives a class the most power in a segment, all of which hold.
 *
 * @param licenceClass one of the classes of the plan; null: any
 * @returns empty where the plan does not say; `ofSideband` where single sidebands have a limit of their own
 */
export function greatestPowersIn(
  segment: PlanSegment,
  licenceClass: string | null,
): { readonly limits: readonly PowerLimit[]; readonly ofSideband: PowerLimit | null } {
  const [first, ...others] = grantsTo(segment, licenceClass);
  const wattsOf = (grant: Grant) => limitsOf(segment, grant)[0]?.watts ?? 0;
  const most = first && others.reduce((best, next) => (wattsOf(next) > wattsOf(best) ? next : best), first);
  return { limits: limitsOf(segment, most ?? {}), ofSideband: most?.sidebandMaxPower ?? null };
}

/** Whether what a class may do in a segment rests on one secondary page alone. */
export const isPowerUnconfirmed = (segment: PlanSegment, licenceClass: string | null): boolean =>
  licenceClass !== null && grantsTo(segment, licenceClass).some(({ confirmed }) => confirmed === false);

/**
 * The limits of power that all hold for an emission of a class in a segment; none where the plan does not say.
 *
 * Where several grants allow it (without a class, say), the one with the greatest power counts.
 */
export function powerLimitsIn(
  segment: PlanSegment,
  licenceClass: string | null,
  { emission, name }: Pick<Signal, "emission" | "name">,
): readonly PowerLimit[] {
  const isSideband = name !== undefined && SIDEBANDS.includes(name);
  const [first, ...others] = grantsTo(segment, licenceClass)
    .filter((grant) => grantsEmission(grant, emission))
    .map(
      ({ sidebandMaxPower, ...grant }): Partial<Grant> =>
        isSideband && sidebandMaxPower !== undefined ? { ...grant, maxPower: sidebandMaxPower } : grant,
    );
  if (first === undefined) return limitsOf(segment, {});
  const wattsOf = ({ maxPower }: Partial<Grant>) => maxPower?.watts ?? Number.POSITIVE_INFINITY;
  return limitsOf(
    segment,
    others.reduce((most, next) => (wattsOf(next) > wattsOf(most) ? next : most), first),
  );
}

const SIDEBANDS: readonly ModeName[] = ["ssb", "usb", "lsb"];

/** What a grant and its segment set together. */
function limitsOf(
  segment: PlanSegment,
  { maxPower, alsoMaxTransmitterWattsPep }: Partial<Grant>,
): readonly PowerLimit[] {
  return strictest([
    ...(maxPower === undefined ? [] : [maxPower]),
    ...(alsoMaxTransmitterWattsPep === undefined ? [] : [{ watts: alsoMaxTransmitterWattsPep, basis: "pep" } as const]),
    ...(segment.maxPower === undefined ? [] : [segment.maxPower]),
  ]);
}

/** Of several limits that are measured at the same place, the least. */
const strictest = (limits: readonly PowerLimit[]): readonly PowerLimit[] =>
  limits.filter(
    ({ basis, watts }, i) =>
      !limits.some((other, k) => other.basis === basis && (other.watts < watts || (other.watts === watts && k < i))),
  );

const grantsEmission = ({ emissions }: Grant, emission: Emission) => emissions?.includes(emission) ?? true;

/** The grants of a segment that hold for a class (all of them, for null). */
const grantsTo = ({ grants = [] }: PlanSegment, licenceClass: string | null): readonly Grant[] =>
  licenceClass === null ? grants : grants.filter(({ classes }) => classes.includes(licenceClass));

/** Whether a class (any, for null) may send a signal in a segment. */
export function takesSignal(segment: PlanSegment, licenceClass: string | null, signal: Signal): boolean {
  if (signal.name !== undefined && segment.excludedModes?.includes(signal.name)) return false;
  if (segment.maxBandwidthHz !== undefined && signal.bandwidthHz > segment.maxBandwidthHz) return false;
  return emissionsIn(segment, licenceClass)?.includes(signal.emission) ?? true;
}

function isGranted(segment: PlanSegment, licenceClass: string | null): boolean {
  return segment.grants === undefined || licenceClass === null || grantsTo(segment, licenceClass).length > 0;
}

/** A transmission to be looked up in a plan. */
export interface Transmission {
  /** Carrier or dial frequency, Hz */
  readonly frequencyHz: number;
  /** As what it counts */
  readonly emission: Emission;
  /** The mode, where it is known: a rule may bar one, or give single sidebands more power */
  readonly name?: ModeName;
  /** What the signal itself takes up, Hz, held against a segment's limit of bandwidth; not looked at where absent */
  readonly bandwidthHz?: number;
  /** null: any class */
  readonly licenceClass: string | null;
  /** How far the signal reaches to both sides of its frequency, Hz (less than 0: not up to it); not at all where absent */
  readonly occupied?: { readonly belowHz: number; readonly aboveHz: number };
}

/**
 * Whether a plan allows a transmission, and the limits of power that all hold for it (none where the plan does not say).
 *
 * All of what the signal occupies must lie in segments that allow it.
 *
 * @example
 * ```ts
 * import { planById, privilegeFor } from "@feedpoint/core";
 *
 * const morse = { frequencyHz: 7.01e6, emission: "cw", licenceClass: "technician" } as const;
 * privilegeFor(planById("us-part97"), morse); // → { allowed: false, limits: [] }
 * privilegeFor(planById("us-part97"), { ...morse, frequencyHz: 7.03e6 }).limits; // → [{ watts: 200, basis: "pep" }]
 * ```
 */
export function privilegeFor(
  plan: BandPlan,
  transmission: Transmission,
): { allowed: boolean; limits: readonly PowerLimit[] } {
  const { frequencyHz, occupied = { belowHz: 0, aboveHz: 0 } } = transmission;
  const low = frequencyHz - occupied.belowHz;
  const high = frequencyHz + occupied.aboveHz;
  for (const band of plan.bands) {
    if (low < band.lowHz || high > band.highHz) continue;
    let reached = low;
    let limits: readonly PowerLimit[] = [];
    for (const segment of band.segments) {
      const holds =
        segment.lowHz <= reached &&
        (reached < segment.highHz || (reached === segment.highHz && isTopEdge(band, segment)));
      if (!holds) continue;
      if (!allows(segment, transmission)) return { allowed: false, limits: [] };
      limits = strictest([...limits, ...powerLimitsIn(segment, transmission.licenceClass, transmission)]);
      if (high <= segment.highHz) return { allowed: true, limits };
      reached = segment.highHz;
    }
  }
  return { allowed: false, limits: [] };
}

/** The top edge of a band, or of a channel with nothing adjoining, belongs to it. */
function isTopEdge(band: PlanBand, segment: PlanSegment): boolean {
  return !band.segments.some(({ lowHz }) => lowHz === segment.highHz);
}

function allows(segment: PlanSegment, transmission: Transmission): boolean {
  const { emission, bandwidthHz = 0, licenceClass } = transmission;
  if (!takesSignal(segment, licenceClass, { ...transmission, bandwidthHz })) return false;
  return (
    segment.grants === undefined || grantsTo(segment, licenceClass).some((grant) => grantsEmission(grant, emission))
  );
}
