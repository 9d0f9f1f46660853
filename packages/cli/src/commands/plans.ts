import { planById, planIds } from "@feedpoint/core";
import { Command } from "commander";
import { textTable } from "../present/table.js";

export function plansCommand(): Command {
  return new Command("plans").description("Lists the band plans that come with feedpoint.").action(() => {
    const rows = planIds().flatMap((id) => {
      const plan = planById(id);
      if (plan === null) return [];
      const isConfirmed = plan.bands.every(({ segments }) => segments.every(({ confirmed }) => confirmed));
      return [[id, plan.title, plan.edition, isConfirmed ? "from sources" : "partly from memory"]];
    });
    process.stdout.write(
      `${textTable([{ title: "Plan" }, { title: "Title" }, { title: "Edition" }, { title: "Confirmed" }], rows)}\n`,
    );
  });
}
