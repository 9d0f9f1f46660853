/** What a band plan says, as plain data. The schema that checks one from a file stands in band-plan-schema.ts. */
export interface BandPlan {
  readonly id: string;
  /** The ITU Region (1, 2, 3) or country that the plan is for; absent where it is for several */
  readonly region?: Region;
  readonly title: string;
  /** allocation: what a treaty or regulator sets aside; licence-privileges: by class; band-plan: usage agreed among amateurs */
  readonly kind: "allocation" | "licence-privileges" | "band-plan";
  readonly authority: string;
  readonly edition: string;
  readonly source: { readonly title: string; readonly section?: string; readonly url?: string | null };
  /** Whether the plan was read from a source, or rests on memory. Each segment says the same of itself. */
  readonly confirmed: boolean;
  /** Licence classes, the one with the most privileges first; absent where the plan knows none */
  readonly classes?: readonly string[];
  readonly notes: readonly string[];
  readonly sources: readonly PlanSource[];
  readonly bands: readonly PlanBand[];
}

/** An ITU Region, or a country with customs of its own. */
export type Region = "1" | "2" | "3" | "us" | "jp" | "uk";

export interface PlanSource {
  readonly id: string;
  readonly title: string;
  readonly section?: string;
  readonly edition?: string;
  /**
   * primary: the authority's own text; reprint: a copy of it; retyped: typed again or quoted; summary: news;
   * practice: what operators do; memory: nothing was read
   */
  readonly kind: string;
  /** What of it was read */
  readonly read?: string;
  readonly url?: string;
}

export interface PlanBand {
  /** Wavelength name: "40m" */
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  readonly section?: string;
  readonly note?: string;
  /** Ascending, not overlapping; frequencies between them are not available */
  readonly segments: readonly PlanSegment[];
}

export type Emission = "cw" | "data" | "phone" | "image" | "mcw";

/** A power limit; `basis` says where it is measured: at the transmitter (pep) or as radiated (erp, eirp). */
export interface PowerLimit {
  readonly watts: number;
  readonly basis: "pep" | "erp" | "eirp";
}

export interface Grant {
  readonly classes: readonly string[];
  /** Absent where the plan does not say what may be sent */
  readonly emissions?: readonly Emission[];
  readonly maxPower?: PowerLimit;
  readonly alsoMaxTransmitterWattsPep?: number;
  readonly note?: string;
}

/** A piece of a band with one use. Low edge inclusive, high edge exclusive, but for the band's own top edge. */
export interface PlanSegment {
  readonly lowHz: number;
  readonly highHz: number;
  readonly use: string;
  readonly grants?: readonly Grant[];
  readonly emissions?: readonly Emission[];
  readonly maxBandwidthHz?: number;
  readonly maxPower?: PowerLimit;
  readonly status?: string;
  readonly centreHz?: number;
  readonly upperSidebandDialHz?: number;
  readonly confirmed: boolean;
  readonly sources: readonly string[];
  readonly note?: string;
}

/** What of a band is to be judged: its outer edges and the pieces that may be used between them. */
export interface JudgedBand {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
  readonly pieces: readonly { readonly lowHz: number; readonly highHz: number }[];
  readonly segments: readonly PlanSegment[];
}

/** What a band plan asks of a signal. */
export interface Signal {
  readonly emission: Emission;
  /** What the signal takes up, Hz */
  readonly bandwidthHz: number;
}

/**
 * The bands of a plan as a licence class may use them; without a class, as any class may.
 *
 * @param signals only where one of these may be sent; null: wherever anything may
 * @returns without the bands in which nothing of that may be sent
 */
