import * as z from "zod";
import type { PlanSource } from "../band-plan/band-plan.js";
import { planSourceSchema } from "../band-plan/band-plan-schema.js";
import type { Activity } from "./activity.js";

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
  frequencyHz: z.number().positive(),
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

/** What a file of activity frequencies must hold, as a zod schema: ascending, and every source that is named must be there. */
export const activitySchema = z
  .strictObject({ sources: z.array(planSourceSchema), activities: z.array(activity).min(1) })
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
