import { checkColumns } from "@feedpoint/answers/tables/check-columns";
import { aboutIn } from "@feedpoint/answers/tables/column";
import { type CheckResult, DEFAULT_LIMITS, EXPOSURE_RULES } from "@feedpoint/core";
import * as z from "zod";
import type { JsonOf } from "./json-of.js";
import {
  bandSummary,
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

const about = aboutIn(checkColumns(DEFAULT_LIMITS));

const verdict = z.enum(["pass", "partial", "fail", "not-swept"]).describe(about("verdict"));

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

const exposure = z.object({
  averageWatts: z
    .number()
    .describe("at the antenna, averaged over the time of a rule, less the loss of the matched line"),
  byRule: z.array(
    z.object({
      rule: z.enum(EXPOSURE_RULES.map(({ id }) => id)),
      distanceM: z.number().describe("from the nearest point of the wire"),
      by: z.enum(["far-field", "near-wire"]),
      greatestWatts: finite.describe("W PEP with which the rule is kept where people are said to be; null: not said"),
    }),
  ),
  isExempt: z
    .enum(["exempt", "not-exempt", "too-near"])
    .nullable()
    .describe("from evaluation, 47 CFR 1.1307(b)(3)(i)(C), with people where they are said to be"),
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
  isRatingCovered: z.boolean().nullable().describe("false: the SWR goes beyond the one that the rating was stated for"),
  exposure: exposure.nullable(),
});

const antennaEnd = z.object({
  frequencyHz,
  matchedLossDb: z.number(),
  antennaSwr: finite,
  totalLossDb: finite,
  extraLossDb: finite,
  deliveredFraction: fraction,
});

const lossRange = z.object({ leastDb: finite, greatestDb: finite });

const bandFeedline = z.object({
  atBest: antennaEnd.nullable(),
  atWorst: antennaEnd.nullable(),
  losses: lossRange.nullable().describe("the least and the most within reach, with standing waves"),
  powerW: finite,
  stress: z.object({ volts: finite, amperes: finite }).nullable().describe("effective values"),
});

const path = z.object({
  line: lossRange.nullable(),
  tuner: lossRange.nullable(),
  transformer: lossRange.nullable(),
  arrives: z.object({ least: fraction, most: fraction }).describe("share of the power that reaches the wire"),
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
  watts: finite.describe("the greatest power there, W PEP"),
  limitedBy: z.enum(["licence", "antenna", "radio"]).nullable(),
  isRatingCovered: z.boolean().nullable(),
  exposure: exposure.nullable(),
});

/** What `check` prints of a sweep. */
export const check = z.object({
  schema: z.literal("feedpoint/check@1"),
  sweep: sweepInfo,
  parts: z.array(
    sweepInfo.extend({
      isByHand: z.boolean().describe("true: readings noted by hand"),
      bands: z.array(z.string()).describe("on which it answers"),
    }),
  ),
  plan: planInfo,
  limits,
  feedline: feedline.nullable(),
  people: z.object({ distanceM: z.number().exactOptional(), onAir: z.number().exactOptional() }),
  bands: z.array(
    bandSummary.extend({
      verdict: verdict.describe("without a tuner"),
      segments: z.array(segment),
      power: z.array(power),
      feedline: bandFeedline.nullable(),
      path: path.nullable().describe("where the power goes before it reaches the wire"),
      answeredBy: z.array(z.number()).describe("places among the parts; empty: nothing was swept"),
    }),
  ),
  dials: z.array(dial),
  findings,
  cautions,
}) satisfies z.ZodType<JsonOf<CheckResult>>;
