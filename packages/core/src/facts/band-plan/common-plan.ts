import type { BandPlan, PlanBand, PlanSegment } from "./band-plan.js";

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
