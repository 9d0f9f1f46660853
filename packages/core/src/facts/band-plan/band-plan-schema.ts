import * as z from "zod";
import { parseWith } from "../../input/parse-with.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { MODE_NAMES } from "../mode-names.js";
import type { BandPlan } from "./band-plan.js";

const emission = z.enum(["cw", "data", "phone", "image", "mcw"]);
const frequencyHz = z.number().positive();
const powerLimit = z.strictObject({ watts: z.number().positive(), basis: z.enum(["pep", "mean", "erp", "eirp"]) });

const grant = z.strictObject({
  classes: z.array(z.string()).min(1),
  emissions: z.array(emission).min(1).exactOptional(),
  maxPower: powerLimit.exactOptional(),
  sidebandMaxPower: powerLimit.exactOptional(),
  alsoMaxTransmitterWattsPep: z.number().positive().exactOptional(),
  confirmed: z.boolean().exactOptional(),
  note: z.string().exactOptional(),
});

const segment = z
  .strictObject({
    lowHz: frequencyHz,
    highHz: frequencyHz,
    use: z.string(),
    grants: z.array(grant).exactOptional(),
    emissions: z.array(emission).exactOptional(),
    excludedModes: z.array(z.enum(MODE_NAMES)).exactOptional(),
    maxBandwidthHz: z.number().positive().exactOptional(),
    maxPower: powerLimit.exactOptional(),
    somewhereLess: z.string().exactOptional(),
    status: z.string().exactOptional(),
    centreHz: frequencyHz.exactOptional(),
    upperSidebandDialHz: frequencyHz.exactOptional(),
    confirmed: z.boolean(),
    sources: z.array(z.string()),
    note: z.string().exactOptional(),
  })
  .refine(({ lowHz, highHz }) => lowHz < highHz, "lowHz must lie below highHz");

/** How far the frequency of a band may be from its wavelength: 80m holds 3.5 to 4 MHz, and a slip is a thousand times off. */
const WAVELENGTH_SLACK = 2;

/** The frequency that a band's name stands for ("40m", "70cm"), Hz; null for other names. */
function frequencyOfName(name: string): number | null {
  const [, length, unit = "m"] = /^(\d+(?:\.\d+)?) ?(m|cm|mm)$/i.exec(name) ?? [];
  const metres = { m: 1, cm: 0.01, mm: 0.001 }[unit.toLowerCase()] ?? 1;
  return length === undefined ? null : SPEED_OF_LIGHT / (Number(length) * metres);
}

function isNearItsName({ band, lowHz, highHz }: { band: string; lowHz: number; highHz: number }): boolean {
  const named = frequencyOfName(band);
  const middle = (lowHz + highHz) / 2;
  return named === null || (middle < WAVELENGTH_SLACK * named && named < WAVELENGTH_SLACK * middle);
}

const band = z
  .strictObject({
    band: z.string().min(1),
    lowHz: frequencyHz,
    highHz: frequencyHz,
    section: z.string().exactOptional(),
    note: z.string().exactOptional(),
    segments: z.array(segment).min(1),
  })
  .refine(isNearItsName, "its edges are not near the wavelength of its name; frequencies are in Hz (7000000, not 7)")
  .refine(
    ({ segments }) => segments.every(({ lowHz }, i) => i === 0 || lowHz >= (segments[i - 1]?.highHz ?? 0)),
    "segments must ascend and not overlap",
  )
  .refine(
    ({ lowHz, highHz, segments }) => segments.every((part) => part.lowHz >= lowHz && part.highHz <= highHz),
    "segments must lie within the band",
  );

/** Where a number of a plan comes from. */
export const planSourceSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  section: z.string().exactOptional(),
  edition: z.string().exactOptional(),
  kind: z.string(),
  read: z.string().exactOptional(),
  url: z.string().exactOptional(),
});

const classUnknown = (name: string, classes: readonly string[]) =>
  `"${name}" does not stand in the classes of the plan${classes.length === 0 ? "" : ` (${classes.join(", ")})`}`;

/**
 * What a band plan file must hold, as a zod schema. Unknown keys are refused, so that a misspelt one is not lost in silence.
 * {@link parseBandPlan} says in plainer words what is wrong.
 */
export const bandPlanSchema = z
  .strictObject({
    $schema: z.string().exactOptional().describe("for your editor; not read"),
    $comment: z.string().exactOptional().describe("anything you like; not read"),
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
    sources: z.array(planSourceSchema),
    bands: z.array(band).min(1),
  })
  .refine(({ bands }) => new Set(bands.map(({ band }) => band)).size === bands.length, "two bands have the same name")
  .refine(
    ({ bands }) => bands.every(({ lowHz }, i) => lowHz >= (bands[i - 1]?.highHz ?? 0)),
    "bands must ascend and not overlap",
  )
  .superRefine(({ classes, bands }, context) => {
    for (const [b, { segments }] of bands.entries()) {
      for (const [s, { grants = [] }] of segments.entries()) {
        for (const [g, grant] of grants.entries()) {
          for (const name of grant.classes.filter((name) => !classes?.includes(name))) {
            const path = ["bands", b, "segments", s, "grants", g, "classes"];
            context.addIssue({ code: "custom", path, message: classUnknown(name, classes ?? []) });
          }
        }
      }
    }
  })
  .refine(({ sources, bands }) => {
    const known = new Set(sources.map(({ id }) => id));
    return bands.every(({ segments }) => segments.every((part) => part.sources.every((id) => known.has(id))));
  }, "every source that a segment names must stand in sources") satisfies z.ZodType<BandPlan>;

/**
 * Checks data that should be a band plan, such as `JSON.parse` gives of a file.
 *
 * @returns the same data
 * @throws Error whose message names each place that is wrong, and for an unknown key the nearest known one
 * @example
 * ```ts
 * import { planById } from "@feedpoint/core";
 * import { parseBandPlan } from "@feedpoint/core/schema";
 *
 * parseBandPlan(planById("itu-r1")).id; // → "itu-r1"
 * ```
 */
export const parseBandPlan = (data: unknown): BandPlan => parseWith(bandPlanSchema, data);
