import type { BandPlan, PlanSegment } from "@feedpoint/core";
import { type Pair, sweepOfReflections } from "./sweeps.js";

type Segment = Pick<PlanSegment, "lowHz" | "highHz"> & Partial<PlanSegment>;

/** An invented plan of one band, 40m, with the segments given. */
export function inventedPlan(segments: readonly [Segment, ...Segment[]], classes: readonly string[] = []): BandPlan {
  const whole = segments.map((segment) => ({ use: "all", confirmed: true, sources: [], ...segment }));
  return {
    id: "invented",
    title: "Invented plan",
    kind: "licence-privileges",
    authority: "invented",
    edition: "invented",
    source: { title: "invented" },
    confirmed: true,
    ...(classes.length === 0 ? {} : { classes }),
    notes: [],
    sources: [],
    bands: [
      { band: "40m", lowHz: segments[0].lowHz, highHz: whole.at(-1)?.highHz ?? segments[0].highHz, segments: whole },
    ],
  };
}

/** An invented vector sweep whose ρ runs evenly from one value to another, without phase shift. */
export function rampSweep([firstHz, lastHz]: Pair, [firstRho, lastRho]: Pair, points = 101) {
  const shares = Array.from({ length: points }, (_, i) => i / (points - 1));
  return sweepOfReflections(
    shares.map((share) => firstHz + share * (lastHz - firstHz)),
    shares.map((share): Pair => [firstRho + share * (lastRho - firstRho), 0]),
  );
}
