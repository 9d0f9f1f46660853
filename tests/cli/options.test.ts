/** Each option is one record: what is declared, settled, completed and listed in the guide follows from it. */
import { readFileSync, writeFileSync } from "node:fs";
import { jsonSchemaOf } from "@feedpoint/core/schema";
import { Command, Option } from "commander";
import { describe, expect, test } from "vitest";
import { withOptions } from "../../packages/cli/src/options/declare.js";
import type { CommandName, OptionRecord } from "../../packages/cli/src/options/option.js";
import { OPTIONS, stated } from "../../packages/cli/src/options/options.js";

const records = Object.values<OptionRecord>(OPTIONS);
const page = new URL("../../packages/cli/guide/options.md", import.meta.url);

const HEAD = `# Options

Every option, the commands that take it, and the key of the [station file](station-file.md) that states the same. What is typed
goes before what the station file says. \`feedpoint <command> --help\` lists the options of one command.

`;

const cell = (text: string) => text.replaceAll("|", "\\|");

function rowOf({ flags, help, of, choices, negated, station }: OptionRecord): readonly string[] {
  const values = choices === undefined ? "" : `: ${choices.join(", ")}`;
  const without = negated === undefined ? "" : `; \`--no-${longOf(flags)}\`: ${negated}`;
  const key = station === undefined ? "" : `\`${station.key}\``;
  return [`\`${cell(flags)}\``, cell(help + values + without), of.join(", "), key];
}

/** Rows of a table in Markdown, its columns as wide as the formatter makes them. */
function tableOf(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]?.map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0))) ?? [];
  const lines = rows.map((row) => `| ${row.map((text, c) => text.padEnd(widths[c] ?? 0)).join(" | ")} |`);
  return [lines[0], `| ${widths.map((width) => "-".repeat(width)).join(" | ")} |`, ...lines.slice(1)].join("\n");
}

const longOf = (flags: string) => /--([a-z-]+)/.exec(flags)?.[1] ?? "";

const guidePage = `${HEAD}${tableOf([["option", "what", "commands", "station file"], ...records.map(rowOf)])}\n`;

test("the guide lists every option as its record says", () => {
  if (process.env.UPDATE_CASES) writeFileSync(page, guidePage);
  expect(readFileSync(page, "utf8")).toBe(guidePage);
});

describe.each(records)("$flags of $of", ({ name, flags, of, station }) => {
  test("is handed over under its name", () => {
    expect(new Option(flags).attributeName()).toBe(name);
  });

  test("is one of its kind in each of its commands", () => {
    for (const command of of) {
      expect(records.filter((other) => other.name === name && other.of.includes(command))).toHaveLength(1);
    }
  });

  test("states what the station file knows", () => {
    let schema = jsonSchemaOf("station") as { properties?: Record<string, object> };
    for (const key of station?.key.split(".") ?? []) {
      expect(schema.properties).toHaveProperty(key);
      schema = schema.properties?.[key] ?? {};
    }
  });
});

test.each(["check", "diff", "grade", "report", "line"] as const)("%s declares its own and no others", (name) => {
  const declared = withOptions(new Command(name), name).options.map(({ long }) => long);
  const own = records.filter(({ of }) => of.includes(name as CommandName)).map(({ flags }) => `--${longOf(flags)}`);
  expect(new Set(declared.filter((long) => !long?.startsWith("--no-")))).toEqual(new Set(own));
});

test("what is typed goes before what the station file says", () => {
  const station = { limits: { swr: 1.5 } };
  expect(stated(OPTIONS.limit, 3, station)).toBe(3);
  expect(stated(OPTIONS.limit, undefined, station)).toBe(1.5);
  expect(stated(OPTIONS.limit, undefined, {})).toBeUndefined();
});
