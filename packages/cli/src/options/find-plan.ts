import { type BandPlan, COMMON_PLAN_ID, planById, planIdNamed, planIds } from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";
import { UsageError } from "../exit.js";
import { readJsonFile } from "./json-file.js";

/** A plan with what of it was asked for, all names checked. */
export interface ChosenPlan {
  readonly plan: BandPlan;
  readonly licenceClass: string | null;
  readonly bands?: readonly string[];
}

/** The plan, class and bands that were asked for. @throws UsageError for a name that is not known */
export async function choosePlan(wanted: {
  readonly plan?: string | undefined;
  readonly class?: string | undefined;
  readonly bands?: readonly string[] | undefined;
}): Promise<ChosenPlan> {
  const plan = await findPlan(wanted.plan ?? COMMON_PLAN_ID);
  const bands = wanted.bands?.map((name) => bandName(name, plan));
  return { plan, licenceClass: licenceClass(wanted.class, plan), ...(bands === undefined ? {} : { bands }) };
}

/** Whether the name of a plan is that of a file. */
export const isPlanFile = (name: string): boolean => /[/\\]|\.json$/i.test(name);

/** The plan of a name, or from a file. */
async function findPlan(name: string): Promise<BandPlan> {
  const known = planById(planIdNamed(name) ?? name);
  if (known !== null) return known;
  if (!isPlanFile(name))
    throw new UsageError(`There is no plan "${name}".${suggestion(name, planIds())} Plans: ${planIds().join(", ")}.`);
  const data = readJsonFile(name);
  const { parseBandPlan } = await import("@feedpoint/core/schema");
  try {
    const plan = parseBandPlan(data);
    if (planIds().includes(plan.id)) throw new Error(`id: "${plan.id}" is the name of a plan that comes along`);
    return plan;
  } catch (error) {
    throw new UsageError(`${name} is no band plan: ${(error as Error).message}`);
  }
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
