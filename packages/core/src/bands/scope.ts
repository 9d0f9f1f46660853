import type { BandPlan, UsableBand } from "../facts/band-plan/band-plan.js";
import { memoryFindings, type PlanCertainty, planCertainty } from "../facts/band-plan/certainty.js";
import { COMMON_PLAN_ID } from "../facts/band-plan/plans.js";
import { isPowerUnconfirmed, usableBands } from "../facts/band-plan/privileges.js";
import type { Limits } from "../facts/limits.js";
import type { Mode } from "../facts/modes.js";
import { type Finding, finding } from "../sweep/finding.js";
import type { FindingParams } from "../sweep/finding-words/words.js";

/** What every analysis of a sweep is held against. */
export interface Scope {
  /** The band plan, such as {@link planById} gives */
  readonly plan: BandPlan;
  /** One of the classes of the plan; null or absent: the whole of each band, whatever the class */
  readonly licenceClass?: string | null;
  /** Names of the bands wanted, as the plan has them: "40m"; all of the plan where absent */
  readonly bands?: readonly string[];
  /** Only where one of these may be sent, which {@link modeOf} makes; wherever anything may be sent where absent */
  readonly modes?: readonly Mode[];
  /** Up to which SWR one can transmit, and by what means; what is left out is {@link DEFAULT_LIMITS} */
  readonly limits?: Partial<Limits>;
}

/** What identifies a plan in a result. */
export interface PlanInfo extends Pick<BandPlan, "id" | "title" | "edition" | "source"> {
  /** The class that was judged for; null: any */
  readonly licenceClass: string | null;
  /** How much of it was read from a source */
  readonly certainty: PlanCertainty;
}

/** What identifies the plan of a scope. Every result of a job carries it. */
export function planInfo({ plan, licenceClass = null }: Scope): PlanInfo {
  const { id, title, edition, source } = plan;
  return { id, title, edition, source, licenceClass, certainty: planCertainty(plan) };
}

/** The bands of a plan that were asked for, in the plan's order. */
export function selectBands({ plan, licenceClass = null, bands, modes }: Scope): readonly UsableBand[] {
  const all = usableBands(plan, licenceClass, modes ?? null);
  return bands === undefined ? all : all.filter(({ band }) => bands.includes(band));
}

/**
 * Bands in which nothing of what was asked for may be sent: each that was named, or all together that were swept.
 *
 * @param isSwept whether anything was swept between two frequencies
 */
export function closedBands(
  options: Scope,
  open: readonly UsableBand[],
  isSwept: (lowHz: number, highHz: number) => boolean,
): readonly Finding[] {
  const { bands, plan } = options;
  const isOpen = (name: string) => open.some(({ band }) => band === name);
  if (bands !== undefined) {
    return bands
      .filter((name) => !isOpen(name))
      .map((band) => finding("problem", "band-not-permitted", closedOn(options, [band]), { band }));
  }
  const closed = plan.bands.filter(({ band, lowHz, highHz }) => !isOpen(band) && isSwept(lowHz, highHz));
  const names = closed.map(({ band }) => band);
  return names.length === 0 ? [] : [finding("info", "bands-closed", closedOn(options, names))];
}

/** Bands on which nothing of what was asked for may be sent, and what that was. */
export const closedOn = (
  { licenceClass = null, modes = [] }: Scope,
  bands: readonly string[],
): FindingParams<"bands-closed"> => ({ bands, licenceClass, modes: modes.map(({ name }) => name) });

/** What the choice of plan and class leaves open. */
export function planFindings({ plan, licenceClass = null }: Scope, judged: readonly UsableBand[]): readonly Finding[] {
  const findings: Finding[] = [];
  if (plan.id === COMMON_PLAN_ID) {
    findings.push(finding("info", "plan-common", {}));
  }
  if (plan.kind === "band-plan") {
    findings.push(finding("info", "plan-voluntary", {}));
  }
  if (plan.classes !== undefined && licenceClass === null) {
    findings.push(finding("caution", "class-not-stated", { classes: plan.classes }));
  }
  const weak = judged
    .filter(({ segments }) => segments.some((segment) => isPowerUnconfirmed(segment, licenceClass)))
    .map(({ band }) => band);
  if (weak.length > 0) findings.push(finding("caution", "plan-power-weak", { bands: weak }));
  return [...findings, ...memoryFindings(plan, judged), ...judged.flatMap(somewhereFindings)];
}

/** What holds on a band in some places only, each told once. */
function somewhereFindings({ band, segments }: UsableBand): readonly Finding[] {
  const said = new Set(segments.flatMap(({ somewhereLess }) => somewhereLess ?? []));
  return [...said].map((what) => finding("caution", "plan-somewhere-less", { band, what }, { band }));
}
