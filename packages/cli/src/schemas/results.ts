import type { CheckResult, DiffResult, LineResult, SweepGrade, TrimResult } from "@feedpoint/core";
import * as z from "zod";
import type { GradedLine, GradeReport } from "../grading/report.js";
import type { ShowResult } from "../present/show.js";
import type { JsonOf } from "./json-of.js";
import {
  bandSummary,
  causeCode,
  cautions,
  feedline,
  findings,
  finite,
  fraction,
  frequencyHz,
  limits,
  modeName,
  need,
  piece,
  planInfo,
  point,
  powerLimit,
  sweepInfo,
} from "./parts.js";

/*
 * The results of the command as JSON. The compiler holds each against the type of what is printed, the tests against what is
 * printed.
 */

const verdict = z.enum(["pass", "partial", "fail", "not-swept"]);

const segment = z.object({
  use: z.string(),
  emissions: z
    .array(z.enum(["cw", "data", "phone", "image", "mcw"]))
    .nullable()
    .describe("null: the plan does not say"),
  lowHz: frequencyHz,
  highHz: frequencyHz,
  sweptFraction: fraction,
  withinLimitFraction: fraction,
  worstSwr: finite,
  verdict,
});

const power = z.object({
  band: z.string(),
  mode: modeName,
  pieces: z.array(piece),
  usableFraction: fraction,
  licenceLimits: z.array(powerLimit).describe("all hold; empty: the plan does not say"),
  watts: finite.describe("at the worst SWR within reach; null: nothing is within reach, or nothing limits"),
  limitedBy: z.enum(["licence", "antenna", "radio"]).nullable(),
  worstSwr: finite,
  bestWatts: finite,
  averageWatts: finite,
});

const antennaEnd = z.object({
  frequencyHz,
  matchedLossDb: z.number(),
  antennaSwr: finite,
  totalLossDb: finite,
  extraLossDb: finite,
  deliveredFraction: fraction,
});

const bandFeedline = z.object({
  atBest: antennaEnd.nullable(),
  atWorst: antennaEnd.nullable(),
  powerW: finite,
  stress: z.object({ volts: finite, amperes: finite }).nullable().describe("effective values"),
});

const dial = z.object({
  frequencyHz,
  mode: modeName.nullable(),
  activity: z.string().nullable(),
  lowHz: frequencyHz.describe("what the transmission occupies"),
  highHz: frequencyHz,
  band: z.string().nullable(),
  isPermitted: z.boolean().nullable().describe("null without a mode"),
  licenceLimits: z.array(powerLimit),
  point: point.nullable(),
  worstSwr: finite.describe("null unless all that is occupied was swept"),
  need,
});

