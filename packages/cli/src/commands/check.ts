import { checkedBy } from "@feedpoint/answers/judged/checking";
import { type CheckTextOptions, checkCsv, checkMarkdown, checkText } from "@feedpoint/answers/text/check";
import { printable } from "@feedpoint/answers/text/escape";
import { jsonText, ndjsonText } from "@feedpoint/answers/text/json";
import { codesOf, problemsIn, talkOf } from "@feedpoint/answers/words/severity";
import type { CheckResult, Verdict } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT } from "../exit.js";
import { withOptions } from "../options/declare.js";
import type { OPTIONS, RawOptions } from "../options/options.js";
import { screenFrom } from "../options/screen.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { checkCharts } from "../present/chart/charts.js";
import { deploymentsFrom } from "../read-deployments.js";

type Requirement = (typeof OPTIONS.checkRequire.choices)[number];

const MEETS: Readonly<Record<Requirement, readonly Verdict[]>> = { pass: ["pass"], partial: ["pass", "partial"] };

export function checkCommand(): Command {
  const command = new Command("check")
    .description("Says for each band whether, where and with what tuner the antenna can be used.")
    .argument("<file...>", "sweeps: Touchstone or delimited text (- is standard input), or folders of them");
  return withOptions(command, "check").action(runCheck);
}

async function runCheck(files: readonly string[], raw: RawOptions<"check">): Promise<void> {
  const settings = await settingsFrom(raw);
  const screen = screenFrom(raw, settings);
  const { deployments, unreadable } = await deploymentsFrom(files, settings, raw);
  for (const { reason } of unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  const checked = deployments.map((deployment) => ({ deployment, result: checkedBy(settings, deployment, raw.at) }));
  const results = checked.map(({ result }) => result);
  const tuner = settings.equipment.radio?.tuner ?? "none";
  const charts =
    screen === null ? [] : checked.map(({ deployment, result }) => checkCharts(deployment, result, screen));
  if (results.length > 0)
    process.stdout.write(
      `${render(results, settings, { areSeveral: (files.length > 1 && raw.together !== true) || results.length > 1, withSegments: raw.segments === true, tuner, charts })}\n`,
    );
  if (settings.format === "csv") {
    for (const { sweep, findings } of results)
      process.stderr.write(talkOf(sweep.label, [...sweep.findings, ...findings]));
  }
  const { require } = raw;
  if (unreadable.length > 0) process.exitCode = EXIT.input;
  else if (require !== undefined) {
    const missed = results.flatMap((result) => missing(result, require, settings));
    if (missed.length === 0) return;
    process.stderr.write(`feedpoint: required ${require}; not reached: ${missed.join(", ")}\n`);
    process.exitCode = EXIT.required;
  }
}

function render(
  results: readonly CheckResult[],
  settings: Settings,
  { areSeveral, ...shown }: { areSeveral: boolean } & Pick<CheckTextOptions, "withSegments" | "tuner" | "charts">,
): string {
  switch (settings.format) {
    case "json":
      return jsonText(results, areSeveral);
    case "ndjson":
      return ndjsonText(results);
    case "csv":
      return checkCsv(results);
    case "markdown":
      return results.map((result) => checkMarkdown(result, shown.tuner)).join("\n\n");
    case "table":
      return checkText(results, { ...settings, ...shown });
  }
}

/** The bands that do not reach what was required: of those named, or else of those swept. */
function missing({ bands, sweep, findings }: CheckResult, requirement: Requirement, settings: Settings): string[] {
  const problems = codesOf(problemsIn([...sweep.findings, ...findings]));
  if (problems !== "") return [`${printable(sweep.label)}: ${problems}`];
  const concerned = settings.bands === undefined ? bands.filter(({ verdict }) => verdict !== "not-swept") : bands;
  if (concerned.length === 0) return [`${printable(sweep.label)}: no band`];
  return concerned
    .filter(({ verdict }) => !MEETS[requirement].includes(verdict))
    .map(({ band, verdict }) => `${band} ${verdict}`);
}
