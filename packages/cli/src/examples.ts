import type { Command } from "commander";
import { examplesText } from "./present/help.js";

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

/** A command with its examples at the end of its help. */
export const withExamples = (name: string, command: Command): Command =>
  command.addHelpText("after", () => `\n${examplesText(EXAMPLES[name] ?? [])}`);
