/**
 * How well ways of looking between the samples find what an antenna does: `pnpm accuracy` prints the tables of the guide's
 * page on accuracy.
 *
 * Modelled antennas (tests/nec), bare and behind 18 m of coax, noise 0, 0.001 and 0.005 in each part of Γ, always the same
 * seeds. Errors of the 2:1 edges in kHz and of the best SWR, against the model's fine grid.
 */
import {
  curveOf,
  extremesBetween,
  type Sweep,
  spansWithin,
  swrFromReflectionMagnitude,
  traceOf,
} from "@feedpoint/core";
import { causeScores, isRight } from "../support/cause-scores.js";
import { type IntervalScore, intervalScores, QUANTITIES, STEPS, SWEPT_AS } from "../support/interval-scores.js";
import { COAX, modelled, sweepModelled } from "../support/modelled-sweeps.js";
import { type BandTruth, bandTruth, readNec } from "../support/nec-truth.js";
import { antennaFamilies } from "../support/strange-antennas/families.js";
import {
  familiesOf,
  LOSSES,
  RANGES,
  type StrangeScore,
  scalarOfPart,
  strangeScores,
} from "../support/strange-scores.js";
import { unchangedScores } from "../support/unchanged-scores.js";

const CASES = [
  { name: "dipole-20m", lowHz: 14_000_000, highHz: 14_350_000 },
  { name: "vee-40m", lowHz: 7_000_000, highHz: 7_200_000 },
  { name: "vee-40m-drooped", lowHz: 7_000_000, highHz: 7_300_000 },
  { name: "end-fed-49-to-1", lowHz: 14_000_000, highHz: 14_700_000 },
  { name: "loaded-vertical-80m", lowHz: 3_550_000, highHz: 3_670_000 },
  { name: "fan-dipole-40-20m", lowHz: 7_000_000, highHz: 7_300_000 },
  { name: "dipole-10m-wide", lowHz: 28_000_000, highHz: 29_700_000 },
] as const;
const STEPS_HZ = [10_000, 50_000, 100_000, 200_000, 300_000, 500_000, 1_000_000];
const NOISES = [0, 0.001, 0.005];
const SEEDS = [1, 2, 3, 4, 5, 6];
const LIMIT = 1 / 3;

interface Answer {
  readonly bestSwr: number;
  readonly lowEdgeHz: number;
  readonly highEdgeHz: number;
}

/** Edges and best by the samples alone, or by straight lines of SWR between them. */
function bySamples(sweep: Sweep, truth: BandTruth, areJoined: boolean): Answer | null {
  const points = Array.from(sweep.frequencyHz, (frequencyHz, i) => ({
    frequencyHz,
    swr: swrFromReflectionMagnitude(sweep.reflectionMagnitude[i] ?? 1),
  }));
  const best = points
    .filter(({ frequencyHz }) => frequencyHz >= truth.lowEdgeHz && frequencyHz <= truth.highEdgeHz)
    .reduce<(typeof points)[number] | null>(
      (least, point) => (least === null || point.swr < least.swr ? point : least),
      null,
    );
  if (best === null || best.swr > 2) return null;
  const place = points.indexOf(best);
  let low = place;
  let high = place;
  while (low > 0 && (points[low - 1]?.swr ?? 9) <= 2) low--;
  while (high < points.length - 1 && (points[high + 1]?.swr ?? 9) <= 2) high++;
  const edge = (inside: number, outside: number) => {
    const a = points[inside];
    const b = points[outside];
    if (a === undefined || b === undefined || !areJoined || b.swr === Number.POSITIVE_INFINITY)
      return a?.frequencyHz ?? Number.NaN;
    return a.frequencyHz + ((2 - a.swr) / (b.swr - a.swr)) * (b.frequencyHz - a.frequencyHz);
  };
  return { bestSwr: best.swr, lowEdgeHz: edge(low, low - 1), highEdgeHz: edge(high, high + 1) };
}

function byCurve(sweep: Sweep, truth: BandTruth): Answer | null {
  const trace = traceOf(curveOf(sweep));
  const span = spansWithin(trace, LIMIT).find(
    ({ lowHz, highHz }) => lowHz < truth.bestHz + 50_000 && highHz > truth.bestHz - 50_000,
  );
  const extremes = extremesBetween(trace, truth.lowEdgeHz, truth.highEdgeHz);
  if (span === undefined || extremes === null) return null;
  const bestSwr = swrFromReflectionMagnitude(extremes.best.reflectionMagnitude);
  return { bestSwr, lowEdgeHz: span.lowHz, highEdgeHz: span.highHz };
}

