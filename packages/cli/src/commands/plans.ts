import { type BandPlan, planById, planIds } from "@feedpoint/core";
import { Command } from "commander";
import { listOf } from "../options/arguments.js";
import { addFormatOptions } from "../options/declare.js";
import { choosePlan } from "../options/find-plan.js";
import type { Format } from "../options/raw-options.js";
import { outputFrom } from "../options/settings.js";
import { jsonText } from "../present/json.js";
import { planListText, planText } from "../present/plans.js";

interface RawPlansOptions {
  readonly class?: string;
  readonly bands?: readonly string[];
  readonly format?: Format;
  readonly json?: boolean;
}

export function plansCommand(): Command {
  const command = new Command("plans")
    .description("Lists the band plans, or prints one: its segments, what may be sent there and with what power.")
    .argument("[plan]", "name of a plan, or a file such as ./mine.json")
    .option("--class <class>", "only what this licence class may use")
    .option("--bands <list>", "only these bands, such as 40m,20m", listOf);
  return addFormatOptions(command, ["table", "json"]).action(runPlans);
}

async function runPlans(name: string | undefined, raw: RawPlansOptions): Promise<void> {
  const { format, width } = outputFrom(raw);
  if (name === undefined) {
    const plans = planIds().flatMap((id): BandPlan[] => {
      const plan = planById(id);
      return plan === null ? [] : [plan];
    });
    process.stdout.write(`${format === "json" ? jsonText(plans, true) : planListText(plans, width)}\n`);
    return;
  }
  const { plan, licenceClass, bands } = await choosePlan({ ...raw, plan: name });
  process.stdout.write(`${format === "json" ? jsonText([plan]) : planText(plan, licenceClass, bands, width)}\n`);
}
