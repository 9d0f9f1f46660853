import type {
  BandSummary,
  Cause,
  Feedline,
  Finding,
  FindingCode,
  FindingParams,
  Limits,
  ModeName,
  PlanInfo,
  Point,
  PowerLimit,
  SweepInfo,
} from "@feedpoint/core";
import * as z from "zod";
import type { JsonOf } from "./json-of.js";

/*
 * What several results share. Codes and names to which others may be added are any text here: a program that checks results
 * against a schema should pass over what it does not know, not fall over it.
 */

/** Null where it is infinite, which JSON has no word for. */
export const finite = z.number().nullable();
export const frequencyHz = z.number().describe("Hz");
export const fraction = z.number().describe("0 to 1");

/** Any text, for a type that has more names in later versions. */
const openEnum = <Name extends string>(about: string) => z.string().describe(about) as unknown as z.ZodType<Name>;

export const modeName = openEnum<ModeName>("cw, ssb, data, …");
export const causeCode = openEnum<Cause["code"]>("line-length-changed, loss-added, …");
export const need = z
  .enum(["none", "built-in-tuner", "wide-range-tuner", "beyond-tuner", "unknown"])
  .describe("what the worst swept point takes");

/** Each code has its own, with units in their names; infinite numbers are null. */
const findingParams = z
  .record(z.string(), z.unknown())
  .describe("what the message is made of, by code") as unknown as z.ZodType<JsonOf<FindingParams>>;

const finding = z.object({
  code: openEnum<FindingCode>("stands for one meaning for ever; findings.md lists them"),
  severity: z.enum(["info", "caution", "problem"]),
  message: z.string().describe("for people; its words may change"),
  file: z.string().exactOptional(),
  line: z.number().exactOptional().describe("counted from 1"),
  band: z.string().exactOptional(),
  side: z.enum(["before", "after"]).exactOptional().describe("of a comparison"),
  params: findingParams,
}) satisfies z.ZodType<JsonOf<Finding>>;
export const findings = z.array(finding);
export const cautions = z.array(z.string()).describe("belong beside every result that people see");

export const sweepInfo = z.object({
  file: z.string(),
  label: z.string(),
  kind: z.enum(["vector", "scalar"]).describe("with or without phase"),
  description: z.string().describe("how the file was understood"),
  points: z.number(),
  startHz: frequencyHz,
  stopHz: frequencyHz,
  referenceOhms: z.number(),
  takenAt: z.string().nullable().describe("ISO 8601; null: not stated"),
  findings,
}) satisfies z.ZodType<JsonOf<SweepInfo>>;

export const planInfo = z.object({
  id: z.string(),
  title: z.string(),
  edition: z.string(),
  source: z.object({
    title: z.string(),
    section: z.string().exactOptional(),
    url: z.string().nullable().exactOptional(),
  }),
  licenceClass: z.string().nullable().describe("null: none named"),
  certainty: z
    .enum(["from-sources", "partly-from-memory", "mostly-from-memory", "from-memory"])
    .describe("how much of it was read from a source"),
}) satisfies z.ZodType<JsonOf<PlanInfo>>;

export const limits = z.object({
  swr: z.number(),
  builtInTunerSwr: z.number(),
  wideRangeTunerSwr: z.number(),
}) satisfies z.ZodType<JsonOf<Limits>>;

export const point = z.object({
  frequencyHz,
  swr: finite,
  isAtLeast: z.boolean().describe("true: the instrument's scale ended there"),
  returnLossDb: finite,
  reflectionMagnitude: z.number(),
  resistanceOhms: finite.describe("null without phase"),
  reactanceOhms: finite.describe("null without phase"),
  swrLow: finite.exactOptional().describe("both ends of what the SWR may be, 95 %"),
  swrHigh: finite.exactOptional(),
}) satisfies z.ZodType<JsonOf<Point>>;

export const piece = z.object({ lowHz: frequencyHz, highHz: frequencyHz });
const span = piece.extend({
  widthHz: frequencyHz,
  openLow: z.boolean().describe("true: the sweep or a gap ended it, not the limit"),
  openHigh: z.boolean(),
});

const interval = z.object({ low: z.number(), high: z.number() });
const uncertainty = z.object({
  noise: z.number().describe("standard deviation of ρ that was reckoned with"),
  bestMagnitude: interval,
  bestHz: interval,
  worstMagnitude: interval,
  withinHz: interval,
  lowEdgeHz: interval.nullable(),
  highEdgeHz: interval.nullable(),
});

export const bandSummary = z.object({
  band: z.string(),
  lowHz: frequencyHz,
  highHz: frequencyHz,
  pieces: z.array(piece).describe("what class and modes leave of the band"),
  sweptFraction: fraction,
  best: point.nullable().describe("null: nothing was swept"),
  worst: point.nullable(),
  atLow: point.nullable(),
  atHigh: point.nullable(),
  withinLimit: z.object({ limitSwr: z.number(), widthHz: frequencyHz, fraction, spans: z.array(span) }),
  usable: z.object({ withoutTuner: fraction, withBuiltInTuner: fraction, withWideRangeTuner: fraction }),
  tunerSpans: z
    .object({ builtIn: z.array(span), wideRange: z.array(span) })
    .describe("what each tuner brings within reach"),
  bandwidth: span.nullable().describe("null: the best point is not within the limit"),
  resonances: z.array(point).describe("where the reactance is 0; empty without phase"),
  loadedQ: finite,
  impedanceQ: finite,
  need,
  uncertainty: uncertainty.nullable(),
  restsOn: z
    .enum(["curve", "spots", "stretch"])
    .nullable()
    .describe("stretch: an SWR noted for all of it, so that best and worst stand for no frequency"),
}) satisfies z.ZodType<JsonOf<BandSummary>>;

export const powerLimit = z.object({
  watts: z.number(),
  basis: z.enum(["pep", "mean", "erp", "eirp"]).describe("at the transmitter, or as radiated"),
}) satisfies z.ZodType<JsonOf<PowerLimit>>;

export const feedline = z.object({
  title: z.string(),
  lengthM: z.number(),
  characteristicOhms: z.number(),
  velocityFactor: z.number(),
  loss: z.union([
    z.array(z.object({ frequencyHz, dbPer100M: z.number() })),
    z
      .object({ k0: z.number(), k1: z.number(), k2: z.number() })
      .describe("dB per 100 m: k0 + k1 √f + k2 f, with f in MHz"),
  ]),
  lossIs: z.enum(["typical", "at-least", "stated"]),
  ratedVolts: z.number().nullable(),
  ratedAmperes: z.number().nullable(),
}) satisfies z.ZodType<JsonOf<Feedline>>;
