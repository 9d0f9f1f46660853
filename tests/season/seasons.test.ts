/**
 * Twenty invented seasons with known truth: each told right in at least 90 of 100 draws, and of seasons in which nothing happened nothing
 * claimed in at least 95. `FEEDPOINT_DRAWS=100` draws as many, which takes some minutes; by default as many as time allows, with room
 * for the luck of few draws.
 */
import {
  changeFindings,
  changesOverTime,
  driftFindings,
  driftsOf,
  eventsOf,
  factorEffects,
  lossFindings,
  lossOverTime,
  type SweepGrade,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { drawSeason, type Season } from "./invented-seasons.js";

const DRAWS = Number(process.env.FEEDPOINT_DRAWS ?? 6);

/** All that is claimed of a season: codes of findings, courses, and effects of factors. */
function claims(sweeps: readonly SweepGrade[]): ReadonlySet<string> {
  const changes = changesOverTime(
    sweeps,
    null,
    eventsOf(
      sweeps.map(({ log }) => log ?? {}),
      "event",
    ),
  );
  const findings = [
    ...lossFindings(lossOverTime(sweeps, null), changes),
    ...changeFindings(changes),
    ...driftFindings(driftsOf(sweeps, null, changes)),
  ];
  return new Set([
    ...findings.map(({ code }) => code),
    ...changes.filter(({ course }) => course !== "nothing").map(({ measure, course }) => `${measure}: ${course}`),
    ...factorEffects(sweeps, ["height", "counterpoise", "mood"])
      .filter(({ verdict }) => verdict === "effect")
      .map(({ measure, factor }) => `${measure} by ${factor}`),
  ]);
}

/** In how many draws of a season something holds of what is claimed, as a share. */
function shareOf(season: Season, holds: (claimed: ReadonlySet<string>) => boolean): number {
  const draws = Array.from({ length: DRAWS }, (_, draw) => holds(claims(drawSeason(season, draw))));
  return draws.filter(Boolean).length / DRAWS;
}

/** Of few draws one may fail by chance where 90 of 100 hold. */
const LEAST = DRAWS >= 100 ? 0.9 : 0.8;

const evenly = (total: number, sweeps: number) => (k: number) => (total * k) / (sweeps - 1);

describe("told right", () => {
  const dying: readonly Season[] = [
    { name: "a line that dies in 24 weeks", sweeps: 24, lossDb: evenly(1.15, 24) },
    { name: "a line that dies in 12 weeks", sweeps: 12, lossDb: evenly(0.8, 12) },
    { name: "a line that dies while the wire wanders", sweeps: 24, wander: 0.02, lossDb: evenly(1.15, 24) },
    { name: "a line that loses a little more", sweeps: 20, lossDb: evenly(0.4, 20) },
  ];
  test.each(dying)("$name: loss is rising", (season) => {
    expect(shareOf(season, (claimed) => claimed.has("loss-rising"))).toBeGreaterThanOrEqual(LEAST);
  });

  const drifting: readonly Season[] = [
    { name: "a wire that stretches", sweeps: 16, wander: 0.003, dip: evenly(-0.02, 16) },
    { name: "a wire that shrinks in few sweeps", sweeps: 10, wander: 0.003, dip: evenly(0.02, 10) },
    { name: "a wire that stretches in a longer season", sweeps: 24, wander: 0.004, dip: evenly(-0.025, 24) },
  ];
  test.each(drifting)("$name: the dip drifts, and no loss", (season) => {
    const isTold = (claimed: ReadonlySet<string>) => claimed.has("dip: drift") && !claimed.has("loss-rising");
    expect(shareOf(season, isTold)).toBeGreaterThanOrEqual(LEAST);
  });

  const stepped: readonly Season[] = [
    { name: "a step of the dip at an event", sweeps: 16, wander: 0.003, event: 7, dip: (k) => (k >= 7 ? 0.015 : 0) },
    {
      name: "a step down at an event of few sweeps",
      sweeps: 12,
      wander: 0.003,
      event: 6,
      dip: (k) => (k >= 6 ? -0.015 : 0),
    },
  ];
  test.each(stepped)("$name: with the event, and no drift", (season) => {
    const isTold = (claimed: ReadonlySet<string>) => claimed.has("dip: event") && !claimed.has("dip-drifts");
    expect(shareOf(season, isTold)).toBeGreaterThanOrEqual(LEAST);
  });

  test("a step that the log does not tell of is no even drift", () => {
    const [season] = stepped;
    if (season === undefined) throw new Error("no season with a step");
    const told = Array.from({ length: DRAWS }, (_, draw) => {
      const courses = changesOverTime(drawSeason(season, draw), null, []).map(({ course }) => course);
      return courses.includes("step") && !courses.includes("drift");
    });
    expect(told.filter(Boolean).length / DRAWS).toBeGreaterThanOrEqual(LEAST);
  });

  test("loss that came with an event: with it, and not as a trend", () => {
    const season: Season = { name: "a joint that went", sweeps: 16, event: 9, lossDb: (k) => (k >= 9 ? 0.4 : 0) };
    const isTold = (claimed: ReadonlySet<string>) => claimed.has("loss: event") && !claimed.has("loss-rising");
    expect(shareOf(season, isTold)).toBeGreaterThanOrEqual(LEAST);
  });

  const two: readonly Season[] = [
    {
      name: "two factors",
      sweeps: 20,
      wander: 0.004,
      dip: (_, said) => (said.height - 6) * -0.004 + (said.counterpoise === "water" ? 0.012 : 0),
    },
    {
      name: "two factors of few sweeps",
      sweeps: 14,
      wander: 0.004,
      dip: (_, said) => (said.height - 6) * -0.005 + (said.counterpoise === "water" ? 0.015 : 0),
    },
  ];
  test.each(two)("$name: both, and not the third", (season) => {
    const isTold = (claimed: ReadonlySet<string>) =>
      claimed.has("dip by height") && claimed.has("dip by counterpoise") && !claimed.has("dip by mood");
    expect(shareOf(season, isTold)).toBeGreaterThanOrEqual(LEAST);
  });

  const useless: readonly Season[] = [
    {
      name: "one factor of three",
      sweeps: 18,
      wander: 0.004,
      dip: (_, said) => (said.counterpoise === "water" ? 0.015 : 0),
    },
    {
      name: "one factor that costs power",
      sweeps: 18,
      lossDb: (_, said) => (said.counterpoise === "water" ? 0.35 : 0),
    },
    { name: "height alone", sweeps: 16, wander: 0.004, dip: (_, said) => (said.height - 6) * -0.005 },
  ];
  test.each(useless)("$name: that one, and no useless one", (season) => {
    const real = season.name === "height alone" ? "height" : "counterpoise";
    const isTold = (claimed: ReadonlySet<string>) => {
      const named = [...claimed].filter((claim) => claim.includes(" by "));
      return named.some((claim) => claim.endsWith(real)) && named.every((claim) => claim.endsWith(real));
    };
    expect(shareOf(season, isTold)).toBeGreaterThanOrEqual(LEAST);
  });
});

describe("nothing happened", () => {
  const nothing: readonly Season[] = [
    { name: "in 24 sweeps", sweeps: 24, event: 12 },
    { name: "in 16 sweeps that scatter widely", sweeps: 16, event: 8, wander: 0.02, scatter: 0.02 },
    { name: "in 12 sweeps", sweeps: 12, event: 6 },
    { name: "in 8 sweeps", sweeps: 8, event: 4 },
    { name: "in 6 sweeps", sweeps: 6 },
  ];

  test("nothing is claimed in at least 95 of 100 draws", () => {
    const shares = nothing.map((season) => shareOf(season, (claimed) => claimed.size === 0));
    const silent = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(silent, String(shares)).toBeGreaterThanOrEqual(DRAWS >= 100 ? 0.95 : 0.9);
  });
});
