import { type HeardOptions, heard, onAirOf, type ReceptionReport, readDeploymentLog } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";

const at = (minute: number) => Date.UTC(2026, 4, 2, 18, minute);

const report = (
  minute: number,
  receiver: string,
  snrDb: number | null,
  more: Partial<ReceptionReport> = {},
): ReceptionReport => ({
  time: at(minute),
  transmitter: "Q0AAA",
  receiver,
  transmitterLocator: "IO91",
  receiverLocator: "JO22",
  band: "40m",
  mode: "WSPR",
  snrDb,
  powerW: null,
  ...more,
});

const turns = (...names: readonly string[]): HeardOptions => ({
  periods: names.map((deployment, i) => ({ deployment, up: at(2 * i), down: at(2 * i + 2), transmitter: null })),
});

const NAMES = ["Q1A", "Q1B", "Q1C", "Q1D", "Q1E", "Q1F", "Q1G", "Q1H"];
/** Four switches from one to the other. */
const ORDER = ["A", "B", "B", "A", "A", "B", "B", "A"];
/** Every receiver hears B as much better than A as told. */
const night = (better: (receiver: number) => number, names = NAMES): readonly ReceptionReport[] =>
  names.flatMap((name, i) => ORDER.map((on, k) => report(2 * k, name, on === "B" ? -10 + better(i) : -10)));

const compared = (reports: readonly ReceptionReport[], options = turns(...ORDER)) =>
  present(heard(reports, options).comparisons[0], "comparison");

describe("two deployments", () => {
  test("are told apart by receivers that agree", () => {
    const comparison = compared(night((i) => 3 + (i % 2)));
    expect(comparison).toMatchObject({
      before: "A",
      after: "B",
      verdict: "better",
      receivers: 8,
      pairs: 32,
      switches: 4,
      sameSlot: 0,
    });
    expect(comparison.differenceDb).toBeCloseTo(3.5, 5);
  });

  test("are not told apart by five, whatever they say", () => {
    expect(compared(night(() => 6, NAMES.slice(0, 5))).verdict).toBe("cannot-tell");
  });

  test("are not told apart by one loud receiver with many reports", () => {
    const loud = Array.from({ length: 40 }, (_, i) => report(2 * i, "Q1A", i % 2 === 0 ? -10 : 0));
    const others = night((i) => (i % 2 === 0 ? 1 : -1)).slice(ORDER.length);
    const periods = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? "A" : "B"));
    const comparison = compared([...loud, ...others], turns(...periods));
    expect(comparison.pairs).toBeGreaterThan(25);
    expect(comparison.verdict).toBe("cannot-tell");
    expect(comparison.toTell?.receivers).toBeGreaterThan(8);
  });

  test("are described and not judged after one switch alone, whatever all receivers say", () => {
    const reports = NAMES.flatMap((name) => [report(0, name, -10), report(2, name, -4)]);
    expect(compared(reports, turns("A", "B"))).toMatchObject({ verdict: "cannot-tell", switches: 1, pairs: 8 });
  });

  test("share the fading of each switch, which widens what is told", () => {
    const fades = [4, -4, 3, -3, 2, -2, 4, -4];
    const faded = night(() => 1).map((each, k) => ({ ...each, snrDb: (each.snrDb ?? 0) + (fades[k % 8] as number) }));
    const [calm, wild] = [compared(night(() => 1)), compared(faded)];
    expect(calm.verdict).toBe("better");
    expect(wild.verdict).toBe("cannot-tell");
    expect((wild.highDb ?? 0) - (wild.lowDb ?? 0)).toBeGreaterThan(4);
  });

  test("have their powers taken off", () => {
    const reports = night(() => 10).map((each) => ({ ...each, powerW: each.snrDb === -10 ? 1 : 10 }));
    expect(compared(reports)).toMatchObject({ verdict: "cannot-tell", withPowers: 32 });
    expect(compared(reports).differenceDb).toBeCloseTo(0, 10);
  });

  test("are never compared across modes, nor over more than ten minutes", () => {
    const modes = NAMES.flatMap((name) => [report(0, name, -10), report(2, name, -5, { mode: "FT8" })]);
    expect(compared(modes, turns("A", "B")).pairs).toBe(0);
    const far = {
      periods: [0, 20].map((minute, i) => ({
        deployment: "AB".charAt(i),
        up: at(minute),
        down: at(minute + 2),
        transmitter: null,
      })),
    };
    const late = NAMES.flatMap((name) => [report(0, name, -10), report(20, name, -5)]);
    expect(compared(late, far)).toMatchObject({ pairs: 0, differenceDb: null, verdict: "cannot-tell" });
    expect(heard(late, far).findings.map(({ code }) => code)).toContain("heard-without-pairs");
  });

  test("leave out pairs near the floor", () => {
    const reports = night(() => 2).map((each) => ({ ...each, snrDb: (each.snrDb ?? 0) - 15 }));
    expect(compared(reports)).toMatchObject({ pairs: 0, offScale: 32 });
  });

  test("may be on the air at once, told apart by their transmitters", () => {
    const periods = ["Q0AAA", "Q0AAA/P"].map((transmitter, i) => ({
      deployment: "AB".charAt(i),
      up: at(0),
      down: at(60),
      transmitter,
    }));
    const reports = NAMES.flatMap((name) =>
      [0, 2, 4, 6].flatMap((minute) => [
        report(minute, name, -10),
        report(minute, name, -7, { transmitter: "Q0AAA/P" }),
      ]),
    );
    expect(compared(reports, { periods })).toMatchObject({ verdict: "better", sameSlot: 32, pairs: 32 });
  });

  test("are heard by one receiver at one place, whatever stands behind its call", () => {
    expect(compared(night(() => 3, ["Q1AB", "Q1AB/1", "Q1AB-2", "DX/Q1AB"])).receivers).toBe(1);
  });
});