const check = z.object({
  schema: z.literal("feedpoint/check@1"),
  sweep: sweepInfo,
  plan: planInfo,
  limits,
  feedline: feedline.nullable(),
  bands: z.array(
    bandSummary.extend({
      verdict: verdict.describe("without a tuner"),
      segments: z.array(segment),
      power: z.array(power),
      feedline: bandFeedline.nullable(),
    }),
  ),
  dials: z.array(dial),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<CheckResult>>;

const diff = z.object({
  schema: z.literal("feedpoint/diff@1"),
  before: z.array(sweepInfo),
  after: z.array(sweepInfo),
  plan: planInfo,
  limits,
  thresholds: z.object({ reflectionMagnitude: z.number(), fraction: z.number() }),
  headline: z.string(),
  bands: z.array(
    z.object({
      band: z.string(),
      before: bandSummary.describe("of repeats the one in the middle"),
      after: bandSummary,
      change: z
        .object({
          bestSwr: finite,
          bestFrequencyHz: finite,
          withinLimitFraction: z.number(),
          withinLimitWidthHz: z.number(),
          worstSwr: finite,
          lowEdgeHz: finite,
          highEdgeHz: finite,
          gainedHz: z.number(),
          lostHz: z.number(),
        })
        .describe("after less before; of means where there are repeats"),
      verdict: z.enum(["improved", "worse", "unchanged", "mixed", "not-comparable"]),
      why: z.string(),
    }),
  ),
  causes: z.array(
    z.object({
      code: causeCode,
      confidence: z.enum(["likely", "possible"]),
      evidence: z.record(z.string(), finite).describe("named numbers, their units in their names"),
      message: z.string(),
    }),
  ),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<DiffResult>>;

const grade = z.enum(["A", "B", "C", "D", "F"]);

const bandGrade = z.object({
  band: z.string(),
  grade: grade.nullable().describe("null: too little of the band was swept"),
  bestSwr: finite,
  bestHz: finite,
  dipHz: finite.describe("null where the best point is only the edge of the band"),
  withinLimitFraction: fraction,
  sweptFraction: fraction,
  need,
});

const sweepGrade = z.object({
  sweep: sweepInfo,
  grade: grade.nullable().describe("mean over the bands graded; null: none"),
  bands: z.array(bandGrade),
  lossBoundDb: finite.describe("null: the sweep bounds nothing"),
  log: z.record(z.string(), z.string()).nullable().describe("the deployment log's row"),
}) satisfies z.ZodType<JsonOf<SweepGrade>>;

const gradedSweep = z.object({
  schema: z.literal("feedpoint/graded-sweep@1"),
  ...sweepGrade.shape,
}) satisfies z.ZodType<JsonOf<GradedLine>>;

const spread = z.object({ median: z.number(), spread: finite.describe("interquartile range") });

const gradeReport = z.object({
  schema: z.literal("feedpoint/grade@1"),
  plan: planInfo,
  limits,
  criteria: z.array(
    z.object({
      grade,
      withoutTuner: fraction,
      withBuiltInTuner: fraction,
      withWideRangeTuner: fraction,
      meaning: z.string(),
    }),
  ),
  sweeps: z.array(sweepGrade),
  unreadable: z.array(z.object({ file: z.string(), reason: z.string() })),
  groups: z.array(
    z.object({
      band: z.string(),
      groups: z.array(
        z.object({
          value: z.string(),
          sweeps: z.number(),
          bestSwr: spread.nullable(),
          coverage: spread.nullable(),
        }),
      ),
      isBeyondSpread: z.boolean().nullable().describe("null: too few sweeps"),
    }),
  ),
  drifts: z.array(
    z.object({
      deployment: z.string().nullable(),
      band: z.string(),
      sweeps: z.number(),
      firstDate: z.string(),
      lastDate: z.string(),
      slopeHzPerMonth: finite,
      scatterHz: finite,
      jumps: z.array(z.object({ date: z.string(), changeHz: z.number() })),
    }),
  ),
  ranking: z.array(z.object({ rank: z.number(), graded: sweepGrade, band: bandGrade })),
  findings,
  cautions,
  totals: z.object({ files: z.number(), graded: z.number(), unreadable: z.number(), points: z.number() }),
}) satisfies z.ZodType<JsonOf<GradeReport>>;

const trim = z.object({
  schema: z.literal("feedpoint/trim@1"),
  sweep: sweepInfo,
  plan: planInfo,
  limits,
  feedline: feedline.nullable(),
  band: z.string(),
  wantedHz: frequencyHz,
  dip: point.nullable(),
  lengthChange: finite.describe("-0.02: shorten by 2 %"),
  lengthChangeM: finite,
  bands: z.array(
    z.object({ band: z.string(), before: bandSummary.nullable(), after: bandSummary.nullable().describe("foretold") }),
  ),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<TrimResult>>;

const line = z.object({
  schema: z.literal("feedpoint/line@1"),
  sweep: sweepInfo,
  endOhms: finite.describe("0: short; null: open"),
  characteristicOhms: z.number(),
  electricalLengthM: finite,
  velocityFactor: finite,
  lengthM: finite,
  losses: z.array(z.object({ frequencyHz, matchedLossDb: z.number(), dbPer100M: finite, expectedDb: finite })),
  verdict: z.enum(["as-expected", "lossy", "low-loss", "unknown"]),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<LineResult>>;

const show = z.object({
  schema: z.literal("feedpoint/show@1"),
  sweep: sweepInfo,
  continuity: z.enum(["curve", "spots"]),
  comments: z.array(z.string()),
  rows: z.array(
    z.object({
      frequencyHz,
      reflectionMagnitude: z.number(),
      reflectionReal: finite,
      reflectionImaginary: finite,
      swr: finite,
      resistanceOhms: finite,
      reactanceOhms: finite,
    }),
  ),
}) satisfies z.ZodType<JsonOf<ShowResult>>;

const RESULTS = { check, diff, grade: gradeReport, "graded-sweep": gradedSweep, trim, line, show };

export type ResultName = keyof typeof RESULTS;

/** The JSON Schema (draft 2020-12) of what a command prints for one sweep, or one comparison; fields may be added. */
export const resultSchema = (name: ResultName): object => z.toJSONSchema(RESULTS[name], { io: "input" });