export function judgedBands(
  plan: BandPlan,
  licenceClass: string | null,
  signals: readonly Signal[] | null = null,
): readonly JudgedBand[] {
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

/** What may be sent in a segment by a class (by any, for null); null where the plan does not say. */
export function emissionsIn(segment: PlanSegment, licenceClass: string | null): readonly Emission[] | null {
  if (segment.grants === undefined) return segment.emissions ?? EMISSIONS_BY_USE[segment.use] ?? null;
  const granted = grantsTo(segment, licenceClass).map(({ emissions = null }) => emissions);
  return granted.includes(null) ? null : [...new Set(granted.flatMap((names) => names ?? []))];
}

/** The greatest power that any grant gives a class in a segment; null where the plan does not say. */
export function greatestPowerIn(segment: PlanSegment, licenceClass: string | null): PowerLimit | null {
  const limits = grantsTo(segment, licenceClass).map(({ maxPower }) => maxPower ?? null);
  return [...limits, segment.maxPower ?? null].reduce(
    (most, next) => (next !== null && (most === null || next.watts > most.watts) ? next : most),
    null,
  );
}

/**
 * The limits of power that all hold for an emission of a class in a segment; none where the plan does not say.
 *
 * Where several grants allow it (without a class, say), the one with the greatest power counts.
 */
export function powerLimitsIn(
  segment: PlanSegment,
  licenceClass: string | null,
  emission: Emission,
): readonly PowerLimit[] {
  const [first, ...others] = grantsTo(segment, licenceClass).filter((grant) => grantsEmission(grant, emission));
  if (first === undefined) return segment.maxPower === undefined ? [] : [segment.maxPower];
  const wattsOf = ({ maxPower }: Grant) => maxPower?.watts ?? Number.POSITIVE_INFINITY;
  const grant = others.reduce((most, next) => (wattsOf(next) > wattsOf(most) ? next : most), first);
  const { maxPower, alsoMaxTransmitterWattsPep } = grant;
  return [
    ...(maxPower === undefined ? [] : [maxPower]),
    ...(alsoMaxTransmitterWattsPep === undefined ? [] : [{ watts: alsoMaxTransmitterWattsPep, basis: "pep" } as const]),
  ];
}

const grantsEmission = ({ emissions }: Grant, emission: Emission) => emissions?.includes(emission) ?? true;

/** The grants of a segment that hold for a class (all of them, for null). */
const grantsTo = ({ grants = [] }: PlanSegment, licenceClass: string | null): readonly Grant[] =>
  licenceClass === null ? grants : grants.filter(({ classes }) => classes.includes(licenceClass));

/** Whether a class (any, for null) may send a signal in a segment. */
export function takesSignal(segment: PlanSegment, licenceClass: string | null, signal: Signal): boolean {
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
  readonly emission: Emission;
  /** What the signal itself takes up, Hz, held against a segment's limit of bandwidth; not looked at where absent */
  readonly bandwidthHz?: number;
  /** null: any class */
  readonly licenceClass: string | null;
  /** How far the signal reaches to both sides of its frequency, Hz (less than 0: not up to it); not at all where absent */
  readonly occupied?: { readonly belowHz: number; readonly aboveHz: number };
}

/**
 * Whether a plan allows a transmission, and with what power.
 *
 * All of what the signal occupies must lie in segments that allow it.
 */
export function privilegeFor(
  plan: BandPlan,
  transmission: Transmission,
): { allowed: boolean; maxPower: PowerLimit | null } {
  const { frequencyHz, occupied = { belowHz: 0, aboveHz: 0 } } = transmission;
  const low = frequencyHz - occupied.belowHz;
  const high = frequencyHz + occupied.aboveHz;
  for (const band of plan.bands) {
    if (low < band.lowHz || high > band.highHz) continue;
    let reached = low;
    let maxPower: PowerLimit | null = null;
    for (const segment of band.segments) {
      const holds =
        segment.lowHz <= reached &&
        (reached < segment.highHz || (reached === segment.highHz && isTopEdge(band, segment)));
      if (!holds) continue;
      const grant = grantFor(segment, transmission);
      if (grant === null) return { allowed: false, maxPower: null };
      maxPower = lower(maxPower, grant.maxPower ?? segment.maxPower ?? null);
      if (high <= segment.highHz) return { allowed: true, maxPower };
      reached = segment.highHz;
    }
  }
  return { allowed: false, maxPower: null };
}

/** The top edge of a band, or of a channel with nothing adjoining, belongs to it. */
function isTopEdge(band: PlanBand, segment: PlanSegment): boolean {
  return !band.segments.some(({ lowHz }) => lowHz === segment.highHz);
}

function grantFor(
  segment: PlanSegment,
  { emission, bandwidthHz = 0, licenceClass }: Transmission,
): { maxPower?: PowerLimit } | null {
  if (!takesSignal(segment, licenceClass, { emission, bandwidthHz })) return null;
  if (segment.grants === undefined) return {};
  return grantsTo(segment, licenceClass).find((grant) => grantsEmission(grant, emission)) ?? null;
}

const lower = (a: PowerLimit | null, b: PowerLimit | null) => (a === null || (b !== null && b.watts < a.watts) ? b : a);

/**
 * What several plans have in common: the frequencies that each of them gives to amateurs.
 *
 * @param plans two or more plans; bands are matched by name
 */
export function commonPlan(plans: readonly BandPlan[], identity: Pick<BandPlan, "id" | "title" | "edition">): BandPlan {
  const [first, ...others] = plans as [BandPlan, ...BandPlan[]];
  const bands = first.bands.flatMap((band): PlanBand[] => {
    let segments = band.segments;
    for (const other of others) {
      const match = other.bands.find((candidate) => candidate.band === band.band);
      segments = match === undefined ? [] : intersect(segments, match.segments);
    }
    const low = segments[0];
    const high = segments.at(-1);
    return low === undefined || high === undefined
      ? []
      : [{ band: band.band, lowHz: low.lowHz, highHz: high.highHz, segments }];
  });
  return {
    ...identity,
    kind: "allocation",
    authority: first.authority,
    source: { title: `What ${plans.map(({ id }) => id).join(", ")} have in common` },
    confirmed: plans.every(({ confirmed }) => confirmed),
    notes: [],
    sources: plans
      .flatMap(({ sources }) => sources)
      .filter((source, i, all) => all.findIndex(({ id }) => id === source.id) === i),
    bands,
  };
}

function intersect(first: readonly PlanSegment[], second: readonly PlanSegment[]): PlanSegment[] {
  const shared: PlanSegment[] = [];
  for (const a of first) {
    for (const b of second) {
      const lowHz = Math.max(a.lowHz, b.lowHz);
      const highHz = Math.min(a.highHz, b.highHz);
      if (lowHz >= highHz) continue;
      const sources = [...new Set([...a.sources, ...b.sources])];
      shared.push({ lowHz, highHz, use: "allocation", confirmed: a.confirmed && b.confirmed, sources });
    }
  }
  return shared;
}
