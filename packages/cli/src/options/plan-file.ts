import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type BandPlan, planIds } from "@feedpoint/core";
import { readJsonFile } from "./json-file.js";

/** A plan of one's own. @throws UsageError that names the file and the place in it */
export async function readPlanFile(name: string): Promise<BandPlan> {
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
