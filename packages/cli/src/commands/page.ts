import { readFileSync } from "node:fs";
import { join } from "node:path";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { printable } from "@feedpoint/answers/text/escape";
import { Command } from "commander";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";

/** Made by the build, beside the program. */
const PAGE = join(import.meta.dirname, "page.html");

export function pageCommand(): Command {
  const command = new Command("page").description(
    "Writes feedpoint as one HTML file, for a phone or whoever has no terminal: it works without a network and sends nothing.",
  );
  return withOptions(command, "page").action(runPage);
}

function runPage({ output, force = false }: RawOptions<"page">): void {
  if (output === undefined) throw new UsageError("Say where to write the page: -o feedpoint.html");
  if (!writeOutput(output, readFileSync(PAGE), force)) return;
  process.stderr.write(`feedpoint: wrote ${printable(output)}. Open it in a browser, here or on a phone.\n`);
}
