/** What the commands print as JSON is what their schemas say, no less and no more. */
import { readdirSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { runCommand, runLines } from "./run-command.js";

type Schema = Readonly<Record<string, unknown>>;

/** The schema of a result, that of its fields and theirs, without room for others. */
function withoutOthers(schema: Schema): Schema {
  const inner = Object.fromEntries(
    Object.entries(schema).map(([key, value]) => [
      key,
      Array.isArray(value)
        ? value.map((entry: unknown) => (isSchema(entry) ? withoutOthers(entry) : entry))
        : isSchema(value)
          ? withoutOthers(value)
          : value,
    ]),
  );
  return "properties" in schema ? { ...inner, additionalProperties: false } : inner;
}

const isSchema = (value: unknown): value is Schema =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const schemaOf = (what: string) => JSON.parse(runCommand(["schema", what]).stdout) as Schema;
const sweeps = readdirSync(new URL("../../samples/sweeps", import.meta.url))
  .filter((name) => name !== "deployments.csv")
  .map((name) => `sweeps/${name}`);
const [first = "", second = ""] = sweeps;
const wet = "sweeps/2026-07-11-lantern-bridge-wet-feedline.csv";
const dry = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const everything = "--plan us-part97 --class general --modes cw,ssb --power 100 --feedline rg-58 --feedline-length 12";

const RUNS: readonly (readonly [what: string, ...runs: readonly string[]])[] = [
  [
    "check",
    `check ${sweeps.join(" ")}`,
    `check ${dry} ${everything} --at 14.074,ft8`,
    `check ${wet} --station stations/every-field.json`,
  ],
  [
    "diff",
    `diff ${first} ${second}`,
    `diff ${dry} ${wet} --plan itu-r1`,
    `diff --before ${dry} --after ${first} ${wet}`,
  ],
  [
    "grade",
    "grade sweeps --group-by counterpoise --over-time mooring --best 20m",
    "grade sweeps --plan us-part97 --bands 40m --no-log",
    'grade sweeps --plan itu-r1 --for "40m ft8, 20m ssb" --factors shape,counterpoise --over-time --station stations/canal-boat.json',
  ],
  ["graded-sweep", "grade sweeps --format ndjson", "grade sweeps --format ndjson --no-log --bands 2m"],
  ["trim", `trim ${second} --to 7.1 --wire-length 20`, `trim ${dry} --band 20m --feedline rg-58 --feedline-length 12`],
  [
    "try",
    `try ${dry} --want 40m,20m --feedline rg-58 --feedline-length 12 --have coils`,
    `try ${wet} --station stations/every-field.json`,
  ],
  ["heard", "heard reports/2026-09-05-gosling-lock-evening.csv reports/2026-09-06-gosling-lock-morning.adi"],
  [
    "line",
    "line lines/2026-07-11-lantern-bridge-wet-feedline-short.s1p --end short --kind rg-58",
    "line lines/2026-07-11-lantern-bridge-wet-feedline-short.s1p --end short",
  ],
  ["show", `show ${first}`, `show ${dry} --rows 3`],
];

const isStream = (line: string) => line.includes("ndjson");
const asTyped = (line: string) => (isStream(line) ? line : `${line} --json`);
const outcomes = runLines(RUNS.flatMap(([, ...runs]) => runs.map(asTyped)));
const printed = (line: string) => outcomes.get(asTyped(line))?.stdout ?? "";

describe.each(RUNS)("feedpoint schema %s", (what, ...runs) => {
  const schema = schemaOf(what);
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(withoutOthers(schema));

  test.each(runs)("is what feedpoint %s prints", (line) => {
    const results = isStream(line)
      ? printed(line)
          .trim()
          .split("\n")
          .map((text): unknown => JSON.parse(text))
      : [JSON.parse(printed(line)) as unknown].flat();
    expect(results.length).toBeGreaterThan(0);
    for (const result of results) expect(validate(result), JSON.stringify(validate.errors)).toBe(true);
  });

  test("leaves room for what later versions add, and for nothing of another form", () => {
    const open = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
    const [line = ""] = runs;
    const [result] = [
      JSON.parse(isStream(line) ? (printed(line).split("\n")[0] ?? "") : printed(line)) as Schema,
    ].flat();
    expect(open({ ...result, added: 1 })).toBe(true);
    expect(open({ ...result, schema: "feedpoint/other@1" })).toBe(false);
    expect(open({ ...result, sweep: 1, bands: 1, sweeps: 1, rows: 1, comparisons: 1 })).toBe(false);
  });
});
