import type { Command } from "commander";
import { withExamples } from "./examples.js";

/** Every command, in the order of the help. Their modules are loaded when they are asked for: most calls need one of them. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import("./commands/check.js")).checkCommand(),
  diff: async () => (await import("./commands/diff.js")).diffCommand(),
  grade: async () => (await import("./commands/grade.js")).gradeCommand(),
  trim: async () => (await import("./commands/trim.js")).trimCommand(),
  try: async () => (await import("./commands/try.js")).tryCommand(),
  line: async () => (await import("./commands/line.js")).lineCommand(),
  heard: async () => (await import("./commands/heard.js")).heardCommand(),
  report: async () => (await import("./commands/report.js")).reportCommand(),
  page: async () => (await import("./commands/page.js")).pageCommand(),
  chart: async () => (await import("./commands/chart.js")).chartCommand(),
  show: async () => (await import("./commands/show.js")).showCommand(),
  convert: async () => (await import("./commands/convert.js")).convertCommand(),
  log: async () => (await import("./commands/log.js")).logCommand(),
  plans: async () => (await import("./commands/plans.js")).plansCommand(),
  feedlines: async () => (await import("./commands/feedlines.js")).feedlinesCommand(),
  station: async () => (await import("./commands/station.js")).stationCommand(),
  schema: async () => (await import("./commands/schema.js")).schemaCommand(),
  completion: async () => (await import("./commands/completion.js")).completionCommand(() => commandsAsked([])),
};

/**
 * The commands that a call may be about: those that its first words name, or all of them where they name none, for the help
 * to list and for a slip of the keys to be told.
 */
export function commandsAsked(words: readonly string[]): Promise<readonly Command[]> {
  const named = Object.keys(COMMANDS).filter((name) => words.slice(0, 2).includes(name));
  const wanted = Object.entries(COMMANDS).filter(([name]) => named.length === 0 || named.includes(name));
  return Promise.all(wanted.map(async ([name, load]) => withExamples(name, await load())));
}