test("silence counts only of receivers that were listening", () => {
  const other = { transmitter: "Q0ZZZ" };
  const reports = [
    ...NAMES.flatMap((name) => [report(0, name, -10), report(2, name, -15, other)]),
    report(0, "Q1Z", -10),
    report(2, "Q1A", -11),
  ];
  const { heardOfOne } = compared(reports, { ...turns("A", "B"), transmitter: "Q0AAA" });
  expect(heardOfOne).toMatchObject({ onlyBefore: 8, onlyAfter: 0, receiversBefore: 8, receiversAfter: 0 });
  expect(heardOfOne.chance).toBeCloseTo(2 / 2 ** 8, 10);
});

test("the same report twice counts once, and what is outside every time is said", () => {
  const { totals, findings } = heard(
    [report(0, "Q1A", -10), report(0, "Q1A", -12), report(30, "Q1A", -3)],
    turns("A", "B"),
  );
  expect(totals).toEqual({ reports: 2, outside: 1, ofOthers: 0, repeated: 1, withoutRatio: 0 });
  expect(findings.map(({ code }) => code)).toEqual(["heard-outside", "heard-one-deployment", "heard-absence"]);
});

test("two stations leave open which is yours", () => {
  expect(() => heard([report(0, "Q1A", 1), report(0, "Q1B", 1, { transmitter: "Q0BBB" })], turns("A"))).toThrow(
    /say which station is yours/,
  );
});

test("a transmission that straddles a switch is of neither", () => {
  const late = {
    periods: [0, 1].map((i) => ({
      deployment: "AB".charAt(i),
      up: at(2 * i) + 60_000,
      down: at(2 * i + 2) + 60_000,
      transmitter: null,
    })),
  };
  expect(heard([report(0, "Q1A", -10), report(2, "Q1A", -10)], late).totals.outside).toBe(2);
});

test("a time of the log that cannot be read is refused, and one with its offset is not", () => {
  const log = (up: string, down: string) =>
    readDeploymentLog(`deployment,up,down\nvee,${up},${down}\n`, "deployments.csv");
  expect(onAirOf(log("2026-05-02T18:00:00Z", "2026-05-02 20:02 +02:00"))[0]).toMatchObject({ up: at(0), down: at(2) });
  expect(() => onAirOf(log("18:00", "18:02"))).toThrow(/"18:00" under up/);
  expect(() => onAirOf(log("2026-05-02 18:02", "2026-05-02 18:00"))).toThrow(/before up/);
});

test("a log tells what was up, until it came down or the next went up", () => {
  const log = readDeploymentLog(
    "file,deployment,up,down,transmitter\n,sloper,2026-05-02 18:00,,\n,vee,2026-05-02 18:10,2026-05-02 18:20,q0aaa/p\nroof.csv,,2026-05-03,,\n",
    "deployments.csv",
  );
  expect(onAirOf(log)).toEqual([
    { deployment: "sloper", up: at(0), down: at(10), transmitter: null },
    { deployment: "vee", up: at(10), down: at(20), transmitter: "Q0AAA/P" },
    { deployment: "roof.csv", up: Date.UTC(2026, 4, 3), down: Number.POSITIVE_INFINITY, transmitter: null },
  ]);
});

test("listeners lie where their locators say, and near ones anywhere", () => {
  const [where] = heard(
    [report(0, "Q1A", -10, { receiverLocator: "FN42" }), report(0, "Q1B", -10, { receiverLocator: "IO91" })],
    turns("A"),
  ).where;
  const listeners = present(where, "where").listeners;
  expect(listeners.map(({ receiver, doubtDeg }) => [receiver, doubtDeg < 5])).toEqual(
    expect.arrayContaining([
      ["Q1A", true],
      ["Q1B", false],
    ]),
  );
  expect(where?.sectors).toEqual([expect.objectContaining({ sector: "W", receivers: 1 })]);
});
