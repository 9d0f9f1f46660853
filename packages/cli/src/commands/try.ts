import { advisedBy } from "@feedpoint/answers/judged/advising";
import { tryCsv, tryMarkdown, tryText } from "@feedpoint/answers/text/try";
import { Command } from "commander";
import { askedAdvice } from "../options/asked-advice.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { settingsFrom } from "../options/settings.js";
import { printOne } from "../print-one.js";
import { onlyDeploymentFrom } from "../read-deployments.js";

export function tryCommand(): Command {
  const command = new Command("try")
    .description(
      "Says what to try next: wire, line, transformer, coil, capacitor, stub or network, and what to measure.",
    )
    .argument(
      "<file...>",
      "sweep: Touchstone or delimited text (- is standard input), or a folder that is one deployment",
    );
  return withOptions(command, "try").action(runTry);
}

async function runTry(files: readonly string[], raw: RawOptions<"try">): Promise<void> {
  const settings = await settingsFrom(raw);
  const deployment = await onlyDeploymentFrom(files, settings, raw);
  printOne(advisedBy(settings, deployment, askedAdvice(raw)), settings, {
    csv: tryCsv,
    markdown: tryMarkdown,
    text: tryText,
  });
}
