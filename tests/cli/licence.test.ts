/** Licence privileges through the command: see support/us-privileges.ts for the sources of the table. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { CheckResult } from "@feedpoint/core";
import { afterAll, describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";
import { PRIVILEGES } from "../support/us-privileges.js";
import { runCommand } from "./run-command.js";

const SWEEP = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const folder = mkdtempSync(join(tmpdir(), "feedpoint-licence-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** A station file for voice that takes up a width. */
function stationOfWidth(widthHz: number): string {
  const file = join(folder, `${widthHz}.json`);
  writeFileSync(file, JSON.stringify({ modes: { usb: { widthHz }, lsb: { widthHz } } }));
  return file;
}

// NCVEC question pool of the Extra class.
const EDGES_OF_WIDTH = [
  ["E1A03: the highest carrier of 2.8 kHz of data in the upper sideband", "data", 14.1472, 2800, true],
  ["E1A03: one hertz more", "data", 14.147201, 2800, false],
  ["E1A04: 3 kHz of lower sideband below 3601 kHz", "lsb", 3.601, 3000, false],
  ["E1A04: the same from 3603 kHz", "lsb", 3.603, 3000, true],
  ["E1A01: 3 kHz of upper sideband above 14348 kHz", "usb", 14.348, 3000, false],
  ["E1A01: the same from 14347 kHz", "usb", 14.347, 3000, true],
] as const;

// 47 CFR 97.303(h): the suppressed carrier 1.5 kHz below the centre of the channel.
const CHANNEL_DIALS = [5.3305, 5.3465, 5.3715, 5.4035];
const BESIDE_CHANNEL = 0.0005;
const LAST_OF_20M = { within: 14.3472, beyond: 14.348 };

/** All frequencies that are looked at, asked for at once: a command for each of them would be a start of Node each. */
const DIALS = [
  ...PRIVILEGES.map(({ kilohertz }) => kilohertz / 1000),
  ...EDGES_OF_WIDTH.map(([, , megahertz]) => megahertz),
  ...CHANNEL_DIALS.flatMap((megahertz) => [megahertz, megahertz + BESIDE_CHANNEL]),
  ...Object.values(LAST_OF_20M),
].map((megahertz) => megahertz.toFixed(6));

const asked = new Map<string, CheckResult["dials"]>();
function dial(licenceClass: string, mode: string, megahertz: number, more: readonly string[] = []) {
  const options = ["--plan", "us-part97", "--class", licenceClass, "--modes", mode, "--at", DIALS.join(",")];
  const line = ["check", SWEEP, ...options, "--json", ...more];
  let dials = asked.get(line.join(" "));
  if (dials === undefined) {
    const { stdout, stderr, exit } = runCommand(line);
    expect(stderr).toBe("");
    expect(exit).toBe(0);
    dials = (JSON.parse(stdout) as CheckResult).dials;
    asked.set(line.join(" "), dials);
  }
  return present(dials[DIALS.indexOf(megahertz.toFixed(6))], "dial");
}

describe("check --at", () => {
  test.each(PRIVILEGES)("$licenceClass, $emission on $kilohertz kHz: $allowed ($source)", (row) => {
    const { kilohertz, emission, licenceClass, allowed, maxPower, occupied } = row;
    const result =
      occupied === undefined
        ? dial(licenceClass, emission, kilohertz / 1000)
        : dial(licenceClass, "usb", kilohertz / 1000, ["--station", stationOfWidth(occupied.aboveHz)]);
    expect(result.isPermitted).toBe(allowed);
    if (maxPower !== null) expect(result.licenceLimits).toEqual([maxPower]);
  });

  test.each(EDGES_OF_WIDTH)("%s", (_, mode, megahertz, widthHz, isPermitted) => {
    expect(dial("extra", mode, megahertz, ["--station", stationOfWidth(widthHz)]).isPermitted).toBe(isPermitted);
  });

  test.each(CHANNEL_DIALS)("voice on the 60 m channel with dial %d MHz is permitted", (megahertz) => {
    expect(dial("general", "ssb", megahertz).isPermitted).toBe(true);
    expect(dial("general", "ssb", megahertz + BESIDE_CHANNEL).isPermitted).toBe(false);
  });

  test("2.8 kHz of voice, as it is taken where nobody states its width, run out of the band above 14347.2 kHz", () => {
    expect(dial("extra", "ssb", LAST_OF_20M.within).isPermitted).toBe(true);
    expect(dial("extra", "ssb", LAST_OF_20M.beyond).isPermitted).toBe(false);
  });
});

test("Technician, General and Extra get different, right answers for the same sweep", () => {
  const piecesFor = (licenceClass: string, mode: string) => {
    const options = ["--plan", "us-part97", "--class", licenceClass, "--modes", mode, "--bands", "40m,20m,10m"];
    const { stdout } = runCommand(["check", SWEEP, ...options, "--json"]);
    return (JSON.parse(stdout) as CheckResult).bands.map(({ band, pieces }) => [
      band,
      ...pieces.map(({ lowHz, highHz }) => [lowHz / 1000, highHz / 1000]),
    ]);
  };
  // 47 CFR 97.301(b), (d), (e), 97.305(c), 97.307(f)(9) and (10).
  expect(piecesFor("technician", "ssb")).toEqual([["10m", [28300, 28500]]]);
  expect(piecesFor("general", "ssb")).toEqual([
    ["40m", [7175, 7300]],
    ["20m", [14225, 14350]],
    ["10m", [28300, 29700]],
  ]);
  expect(piecesFor("extra", "ssb")).toEqual([
    ["40m", [7125, 7300]],
    ["20m", [14150, 14350]],
    ["10m", [28300, 29700]],
  ]);
  expect(piecesFor("technician", "cw")).toEqual([
    ["40m", [7025, 7125]],
    ["10m", [28000, 28500]],
  ]);
});
