import { type Finding, finding } from "../../sweep/finding.js";
import type { BandPlan, PlanSegment, UsableBand } from "./band-plan.js";

/**
 * How much of a plan was read from a source. from-sources: all of it; partly-from-memory: most of it; mostly-from-memory: less
 * than most; from-memory: nothing.
 */
export type PlanCertainty = "from-sources" | "partly-from-memory" | "mostly-from-memory" | "from-memory";

const isRead = (segments: readonly PlanSegment[]) => segments.every(({ confirmed }) => confirmed);

/** How sure a plan is as a whole, by its segments and what it says of itself. */
export function planCertainty({ bands, confirmed }: BandPlan): PlanCertainty {
  const segments = bands.flatMap((band) => band.segments);
  if (isRead(segments)) return "from-sources";
  if (!segments.some((segment) => segment.confirmed)) return "from-memory";
  return confirmed ? "partly-from-memory" : "mostly-from-memory";
}

/**
 * What of a plan rests on memory. A plan that does so wholly or mostly gets one finding, whichever bands were judged; of
 * one that does in part, the judged bands concerned are named.
 */
export function memoryFindings(plan: BandPlan, judged: readonly UsableBand[]): readonly Finding[] {
  switch (planCertainty(plan)) {
    case "from-sources":
      return [];
    case "partly-from-memory":
      return judged
        .filter(({ segments }) => !isRead(segments))
        .map(({ band }) => finding("caution", "plan-from-memory", { extent: "band", bands: [band] }, { band }));
    case "mostly-from-memory": {
      const read = plan.bands.filter(({ segments }) => isRead(segments)).map(({ band }) => band);
      return [finding("caution", "plan-from-memory", { extent: "most", bands: read })];
    }
    case "from-memory":
      return [finding("caution", "plan-from-memory", { extent: "all", bands: [] })];
  }
}
