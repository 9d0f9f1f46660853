/** What JSON lets pass in silence and a file that is taken at its word must not hold. All data are invented. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseBandPlan, parseStation } from "@feedpoint/core/schema";
import { afterAll, describe, expect, test } from "vitest";
import { runCommand } from "../cli/run-command.js";

const folder = mkdtempSync(join(tmpdir(), "feedpoint-hidden-"));
const file = join(folder, "station.json");
const planFile = join(folder, "plan.json");
afterAll(() => rmSync(folder, { recursive: true }));

const towpath = readFileSync(new URL("../../samples/plans/towpath.json", import.meta.url), "utf8");
const SWEEP = "sweeps/2026-03-14-heron-lock-sloper.s1p";

function refusal(option: "--station" | "--plan", text: string): string {
  const place = option === "--plan" ? planFile : file;
  writeFileSync(place, text);
  const { stdout, stderr, exit } = runCommand(["check", SWEEP, option, place]);
  expect([stdout, exit]).toEqual(["", 2]);
  return stderr.replaceAll(place, "FILE");
}

describe("a key that stands twice", () => {
  test("is refused with both lines in a station file", () => {
    const text = '{\n  "radio": { "powerW": 100 },\n  "limits": { "swr": 2 },\n  "radio": { "powerW": 10 }\n}\n';
    expect(refusal("--station", text)).toBe(
      'feedpoint: FILE: "radio" stands in line 2 and again in line 4. Take one of them out.\n',
    );
  });

  test("is refused however deep it stands, and however it is written", () => {
    const text =
      '{"feedline": {"kind": "rg-58", "lengthM": 12,\n"loss": [{"frequencyHz": 7e6}],\n"\\u006bind": "rg-213"}}';
    expect(refusal("--station", text)).toContain('"kind" stands in line 1 and again in line 3.');
  });

  test("is refused in a band plan", () => {
    const text = towpath.replace('"id":', '"title": "another",\n  "id":');
    expect(refusal("--plan", text)).toMatch(/^feedpoint: FILE: "title" stands in line \d+ and again in line \d+\./);
  });

  test("is none where the braces are others, or where it is only text", () => {
    writeFileSync(
      file,
      '{"modes": {"cw": {"widthHz": 150}, "ssb": {"widthHz": 2700}}, "$comment": "\\"bands\\": [1], {", "bands": ["40m", "40m"]}',
    );
    expect(runCommand(["check", SWEEP, "--station", file]).stderr).toBe("");
  });
});

describe("a key __proto__", () => {
  test("is refused with its place in a station file", () => {
    const places = [
      ['{"wantedHz": {"40m": 7.1e6, "__proto__": 7e6}}', "wantedHz"],
      ['{"modes": {"__proto__": {}}}', "modes"],
      ['{"antenna": {"ratedPowerW": {"__proto__": 1}}}', "antenna.ratedPowerW"],
      ['{"feedline": {"loss": [{}, {"__proto__": 1}]}}', "feedline.loss[1]"],
      ['{"__proto__": {}}', "the file"],
    ] as const;
    for (const [text, place] of places)
      expect(() => parseStation(JSON.parse(text))).toThrow(`${place}: no key may be "__proto__"`);
    expect(refusal("--station", places[0][0])).toBe(
      'feedpoint: FILE is no station file: wantedHz: no key may be "__proto__"\n',
    );
  });

  test("is refused in a band plan", () => {
    const text = towpath.replace('"title":', '"__proto__": {}, "title":');
    expect(() => parseBandPlan(JSON.parse(text))).toThrow('no key may be "__proto__"');
  });
});

describe("a number too large to be held", () => {
  test("is refused with its place in a station file", () => {
    for (const [text, place] of [
      ['{"radio": {"powerW": 1e999}}', "radio.powerW"],
      ['{"antenna": {"gainDbi": -1e999}}', "antenna.gainDbi"],
      ['{"antenna": {"ratedPowerW": 1e999}}', "antenna.ratedPowerW"],
      ['{"wantedHz": {"40m": 1e999}}', "wantedHz.40m"],
    ] as const)
      expect(() => parseStation(JSON.parse(text))).toThrow(`${place}: the number is too large (more than 1.8e308)`);
  });

  test("is refused in a band plan", () => {
    const text = towpath.replace(/"highHz": \d+/, '"highHz": 1e999');
    expect(() => parseBandPlan(JSON.parse(text))).toThrow(/^bands\[0\]\S*highHz: the number is too large/);
  });
});
