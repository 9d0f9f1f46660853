import type { GradedLine, GradeReport } from "@feedpoint/answers/judged/report";
import { aboutIn } from "@feedpoint/answers/tables/column";
import { gradeBandColumns } from "@feedpoint/answers/tables/grade-columns";
import type { SweepGrade } from "@feedpoint/core";
import * as z from "zod";
import type { JsonOf } from "./json-of.js";
import { cautions, findings, finite, fraction, frequencyHz, limits, need, planInfo, sweepInfo } from "./parts.js";

const grade = z.enum(["A", "B", "C", "D", "F"]);

const about = aboutIn(gradeBandColumns({ id: "", certainty: "" }));

const bandGrade = z.object({
  band: z.string(),
  grade: grade.nullable().describe("null: too little of the band was swept"),
  bestSwr: finite,
  bestHz: finite,
  isBestAtLeast: z.boolean().nullable().describe(about("isBestAtLeast")),
  dipHz: finite.describe("null where the best point is only the edge of the band"),
  withinLimitFraction: fraction,
  sweptFraction: fraction,
  need,
  notedUpToSwr: finite.describe(about("notedUpToSwr")),
  restsOn: z.enum(["curve", "spots", "stretch"]).nullable().describe(about("restsOn")),
});

const sweepGrade = z.object({
  sweep: sweepInfo,
  grade: grade.nullable().describe(`${about("overall")}; null: none`),
  bands: z.array(bandGrade),
  lossBoundDb: finite.describe(`${about("lossBoundDb")}; null: the sweep bounds nothing`),
  lossBoundHz: finite.describe("where the sweep says so; at higher frequencies more may be lost"),
  returnLosses: z
    .array(z.object({ frequencyHz, returnLossDb: z.number() }))
    .describe("what came back: sweeps that differ far from any match differ by loss"),
  findings: findings.describe("what makes its numbers others than they seem"),
  lineLossAt10MHzDb: finite.describe("of the line that was stated, one way with a matched end; null: none"),
  atAntenna: z
    .array(z.object({ band: z.string(), dipHz: finite, withinLimitFraction: fraction }))
    .nullable()
    .describe("with the line taken out; null: not asked for, or no line is known"),
  wishes: z
    .array(
      z.object({
        title: z.string(),
        sweptFraction: fraction,
        need,
        worstSwr: finite,
        isAtLeast: z.boolean().describe("the scale ended there"),
        reachedFraction: fraction.describe("within reach with your own tuner, where there is one"),
        watts: finite.describe("W PEP; null without a mode, out of reach, and where nothing limits it"),
        limitedBy: z.enum(["licence", "antenna", "radio"]).nullable(),
        arrives: z.object({ least: z.number(), most: z.number() }).nullable().describe("null: no line is known"),
      }),
    )
    .describe("what was wanted with --for; empty where nothing was"),
  log: z.record(z.string(), z.string()).nullable().describe("the deployment log's row"),
}) satisfies z.ZodType<JsonOf<SweepGrade>>;

/** A line of what `grade` prints as NDJSON. */
export const gradedSweep = z.object({
  schema: z.literal("feedpoint/graded-sweep@1"),
  ...sweepGrade.shape,
}) satisfies z.ZodType<JsonOf<GradedLine>>;

const spread = z.object({ median: z.number(), spread: finite.describe("interquartile range") });

const measure = z.enum(["share", "dip", "loss"]);
const course = z.enum(["nothing", "drift", "event", "step", "season", "cannot-tell"]);
const between = z.object({ low: z.number(), high: z.number() });

/** What `grade` prints. */
export const gradeReport = z.object({
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
          lossDb: spread
            .nullable()
            .describe("more than the sweep that loses least, one way at 10 MHz; null: not known"),
        }),
      ),
      isBeyondSpread: z.boolean().nullable().describe("null: too few sweeps"),
      restsOnLoss: z
        .boolean()
        .nullable()
        .describe("the first group loses more than the last: its match may be that alone"),
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
      slopeMarginHzPerMonth: finite,
      scatterHz: finite,
      jumps: z.array(z.object({ date: z.string(), changeHz: z.number() })),
      odd: z.array(z.object({ date: z.string(), departureHz: z.number() })),
    }),
  ),
  ranking: z.array(z.object({ rank: z.number(), graded: sweepGrade, band: bandGrade })),
  losses: z.array(
    z.object({
      deployment: z.string().nullable(),
      reference: z.string().describe("label of the sweep that the others are held against"),
      sweeps: z.array(z.object({ label: z.string(), date: z.string(), at10MHzDb: z.number(), marginDb: z.number() })),
      slopeDbPerMonth: finite,
      slopeMarginDbPerMonth: finite,
    }),
  ),
  onAir: z
    .array(
      z.object({
        before: z.string(),
        after: z.string(),
        band: z.string(),
        swrBefore: finite,
        swrAfter: finite,
        loss: z.object({ at10MHzDb: z.number(), marginDb: z.number() }).nullable(),
        heard: z.object({
          verdict: z.enum(["better", "worse", "cannot-tell"]),
          differenceDb: z.number().nullable(),
          lowDb: z.number().nullable(),
          highDb: z.number().nullable(),
          receivers: z.int(),
        }),
        agreement: z.enum(["loss-confirmed", "loss-not-heard", "worse-without-loss", "better", "nothing"]),
      }),
    )
    .describe("SWR and the air, side by side; empty without reports"),
  changes: z.array(
    z.object({
      deployment: z.string().nullable(),
      measure,
      band: z.string().nullable().describe("null: the loss"),
      course,
      event: z.object({ date: z.string(), what: z.string() }).nullable(),
      size: finite.describe("a fraction, Hz, or dB at 10 MHz"),
      between: between.nullable(),
      rivals: z.array(course),
      sweeps: z.number(),
    }),
  ),
  factors: z.array(
    z.object({
      factor: z.string(),
      of: z.string().describe("1 m more; rain against dry"),
      measure,
      band: z.string().nullable().describe("null: the loss"),
      verdict: z.enum(["effect", "none-seen", "cannot-tell"]),
      effect: finite.describe("a fraction, Hz, or dB at 10 MHz; the other factors held equal"),
      between: between.nullable(),
      why: z.enum(["too-few", "together", "once", "unsure"]).nullable(),
      together: z.string().nullable().describe("the factor that it goes together with"),
      missing: z.record(z.string(), z.string()).nullable().describe("the sweep that would tell"),
      sweeps: z.number(),
    }),
  ),
  tonight: z.array(
    z.object({
      rank: z.number().nullable().describe("null: not known"),
      graded: sweepGrade,
      standing: z.enum(["ready", "own-tuner", "another-tuner", "in-part", "out-of-reach", "not-known"]),
      worst: z.string().describe("the wish that is served worst"),
      hiddenLossDb: finite.describe("loss beside that of the known line that may be what makes the SWR; null: little"),
      hiddenLossIs: z.enum(["most", "more-than-others"]).nullable(),
      why: z.enum(["not-swept", "problem"]).nullable(),
    }),
  ),
  findings,
  cautions,
  totals: z.object({ files: z.number(), graded: z.number(), unreadable: z.number(), points: z.number() }),
}) satisfies z.ZodType<JsonOf<GradeReport>>;
