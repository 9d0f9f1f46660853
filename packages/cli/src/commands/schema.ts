import { jsonText } from "@feedpoint/answers/text/json";
import { Argument, Command } from "commander";

/** Files that a user can write. */
const FILES = ["station", "plan"] as const;
/** What commands print with --json. */
const RESULTS = ["check", "diff", "grade", "graded-sweep", "trim", "try", "line", "heard", "show"] as const;

type Described = (typeof FILES)[number] | (typeof RESULTS)[number];

export function schemaCommand(): Command {
  return new Command("schema")
    .description("Prints the JSON Schema of a file that you can write, or of what a command prints with --json.")
    .addArgument(
      new Argument("<what>", "station and plan are files; the others results").choices([...FILES, ...RESULTS]),
    )
    .action(runSchema);
}

async function runSchema(what: Described): Promise<void> {
  process.stdout.write(`${jsonText([await schemaOf(what)])}\n`);
}

async function schemaOf(what: Described): Promise<object> {
  if (what === "station" || what === "plan") return (await import("@feedpoint/core/schema")).jsonSchemaOf(what);
  return (await import("../schemas/results.js")).resultSchema(what);
}