const METHODS = {
  "nearest sample": (vector: Sweep, _: Sweep, truth: BandTruth) => bySamples(vector, truth, false),
  "straight lines on SWR": (vector: Sweep, _: Sweep, truth: BandTruth) => bySamples(vector, truth, true),
  "feedpoint, SWR only": (_: Sweep, scalar: Sweep, truth: BandTruth) => byCurve(scalar, truth),
  "feedpoint, vector": (vector: Sweep, _: Sweep, truth: BandTruth) => byCurve(vector, truth),
};

const share = (numbers: readonly number[], part: number) => {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
};

const models = CASES.flatMap(({ name, lowHz, highHz }) =>
  [null, COAX].map((line) => {
    const model = modelled(readNec(name), line);
    return { model, truth: bandTruth(model.fine, lowHz, highHz) };
  }),
);

console.log("Errors, median / 95 %: 2:1 edges in kHz; best SWR; share of sweeps in which the dip was missed.\n");
console.log(`| step | ${Object.keys(METHODS).join(" | ")} |`);
console.log(
  `|---|${Object.keys(METHODS)
    .map(() => "---|")
    .join("")}`,
);
for (const stepHz of STEPS_HZ) {
  const cells = Object.values(METHODS).map((method) => {
    const edges: number[] = [];
    const bests: number[] = [];
    let missed = 0;
    let tries = 0;
    for (const { model, truth } of models) {
      for (const noise of NOISES) {
        for (const seed of SEEDS) {
          const sweeping = { stepHz, noise, seed: seed * 7919 + stepHz / 1000 };
          const vector = sweepModelled(model, { ...sweeping, kind: "vector" });
          const scalar = sweepModelled(model, { ...sweeping, kind: "scalar" });
          const answer = method(vector, scalar, truth);
          tries++;
          if (answer === null) {
            missed++;
            continue;
          }
          edges.push(
            Math.abs(answer.lowEdgeHz - truth.lowEdgeHz) / 1000,
            Math.abs(answer.highEdgeHz - truth.highEdgeHz) / 1000,
          );
          bests.push(Math.abs(answer.bestSwr - swrFromReflectionMagnitude(truth.bestRho)));
        }
      }
    }
    const kilohertz = (value: number) => value.toFixed(value < 9.95 ? 1 : 0);
    const misses = missed === 0 ? "" : `; missed ${((100 * missed) / tries).toFixed(0)} %`;
    return `${kilohertz(share(edges, 0.5))} / ${kilohertz(share(edges, 0.95))}; ${share(bests, 0.5).toFixed(3)} / ${share(bests, 0.95).toFixed(3)}${misses}`;
  });
  console.log(`| ${stepHz / 1000} kHz | ${cells.join(" | ")} |`);
}

/** What was taken for what: true causes down, reported ones across, in numbers of pairs. */
const NOISES_OF_PAIRS = [0.0005, 0.002, 0.005];
const nameOf = (codes: readonly string[]) => codes.toSorted().join(" + ") || "nothing";
for (const noise of NOISES_OF_PAIRS) {
  const scores = causeScores(noise, [1, 2, 3]);
  const reported = [...new Set(scores.map((score) => nameOf(score.reported)))].toSorted();
  const truths = [...new Set(scores.map(({ pair }) => nameOf(pair.causes)))].toSorted();
  const right = scores.filter(isRight).length;
  console.log(`\nCauses of diff at a noise of ${noise}: ${((100 * right) / scores.length).toFixed(1)} % right.\n`);
  console.log(`| true \\ reported | ${reported.join(" | ")} |`);
  console.log(`|---|${reported.map(() => "--:|").join("")}`);
  for (const truth of truths) {
    const counts = reported.map(
      (name) => scores.filter((score) => nameOf(score.pair.causes) === truth && nameOf(score.reported) === name).length,
    );
    console.log(`| ${truth} | ${counts.map((count) => (count === 0 ? "" : count)).join(" | ")} |`);
  }
}

