import { type HeardResult, SECTORS } from "@feedpoint/core";
import * as z from "zod";
import type { JsonOf } from "./json-of.js";
import { cautions, findings, fraction } from "./parts.js";

export const heard = z.object({
  schema: z.literal("feedpoint/heard@1"),
  transmitter: z.string(),
  deployments: z.array(
    z.object({
      deployment: z.string(),
      band: z.string(),
      reports: z.int(),
      receivers: z.int(),
      medianSnrDb: z.number().nullable(),
      farthestKm: z.number().nullable(),
      first: z.string().describe("ISO 8601, UTC"),
      last: z.string(),
    }),
  ),
  comparisons: z.array(
    z.object({
      before: z.string(),
      after: z.string(),
      band: z.string(),
      verdict: z.enum(["better", "worse", "cannot-tell"]).describe("of after against before"),
      differenceDb: z.number().nullable().describe("after over before, powers taken off; null without a pair"),
      lowDb: z.number().nullable().describe("both ends that hold it with 95 %, by receivers"),
      highDb: z.number().nullable(),
      receivers: z.int(),
      pairs: z.int(),
      switches: z.int().describe("from one to the other, between the two of a pair"),
      sameSlot: z.int(),
      medianGapMs: z.number().nullable().describe("ms between the two of a pair"),
      offScale: z.int().describe("pairs left out, too near an end of the scale"),
      withPowers: z.int().describe("pairs of which both powers were stated"),
      toTell: z
        .object({ ofDb: z.number(), receivers: z.int(), pairs: z.int() })
        .nullable()
        .describe("what it would take to tell a difference of so many dB"),
      sectors: z
        .array(
          z.object({
            sector: z.enum(SECTORS),
            receivers: z.int(),
            pairs: z.int(),
            differenceDb: z.number(),
            lowDb: z.number(),
            highDb: z.number(),
          }),
        )
        .describe("by direction, of three receivers or more"),
      heardOfOne: z.object({
        onlyBefore: z.int(),
        onlyAfter: z.int(),
        receiversBefore: z.int(),
        receiversAfter: z.int(),
        chance: fraction,
      }),
    }),
  ),
  where: z.array(
    z.object({
      deployment: z.string(),
      band: z.string(),
      listeners: z.array(
        z.object({
          receiver: z.string(),
          bearingDeg: z.number(),
          distanceKm: z.number(),
          doubtDeg: z.number(),
          reports: z.int(),
          snrDb: z.number().nullable(),
        }),
      ),
      sectors: z.array(
        z.object({
          sector: z.enum(SECTORS),
          receivers: z.int(),
          reports: z.int(),
          nearestKm: z.number(),
          farthestKm: z.number(),
        }),
      ),
      unplaced: z.int(),
    }),
  ),
  findings,
  cautions,
  totals: z.object({ reports: z.int(), outside: z.int(), ofOthers: z.int(), repeated: z.int(), withoutRatio: z.int() }),
}) satisfies z.ZodType<JsonOf<HeardResult>>;
