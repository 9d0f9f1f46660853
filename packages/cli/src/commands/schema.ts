import { Argument, Command } from "commander";
import { jsonText } from "../present/json.js";

export function schemaCommand(): Command {
  return new Command("schema")
    .description("Prints the JSON Schema of a file that you can write, for an editor that checks it as you type.")
    .addArgument(new Argument("<station|plan>", "which file").choices(["station", "plan"]))
    .action(runSchema);
}

async function runSchema(what: "station" | "plan"): Promise<void> {
  const { jsonSchemaOf } = await import("@feedpoint/core/schema");
  process.stdout.write(`${jsonText([jsonSchemaOf(what)])}\n`);
}
