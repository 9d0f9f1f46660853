import { jsonText } from "@feedpoint/answers/text/json";
import { type TableColumn, textTable, wrap } from "@feedpoint/answers/text/table";
import { fixed } from "@feedpoint/answers/text/units";
import { FEEDLINE_KINDS, feedlineFrom, matchedLossDb } from "@feedpoint/core";
import { Command } from "commander";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom } from "../options/settings.js";

export function feedlinesCommand(): Command {
  const command = new Command("feedlines").description("Lists the kinds of feedline that are known, with their loss.");
  return withOptions(command, "feedlines").action(runFeedlines);
}

/** Where the loss is shown, MHz. */
const SHOWN_MHZ = [3.5, 7, 14, 28, 50];

function runFeedlines(raw: RawOptions<"feedlines">): void {
  const { format, width } = outputFrom(raw);
  process.stdout.write(`${format === "json" ? jsonText(FEEDLINE_KINDS, true) : feedlinesText(width)}\n`);
}

function feedlinesText(width: number): string {
  const columns: readonly TableColumn[] = [
    { title: "Kind" },
    { title: "What it is", spare: 1 },
    { title: "Ω", align: "right" },
    { title: "velocity", align: "right" },
    ...SHOWN_MHZ.map((megahertz): TableColumn => ({ title: `${megahertz} MHz`, align: "right" })),
    { title: "Loss is", spare: 2 },
    { title: "Source", spare: 3 },
  ];
  const rows = FEEDLINE_KINDS.map((kind) => [
    kind.id,
    kind.title,
    String(kind.characteristicOhms),
    String(kind.velocityFactor),
    ...SHOWN_MHZ.map((megahertz) =>
      fixed(matchedLossDb(feedlineFrom({ kind: kind.id, lengthM: 100 }), megahertz * 1e6), 2),
    ),
    kind.lossIs === "typical" ? "typical" : "at least",
    kind.source,
  ]);
  return [
    "Matched loss, dB per 100 m:",
    textTable(columns, rows, { width }),
    "",
    wrap(
      "Cables of one kind differ by 20 % and more between makers; state your own line's loss in a station file where you know it. Balanced lines: dry copper in air, the least that they lose.",
      width,
    ),
  ].join("\n");
}
