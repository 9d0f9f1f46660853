import { choosePlan } from "@feedpoint/answers/asked/find-plan";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { jsonText } from "@feedpoint/answers/text/json";
import { activityText, planListText, planText } from "@feedpoint/answers/text/plans";
import { ACTIVITIES, ACTIVITY_SOURCES, type BandPlan, planById, planIds } from "@feedpoint/core";
import { Command } from "commander";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { readPlanFile } from "../options/plan-file.js";
import { outputFrom } from "../options/settings.js";

type RawPlansOptions = RawOptions<"plans">;

export function plansCommand(): Command {
  const command = new Command("plans")
    .description("Lists the band plans, or prints one: its segments, what may be sent there and with what power.")
    .argument("[plan]", "name of a plan, or a file such as ./mine.json");
  return withOptions(command, "plans").action(runPlans);
}

async function runPlans(name: string | undefined, raw: RawPlansOptions): Promise<void> {
  if (raw.activity) return runActivity(name, raw);
  const { format, width } = outputFrom(raw);
  if (name === undefined) {
    const plans = planIds().flatMap((id): BandPlan[] => {
      const plan = planById(id);
      return plan === null ? [] : [plan];
    });
    process.stdout.write(`${format === "json" ? jsonText(plans, true) : planListText(plans, width)}\n`);
    return;
  }
  const { plan, licenceClass, bands } = await choosePlan({ ...raw, plan: name }, readPlanFile);
  process.stdout.write(`${format === "json" ? jsonText([plan]) : planText(plan, licenceClass, bands, width)}\n`);
}

async function runActivity(name: string | undefined, raw: RawPlansOptions): Promise<void> {
  if (name !== undefined || raw.class !== undefined) {
    throw new UsageError("--activity belongs to no plan or class: leave out the plan's name and --class.");
  }
  const { format, width } = outputFrom(raw);
  const { bands } = await choosePlan(raw, readPlanFile);
  const activities = ACTIVITIES.filter(({ band }) => bands === undefined || bands.includes(band));
  const named = new Set(activities.flatMap(({ sources }) => sources));
  const sources = ACTIVITY_SOURCES.filter(({ id }) => named.has(id));
  process.stdout.write(
    `${format === "json" ? jsonText([{ sources, activities }]) : activityText(activities, width)}\n`,
  );
}
