import type { ShowResult } from "@feedpoint/answers/text/show";
import {
  type AdviseResult,
  type DiffResult,
  FIXED_PARTS,
  type LineResult,
  type MatchingPart,
  type TrimResult,
} from "@feedpoint/core";
import * as z from "zod";
import { check } from "./check.js";
import { gradedSweep, gradeReport } from "./grade.js";
import { heard } from "./heard.js";
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
  planInfo,
  point,
  sweepInfo,
} from "./parts.js";

/*
 * The results of the command as JSON. The compiler holds each against the type of what is printed, the tests against what is
 * printed.
 */

const diff = z.object({
  schema: z.literal("feedpoint/diff@1"),
  before: z.array(sweepInfo),
  after: z.array(sweepInfo),
  plan: planInfo,
  limits,
  thresholds: z.object({ reflectionMagnitude: z.number(), fraction: z.number(), readingSwr: z.number() }),
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
      isHidden: z
        .boolean()
        .describe("true: unchanged only because the sweeps of one side differ so much that nothing can be told"),
      isPerhaps: z
        .boolean()
        .describe("true: changed by no more than putting the same antenna up again is assumed to do"),
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

const toldOfFixed = {
  fixed: z.enum(FIXED_PARTS).nullable(),
  fixedWires: z
    .object({ count: z.number().int().nullable(), lengthM: finite })
    .nullable()
    .describe("as far as it was told"),
};

const trim = z.object({
  schema: z.literal("feedpoint/trim@1"),
  sweep: sweepInfo,
  plan: planInfo,
  limits,
  feedline: feedline.nullable(),
  band: z.string(),
  wantedHz: frequencyHz,
  ...toldOfFixed,
  dip: point.nullable(),
  lengthChange: finite.describe("-0.02: shorten by 2 %"),
  expectedHz: z
    .object({ lowHz: frequencyHz, highHz: frequencyHz })
    .nullable()
    .describe("where the dip then lies: not all scales with the wire"),
  lengthChangeM: finite,
  bands: z.array(
    z.object({ band: z.string(), before: bandSummary.nullable(), after: bandSummary.nullable().describe("foretold") }),
  ),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<TrimResult>>;

const range = z.object({ low: z.number(), high: z.number() });

const wishOutcome = z.object({
  reached: fraction.describe("within reach with your tuner, and enough arrives"),
  reachedBetween: range.describe("what that may be"),
  withoutTuner: fraction,
  arrives: z.number().nullable().describe("the least share of the power that arrives, within reach"),
});

const placing = z.enum(["series", "across"]);
const matchingPart = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("coil"), placing, inductanceHenry: finite, q: finite }),
  z.object({ kind: z.literal("capacitor"), placing, capacitanceFarad: finite, q: finite }),
  z.object({
    kind: z.literal("transformer"),
    ratio: z.number().describe("of the impedances, its high side to the antenna"),
    magnetisingHenry: finite.describe("null: not stated"),
    leakageHenry: finite.describe("null: not stated"),
  }),
  z.object({ kind: z.literal("line"), feedline }),
  z.object({ kind: z.literal("stub"), end: z.enum(["open", "short"]), feedline }),
]) as unknown as z.ZodType<JsonOf<MatchingPart>>;

const advice = z.object({
  kind: z.enum(["as-is", "wire", "element", "transformer", "line", "stub", "section", "network", "settings"]),
  what: z.string().describe("for people; its words may change"),
  lengthChange: z.number().describe("-0.02: shorten by 2 %; 0: leave the wire"),
  lengthChangeM: finite,
  parts: z.array(
    z.object({
      place: z.enum(["feed", "line", "radio"]),
      fromAntennaM: z.number().describe("length of line between it and the antenna, or the place of the sweep"),
      wish: z.string().nullable().describe("what it is set for; null: for all"),
      part: matchingPart,
      stress: z
        .object({ volts: z.number(), amperes: z.number(), heatW: z.number() })
        .describe("effective values at powerW"),
    }),
  ),
  outcomes: z.array(wishOutcome).describe("of the wishes that can be foretold, in their order"),
});

const tryNext = z.object({
  schema: z.literal("feedpoint/try@1"),
  sweep: sweepInfo,
  plan: planInfo,
  limits,
  feedline: feedline.nullable(),
  ends: z.enum(["antenna-and-radio", "antenna", "analyser"]).describe("where parts can be put"),
  ...toldOfFixed,
  wireLengthM: finite,
  powerW: z.number(),
  isPowerStated: z.boolean(),
  leastArriving: fraction,
  verdict: z.enum(["try", "leave-it", "nothing-better", "measure-first"]),
  wishes: z.array(
    z.object({
      title: z.string(),
      band: z.string(),
      pieces: z.array(z.object({ lowHz: frequencyHz, highHz: frequencyHz })),
      weight: z.number(),
      mode: z.string().nullable(),
      notForetold: z.enum(["not-swept", "only-readings", "no-phase"]).nullable(),
      now: wishOutcome.nullable(),
      limit: z
        .object({
          q: finite,
          isOneResonance: z.boolean().describe("the bound holds for no other"),
          leastSwr: finite.describe("that a lossless network can keep throughout"),
          greatestShare: finite.describe("that one can bring within the limit"),
        })
        .nullable(),
    }),
  ),
  advice: z.array(advice).describe("the best first"),
  experiment: z
    .object({ code: z.string(), answers: z.number(), wishes: z.array(z.string()), message: z.string() })
    .nullable() as unknown as z.ZodType<JsonOf<AdviseResult["experiment"]>>,
  curves: z.array(
    z.object({
      title: z.string(),
      frequencyHz: z.array(z.number()),
      before: z.array(finite).describe("reflection magnitude"),
      after: z.array(finite).describe("with the first advice"),
    }),
  ),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<AdviseResult>>;

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
  lines: z
    .object({
      lines: z.int(),
      data: z.int(),
      header: z.int(),
      comments: z.int(),
      blank: z.int(),
      leftOut: z.array(
        z.object({
          line: z.int(),
          reason: z.enum([
            "no-number",
            "sums-up",
            "too-many-cells",
            "too-few-cells",
            "above-header",
            "another-table",
            "no-reading",
          ]),
          text: z.string(),
        }),
      ),
    })
    .nullable(),
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

const RESULTS = { check, diff, grade: gradeReport, "graded-sweep": gradedSweep, trim, try: tryNext, line, heard, show };

export type ResultName = keyof typeof RESULTS;

/** The JSON Schema (draft 2020-12) of what a command prints for one sweep, or one comparison; fields may be added. */
export const resultSchema = (name: ResultName): object => z.toJSONSchema(RESULTS[name], { io: "input" });
