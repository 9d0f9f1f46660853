/** The station file's schema, and the JSON Schemas that the command prints. All data are invented, but for the plans that come along. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BandPlan, planById, planIds } from "@feedpoint/core";
import { jsonSchemaOf, parseBandPlan, parseStation } from "@feedpoint/core/schema";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, describe, expect, test } from "vitest";
import { runCommand } from "../cli/run-command.js";
import { present } from "../support/sweeps.js";

const folder = mkdtempSync(join(tmpdir(), "feedpoint-station-"));
afterAll(() => rmSync(folder, { recursive: true }));

const file = join(folder, "station.json");
const init = runCommand(["station", "init", file]);
const startingPoint = () => JSON.parse(readFileSync(file, "utf8")) as Record<string, unknown>;

/** The message with which data are refused. */
function refusal(data: unknown): string {
  try {
    parseStation(data);
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error("it was not refused");
}

describe("station init", () => {
  test("writes a starting point that passes the schema and comes back unchanged", () => {
    expect(init).toMatchObject({ exit: 0, stdout: "" });
    expect(parseStation(startingPoint())).toEqual(startingPoint());
  });

  test("states nothing: what it says of every part stands apart, is valid, and is not read", () => {
    const { $comment: _, $examples: examples, ...others } = startingPoint() as { $comment: string; $examples: object };
    expect(others).toEqual({});
    expect(parseStation(examples)).toEqual(examples);
    const stated = Object.keys(examples);
    const known = Object.keys((jsonSchemaOf("station") as { properties: object }).properties);
    expect(stated.toSorted()).toEqual(known.filter((key) => !key.startsWith("$")).toSorted());
  });

  test("does not write over a file, but for --force", () => {
    const again = runCommand(["station", "init", file]);
    expect(again.exit).toBe(2);
    expect(again.stderr).toContain("--force");
    expect(runCommand(["station", "init", file, "--force"]).exit).toBe(0);
  });
});

describe("everything may be left out", () => {
  test("of the file", () => {
    expect(parseStation({})).toEqual({});
  });

  test.each(["licence", "limits", "radio", "antenna", "modes", "wantedHz"])("of %s", (key) => {
    expect(parseStation({ [key]: {} })).toEqual({ [key]: {} });
  });

  test.each([...Object.keys(startingPoint())])("the starting point without %s", (key) => {
    const { [key]: _, ...others } = startingPoint();
    expect(parseStation(others)).toEqual(others);
  });
});

describe("an unknown key is refused with its place and the nearest known one", () => {
  test.each([
    [{ limts: {} }, "the file", "limts", "limits"],
    [{ licence: { clas: "full" } }, "licence", "clas", "class"],
    [{ limits: { builtInTuner: 3 } }, "limits", "builtInTuner", "builtInTunerSwr"],
    [{ radio: { power: 100 } }, "radio", "power", "powerW"],
    [{ radio: { reduction: { fromSwr: 2, toSwr: 3, toW: 9, toSWRR: 3 } } }, "radio.reduction", "toSWRR", "toSwr"],
    [{ antenna: { gainDbd: 0 } }, "antenna", "gainDbd", "gainDbi"],
    [{ antenna: { ratedPowerW: { sbb: 100 } } }, "antenna.ratedPowerW", "sbb", "ssb"],
    [{ modes: { dat: {} } }, "modes", "dat", "data"],
    [{ modes: { cw: { width: 100 } } }, "modes.cw", "width", "widthHz"],
    [{ feedline: { kind: "rg-58", lengthM: 5, length: 5 } }, "feedline", "length", "lengthM"],
    [
      { feedline: { lengthM: 5, loss: [{ frequencyHz: 1e7, dbPer100M: 4, dbPer100m: 4 }] } },
      "feedline.loss[0]",
      "dbPer100m",
      "dbPer100M",
    ],
    [{ analyser: { directivityDb: 35, directivity: 35 } }, "analyser", "directivity", "directivityDb"],
  ])("%j", (data, place, key, nearest) => {
    expect(refusal(data)).toBe(`${place}: unknown key "${key}" (did you mean "${nearest}"?)`);
  });

  test("without a suggestion where none is near", () => {
    expect(refusal({ horoscope: 1 })).toBe('the file: unknown key "horoscope"');
  });

  test("all of them at once", () => {
    const message = refusal({ limts: {}, radoi: {}, radio: { power: 100 } });
    expect(message).toContain('"limts" (did you mean "limits"?)');
    expect(message).toContain('"radoi" (did you mean "radio"?)');
    expect(message).toContain('radio: unknown key "power"');
  });
});

describe("a wrong value is refused with its place", () => {
  test.each([
    [{ limits: { swr: 0.5 } }, "limits.swr: "],
    [{ radio: { tuner: "manual" } }, "radio.tuner: "],
    [{ radio: { powerW: "100" } }, "radio.powerW: "],
    [{ radio: { reduction: { fromSwr: 3, toSwr: 2, toW: 5 } } }, "radio.reduction: fromSwr must lie below toSwr"],
    [{ radio: { reduction: { fromSwr: 2 } } }, "radio.reduction.toSwr: "],
    [{ antenna: { ratedPowerW: -1 } }, "antenna.ratedPowerW: "],
    [{ modes: { cw: { dutyFactor: 40 } } }, "modes.cw.dutyFactor: "],
    [{ feedline: { kind: "rg-1", lengthM: 5 } }, "feedline.kind: "],
    [{ feedline: { lengthM: 5 } }, "feedline: a feedline needs its kind, or its loss"],
    [{ feedline: { kind: "rg-58" } }, "feedline.lengthM: "],
    [{ feedline: { kind: "rg-58", lengthM: 5, velocityFactor: 66 } }, "feedline.velocityFactor: "],
    [
      {
        feedline: {
          lengthM: 5,
          loss: [
            { frequencyHz: 2e7, dbPer100M: 4 },
            { frequencyHz: 1e7, dbPer100M: 3 },
          ],
        },
      },
      "feedline.loss: frequencies must ascend",
    ],
    [{ bands: [] }, "bands: "],
    [{ bands: ["40m", 20] }, "bands[1]: "],
    [{ wantedHz: { "40m": 0 } }, "wantedHz.40m: "],
    [{ analyser: {} }, "analyser.directivityDb: "],
    [[], "the file: "],
    [{ wantedHz: { "40m": 14_200_000 } }, "wantedHz.40m: 40m lies around 7.5 MHz, not at 14.200"],
    [
      { feedline: { lengthM: 5, loss: [{ frequencyHz: 7, dbPer100M: 4 }] } },
      "feedline.loss[0].frequencyHz: frequencies are in Hz",
    ],
  ])("%j", (data, start) => {
    expect(refusal(data).slice(0, start.length)).toBe(start);
  });

  test.each([
    [{ modes: ["cw"] }, "modes: expected settings in braces, { … }, got a list in brackets, [ … ]"],
    [{ bands: "40m" }, "bands: expected a list in brackets, [ … ], got text in quotes"],
    [{ bands: [] }, "bands: must not be empty"],
    [{ radio: { powerW: "100" } }, "radio.powerW: expected a number or settings in braces, { … }, got text in quotes"],
    [{ radio: { powerW: 0 } }, "radio.powerW: must be more than 0"],
    [{ limits: { swr: 0.5 } }, "limits.swr: must be 1 or more"],
    [{ antenna: { gainDbi: 60 } }, "antenna.gainDbi: must be 40 or less"],
    [{ antenna: { gainDbi: "x" } }, "antenna.gainDbi: expected a number, got text in quotes"],
    [null, "the file: expected settings in braces, { … }, got null"],
  ])("in plain words: %j", (data, message) => {
    expect(refusal(data)).toBe(message);
  });

  test("of many the first six are named", () => {
    const bands = Array.from({ length: 9 }, (_, i) => i);
    expect(refusal({ bands })).toMatch(/^bands\[0\].*bands\[5\][^;]*; and 3 more$/);
  });
});

test.each(["160m", "80m", "40m", "20m", "10m", "6m", "2m", "70cm"])("a dip wanted within %s is accepted", (name) => {
  const band = present(
    planById("itu-r1")?.bands.find((candidate) => candidate.band === name),
    name,
  );
  for (const hz of [band.lowHz, band.highHz]) expect(() => parseStation({ wantedHz: { [name]: hz } })).not.toThrow();
});

test.each([
  ["1.25m", 223_500_000],
  ["cb", 27_000_000],
  ["40 m", 7_100_000],
])("a plan may name its bands otherwise: %s", (name, hz) => {
  expect(() => parseStation({ wantedHz: { [name]: hz } })).not.toThrow();
});

test("a radio turned down below what it is reduced to is accepted", () => {
  const radio = { powerW: 10, reduction: { fromSwr: 1.5, toSwr: 3, toW: 25 } };
  expect(() => parseStation({ radio })).not.toThrow();
});

const readPlan = (id: string) => structuredClone(present(planById(id), id)) as BandPlan;

describe.each(["station", "plan"] as const)("feedpoint schema %s", (what) => {
  const { stdout, stderr, exit } = runCommand(["schema", what]);
  const schema = JSON.parse(stdout) as { $schema: string };
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
  const good: readonly unknown[] = what === "station" ? [startingPoint(), {}] : planIds().map(readPlan);

  test("prints what the library has, a valid schema of draft 2020-12", () => {
    expect({ stderr, exit }).toEqual({ stderr: "", exit: 0 });
    expect(schema).toEqual(jsonSchemaOf(what));
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });

  test("accepts what the command accepts", () => {
    const parse = what === "station" ? parseStation : parseBandPlan;
    for (const data of good) {
      expect(parse(data)).toEqual(data);
      expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    }
  });

  test("refuses a misspelt key at the top and further in", () => {
    for (const data of good) {
      expect(validate({ ...(data as object), bnads: [] })).toBe(false);
      expect(validate.errors?.[0]).toMatchObject({ keyword: "additionalProperties", instancePath: "" });
    }
    const inner =
      what === "station" ? { radio: { power: 100 } } : { ...readPlan("itu-r1"), source: { titel: "x", title: "x" } };
    expect(validate(inner)).toBe(false);
    expect(validate.errors?.[0]).toMatchObject({ keyword: "additionalProperties" });
  });
});
