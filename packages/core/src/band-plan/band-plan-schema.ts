import * as z from "zod";
import { parseWith } from "../parse-with.js";
import type { Activity } from "./activity.js";
import type { BandPlan, PlanSource } from "./band-plan.js";

const emission = z.enum(["cw", "data", "phone", "image", "mcw"]);
const frequencyHz = z.number().positive();
const powerLimit = z.strictObject({ watts: z.number().positive(), basis: z.enum(["pep", "erp", "eirp"]) });

const grant = z.strictObject({
  classes: z.array(z.string()).min(1),
  emissions: z.array(emission).min(1).exactOptional(),
  maxPower: powerLimit.exactOptional(),
  alsoMaxTransmitterWattsPep: z.number().positive().exactOptional(),
  note: z.string().exactOptional(),
});

const segment = z
  .strictObject({
    lowHz: frequencyHz,
    highHz: frequencyHz,
    use: z.string(),
    grants: z.array(grant).exactOptional(),
    emissions: z.array(emission).exactOptional(),
    maxBandwidthHz: z.number().positive().exactOptional(),
    maxPower: powerLimit.exactOptional(),
    status: z.string().exactOptional(),
    centreHz: frequencyHz.exactOptional(),
    upperSidebandDialHz: frequencyHz.exactOptional(),
    confirmed: z.boolean(),
    sources: z.array(z.string()),
    note: z.string().exactOptional(),
  })
  .refine(({ lowHz, highHz }) => lowHz < highHz, "lowHz must lie below highHz");

const band = z
  .strictObject({
    band: z.string().min(1),
    lowHz: frequencyHz,
    highHz: frequencyHz,
    section: z.string().exactOptional(),
    note: z.string().exactOptional(),
    segments: z.array(segment).min(1),
  })
  .refine(
    ({ segments }) => segments.every(({ lowHz }, i) => i === 0 || lowHz >= (segments[i - 1]?.highHz ?? 0)),
    "segments must ascend and not overlap",
  )
  .refine(
    ({ lowHz, highHz, segments }) => segments.every((part) => part.lowHz >= lowHz && part.highHz <= highHz),
    "segments must lie within the band",
  );

const source = z.strictObject({
  id: z.string(),
  title: z.string(),
  section: z.string().exactOptional(),
  edition: z.string().exactOptional(),
  kind: z.string(),
  read: z.string().exactOptional(),
  url: z.string().exactOptional(),
});

/** What a band plan file must hold. Unknown keys are refused, so that a misspelt one is not lost in silence. */
export const bandPlanSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/),
    region: z.enum(["1", "2", "3", "us", "jp", "uk"]).exactOptional(),
    title: z.string(),
    kind: z.enum(["allocation", "licence-privileges", "band-plan"]),
    authority: z.string(),
    edition: z.string(),
    source: z.strictObject({
      title: z.string(),
      section: z.string().exactOptional(),
      url: z.string().nullable().exactOptional(),
    }),
    confirmed: z.boolean(),
    classes: z.array(z.string()).min(1).exactOptional(),
    notes: z.array(z.string()),
    sources: z.array(source),
    bands: z.array(band).min(1),
  })
  .refine(({ sources, bands }) => {
    const known = new Set(sources.map(({ id }) => id));
    return bands.every(({ segments }) => segments.every((part) => part.sources.every((id) => known.has(id))));
  }, "every source that a segment names must stand in sources") satisfies z.ZodType<BandPlan>;

const activity = z.strictObject({
  label: z.string().min(1),
  kind: z.enum([
    "digital",
    "beacon-digital",
    "digital-voice",
    "cw-qrp",
    "cw-slow",
    "ssb-qrp",
    "image",
    "emergency",
    "beacon",
    "am",
    "fm",
  ]),
  band: z.string().min(1),
  frequencyHz,
  dial: z.enum(["usb", "cw", "carrier", "centre"]),
  occupied: z
    .strictObject({ lowOffsetHz: z.number(), highOffsetHz: z.number() })
    .refine(({ lowOffsetHz, highOffsetHz }) => lowOffsetHz < highOffsetHz, "lowOffsetHz must lie below highOffsetHz")
    .exactOptional(),
  regions: z.array(z.enum(["all", "1", "2", "3", "us", "jp", "uk"])).min(1),
  origin: z.enum(["custom", "band-plan"]),
  confirmed: z.boolean(),
  sources: z.array(z.string()).min(1),
  note: z.string().exactOptional(),
});

/** What a file of activity frequencies must hold. */
export const activitySchema = z
  .strictObject({ sources: z.array(source), activities: z.array(activity).min(1) })
  .refine(
    ({ activities }) => activities.every(({ frequencyHz }, i) => frequencyHz >= (activities[i - 1]?.frequencyHz ?? 0)),
    "activities must ascend",
  )
  .refine(({ sources, activities }) => {
    const known = new Set(sources.map(({ id }) => id));
    return activities.every((entry) => entry.sources.every((id) => known.has(id)));
  }, "every source that an activity names must stand in sources") satisfies z.ZodType<{
  readonly sources: readonly PlanSource[];
  readonly activities: readonly Activity[];
}>;

/**
 * Checks data that should be a band plan.
 *
 * @throws Error whose message names each place that is wrong
 */
export const parseBandPlan = (data: unknown): BandPlan => parseWith(bandPlanSchema, data);
