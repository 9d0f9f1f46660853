import { type BandPlan, COMMON_PLAN_ID, planById, planIdNamed, planIds } from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";
import { UsageError } from "./usage-error.js";

/** A plan with what of it was asked for, all names checked. */
export interface ChosenPlan {
  readonly plan: BandPlan;
  readonly licenceClass: string | null;
  readonly bands?: readonly string[];
}

/** Names of a plan, or its file, of a class of it, and of bands. */
interface WantedPlan {
  readonly plan?: string | undefined;
  readonly class?: string | undefined;
  readonly bands?: readonly string[] | undefined;
}

/**
 * The plan, class and bands that were asked for.
 *
 * @param fromFile reads a plan of one's own
 * @throws UsageError for a name that is not known
 */
export async function choosePlan(
  wanted: WantedPlan,
  fromFile: (name: string) => Promise<BandPlan>,
): Promise<ChosenPlan> {
  const name = wanted.plan ?? COMMON_PLAN_ID;
  const plan = isPlanFile(name) && planById(name) === null ? await fromFile(name) : planNamed(name);
  const bands = wanted.bands?.map((name) => bandName(name, plan));
  return { plan, licenceClass: licenceClass(wanted.class, plan), ...(bands === undefined ? {} : { bands }) };
}

/** Whether the name of a plan is that of a file. */
export const isPlanFile = (name: string): boolean => /[/\\]|\.json$/i.test(name);

function planNamed(name: string): BandPlan {
  const known = planById(planIdNamed(name) ?? name);
  if (known !== null) return known;
  throw new UsageError(`There is no plan "${name}".${suggestion(name, planIds())} Plans: ${planIds().join(", ")}.`);
}

function licenceClass(name: string | undefined, plan: BandPlan): string | null {
  if (name === undefined) return null;
  if (plan.classes === undefined)
    throw new UsageError(
      `The plan ${plan.id} knows no licence classes. Leave out --class, or choose a plan that does (--plan us-part97).`,
    );
  const found = plan.classes.find((known) => known.toLowerCase() === name.toLowerCase());
  if (found === undefined)
    throw new UsageError(
      `There is no class "${name}" in ${plan.id}.${suggestion(name, plan.classes)} Classes: ${plan.classes.join(", ")}.`,
    );
  return found;
}

/** A name as it is compared: in lower case, without blanks. */
export const plainName = (text: string): string => text.toLowerCase().replace(/\s/g, "");

/** "40", "40m" and "40 m" are all the band "40m". */
export function bandName(name: string, plan: BandPlan): string {
  const wanted = plainName(name);
  const found = plan.bands.find(({ band }) => [wanted, `${wanted}m`].includes(plainName(band)));
  if (found === undefined) {
    throw new UsageError(
      `There is no band "${name}" in ${plan.id}. Bands: ${plan.bands.map(({ band }) => band).join(", ")}.`,
    );
  }
  return found.band;
}
