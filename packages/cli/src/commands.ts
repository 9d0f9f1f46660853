import type { Command } from "commander";
import { examplesText } from "./present/help.js";

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

/** What to begin with, at the end of each command's help. */
const EXAMPLES: Readonly<Record<string, readonly string[]>> = {
  check: [
    "check sweep.s1p --plan itu-r1 --bands 40m,20m",
    "check sweep.s1p --plan us-part97 --class general --modes cw,ssb --power 100 --tuner built-in",
    "check sweep.s1p --at 14.074,ft8 --chart",
  ],
  diff: [
    "diff before.s1p after.s1p --plan itu-r1",
    "diff --before before.s1p sweep.s1p --after after.s1p",
    'diff sweeps --before-where "counterpoise=4 m on deck" --after-where "counterpoise=4 m in water"',
  ],
  grade: [
    "grade sweeps --plan itu-r1 --bands 40m,20m --sort 40m",
    "grade sweeps --group-by counterpoise --best 20m --over-time mooring",
    "grade sweeps --format ndjson --shard 1/2",
  ],
  trim: ["trim sweep.s1p --to 7.1 --wire-length 20", "trim sweep.s1p --band 40m --feedline rg-58 --feedline-length 12"],
  try: [
    "try sweep.s1p --want 40m,20m --wire-length 20",
    'try sweep.s1p --want "40m ft8,20m" --feedline rg-58 --feedline-length 12 --have "rg-6:5,9:1,coils,capacitors"',
  ],
  line: ["line line.s1p --end short --kind rg-58"],
  heard: ["heard reports.csv --log deployments.csv", "heard log.adi --compare sloper,vee --bands 20m"],
  report: [
    "report sweep.s1p --plan itu-r1 -o report.html",
    "report --before before.s1p --after after.s1p -o change.html",
    "report sweeps --best 20m -o season.html",
  ],
  page: ["page -o feedpoint.html"],
  chart: ["chart sweep.s1p --bands 40m -o swr.svg", "chart sweep.s1p --what smith -o smith.svg"],
  show: ["show sweep.s1p --rows 3"],
  convert: ["convert sweep.s1p --to csv"],
  log: ["log init sweeps", "log update sweeps"],
  plans: ["plans", "plans us-part97 --class general --bands 40m", "plans --activity"],
  feedlines: ["feedlines"],
  station: ["station init"],
  schema: ["schema station", "schema check"],
  completion: ["completion bash"],
};

/**
 * The commands that a call may be about: those that its first words name, or all of them where they name none, for the help
 * to list and for a slip of the keys to be told.
 */
export function commandsAsked(words: readonly string[]): Promise<readonly Command[]> {
  const named = Object.keys(COMMANDS).filter((name) => words.slice(0, 2).includes(name));
  const wanted = Object.entries(COMMANDS).filter(([name]) => named.length === 0 || named.includes(name));
  return Promise.all(
    wanted.map(async ([name, load]) => {
      const examples = EXAMPLES[name] ?? [];
      return (await load()).addHelpText("after", () => `\n${examplesText(examples)}`);
    }),
  );
}