/** What is told of changes and antennas that the thresholds were not chosen by: numbers of pairs, by change and range of the sweep. */
const STRANGE_SEEDS = [9000, 9977];
const outcomes = ["right", "possible", "nothing", "wrong"] as const;
const strange = RANGES.map((range) => ({ range, scores: strangeScores(familiesOf("held-out"), range, STRANGE_SEEDS) }));
const countsOf = (scores: readonly StrangeScore[]) =>
  outcomes.map((outcome) => scores.filter((score) => score.outcome === outcome).length).join(" / ");
console.log(`\nCauses of diff on families held out: ${outcomes.join(" / ")}.\n`);
console.log(`| change | ${RANGES.join(" | ")} |`);
console.log(`|---|${RANGES.map(() => "--:|").join("")}`);
for (const change of new Set(strange.flatMap(({ scores }) => scores.map((score) => score.change)))) {
  const cells = strange.map(({ scores }) => countsOf(scores.filter((score) => score.change === change)));
  console.log(`| ${change} | ${cells.join(" | ")} |`);
}
console.log(`| all | ${strange.map(({ scores }) => countsOf(scores)).join(" | ")} |`);
for (const { range, scores } of strange) {
  const lossy = scores.filter(({ change }) => LOSSES.has(change));
  const silent = lossy.filter(({ isSilent }) => isSilent).length;
  console.log(
    `${range}: of ${lossy.length} with added loss or resistance ${silent} called better without a word of loss`,
  );
}

/** Whether stated intervals hold, by kind and step, and by family. */
const INTERVAL_SEEDS = Array.from({ length: 5 }, (_, i) => 701 + i);
const held = SWEPT_AS.flatMap((kind) =>
  STEPS.flatMap((step) => intervalScores(antennaFamilies("held-out"), INTERVAL_SEEDS, kind, step)),
);
const heldIn = (scores: readonly IntervalScore[]) =>
  QUANTITIES.map((quantity) => {
    const of = scores.filter((score) => score.quantity === quantity);
    return of.length === 0
      ? "–"
      : `${Math.round((100 * of.filter(({ holds }) => holds).length) / of.length)} (${of.length})`;
  }).join(" | ");
console.log(
  "\nStated intervals that hold the truth, % (of how many), families held out, wide sweeps, no finding about the step.\n",
);
console.log(`| sweep, step | ${QUANTITIES.join(" | ")} |`);
console.log(`|---|${QUANTITIES.map(() => "--:|").join("")}`);
for (const kind of SWEPT_AS) {
  for (const step of STEPS)
    console.log(`| ${kind}, ${step} | ${heldIn(held.filter((score) => score.kind === kind && score.step === step))} |`);
  console.log(`| ${kind}, all | ${heldIn(held.filter((score) => score.kind === kind))} |`);
}
for (const { name } of antennaFamilies("held-out"))
  console.log(`| ${name} | ${heldIn(held.filter(({ family }) => family === name))} |`);

/** Causes without phase: nothing but a moved resonance and loss can be told. */
console.log(`\nCauses without phase, all changes: ${outcomes.join(" / ")}.\n`);
for (const range of RANGES) {
  const scores = strangeScores(familiesOf("held-out"), range, STRANGE_SEEDS, { asSweep: scalarOfPart });
  console.log(`${range}: ${countsOf(scores)}`);
}

/** Bands of the same antenna, swept again or hung up again, that diff does not call unchanged. */
console.log(
  "\nBands that did not change by as much as matters and are not `unchanged`, wide sweeps, families held out.\n",
);
console.log("| points | noise | swept again | hung up again | of these `perhaps` |");
console.log("|--:|--:|--:|--:|--:|");
for (const points of [201, 401, 1001]) {
  for (const noise of [0.002, 0.004]) {
    const [again, hungUp] = (["nothing", "another-sweep"] as const).map((change) => {
      const scores = unchangedScores(familiesOf("held-out"), STRANGE_SEEDS, change, { points, noise });
      const changed = scores.filter(({ isUnchanged }) => !isUnchanged);
      return { text: `${changed.length} of ${scores.length}`, perhaps: changed.filter(({ isPerhaps }) => isPerhaps) };
    });
    console.log(`| ${points} | ${noise} | ${again?.text} | ${hungUp?.text} | ${hungUp?.perhaps.length} |`);
  }
}
