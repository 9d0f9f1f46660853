import * as z from "zod";
import { parseWith } from "../../input/parse-with.js";
import { FEEDLINE_KINDS } from "../feedline/feedline-kinds.js";
import { FIXED_PARTS } from "../fixed-parts.js";
import { MODE_NAMES } from "../mode-names.js";
import type { Station } from "./station.js";

const positive = z.number().positive();
/** Below all amateur bands: a number that small is in MHz. */
const LEAST_HZ = 100_000;
const frequencyHz = positive.min(LEAST_HZ, "frequencies are in Hz: 7100000, not 7.1");
const swr = z.number().min(1);

const WAVE_SPEED = 299_792_458;
/** A band's edges lie within a third of what its wavelength says; another band's do not. */
const FAR_FROM_BAND = Math.log(4 / 3);

/** What a name such as "40m" or "1.25 m" says; NaN where it is no wavelength. */
function wavelengthM(band: string): number {
  const [, number, unit] = /^(\d+(?:\.\d+)?) ?(cm|mm|m)$/.exec(band) ?? [];
  return Number(number) * (unit === "cm" ? 0.01 : unit === "mm" ? 0.001 : 1);
}

/** An object that refuses unknown keys but for a comment. */
const record = <Shape extends z.ZodRawShape>(shape: Shape) =>
  z.strictObject({ $comment: z.string().exactOptional().describe("anything you like; not read"), ...shape });

const licence = record({
  plan: z
    .string()
    .exactOptional()
    .describe("a plan that comes along, or a file such as ./mine.json, as seen from the station file"),
  class: z.string().exactOptional().describe("licence class, where the plan knows classes"),
});

const limits = record({
  swr: swr.exactOptional().describe("SWR up to which you transmit without a tuner (2 where left out)"),
  builtInTunerSwr: swr.exactOptional().describe("SWR that the radio's own tuner matches (3)"),
  wideRangeTunerSwr: swr.exactOptional().describe("SWR that a separate tuner matches (10)"),
});

const modeSettings = record({
  widthHz: positive
    .exactOptional()
    .describe("all that a transmission may reach, Hz: around the dial frequency, or to one side of it for a sideband"),
  bandwidthHz: positive
    .exactOptional()
    .describe("what one signal takes up within that, Hz, held against a segment's limit of bandwidth"),
  dutyFactor: positive.max(1).exactOptional().describe("average over peak power while transmitting, 0 to 1"),
});

const wattsByMode = z.union([positive, z.partialRecord(z.enum(MODE_NAMES), positive)]);

const radio = record({
  ohms: positive.exactOptional().describe("impedance that it is made for, Ω (50 where left out)"),
  powerW: wattsByMode.exactOptional().describe("greatest output, W PEP: one number, or one by mode"),
  tuner: z.enum(["none", "built-in", "wide-range"]).exactOptional().describe("what stands between radio and feedline"),
  tunerLossDb: positive.exactOptional().describe("what its tuner loses where it is used, dB (0.1 to 1 where left out)"),
  reduction: record({
    fromSwr: swr.describe("full power up to this SWR"),
    toSwr: swr.describe("least power from this SWR on; evenly less in between"),
    toW: z.number().min(0).describe("the least power, W"),
  })
    .refine(({ fromSwr, toSwr }) => fromSwr < toSwr, "fromSwr must lie below toSwr")
    .exactOptional()
    .describe("how the radio reduces its power as the SWR rises"),
});

const antenna = record({
  wireLengthM: positive.exactOptional().describe("length of the wire that a cut changes, m"),
  fixed: record({
    what: z.enum(FIXED_PARTS).describe("nothing: all that resonates is cut alike, as both legs of a dipole are"),
    count: z.number().int().positive().exactOptional().describe("how many wires"),
    lengthM: positive.exactOptional().describe("length of each, m"),
  })
    .exactOptional()
    .describe("what stays as it is when the wire is cut"),
  gainDbi: z.number().min(-40).max(40).exactOptional().describe("gain, dBi; a half-wave dipole's 2.15 where left out"),
  transformerLossDb: positive.exactOptional().describe("what its transformer or choke loses, dB"),
  ratedPowerW: wattsByMode
    .exactOptional()
    .describe("the most that its maker allows, W PEP: one number, or one by mode"),
  ratedUpToSwr: swr.exactOptional().describe("the SWR up to which that holds (2 where left out)"),
});

const feedline = record({
  kind: z
    .enum(FEEDLINE_KINDS.map(({ id }) => id))
    .exactOptional()
    .describe("a kind of the catalogue"),
  lengthM: positive.describe("m"),
  characteristicOhms: positive.exactOptional().describe("instead of the kind's"),
  velocityFactor: positive.max(1).exactOptional().describe("instead of the kind's"),
  loss: z
    .array(record({ frequencyHz, dbPer100M: positive }))
    .min(1)
    .refine(
      (values) => values.every(({ frequencyHz }, i) => i === 0 || frequencyHz > (values[i - 1]?.frequencyHz ?? 0)),
      "frequencies must ascend",
    )
    .exactOptional()
    .describe("matched loss at one frequency or more, instead of the kind's"),
  ratedVolts: positive.exactOptional().describe("the most that its maker allows, effective value"),
  ratedAmperes: positive.exactOptional().describe("the most that its maker allows, effective value"),
}).refine(({ kind, loss }) => kind !== undefined || loss !== undefined, "a feedline needs its kind, or its loss");

const people = record({
  distanceM: positive.exactOptional().describe("the least distance of anybody from the wire, m"),
  onAir: positive
    .max(1)
    .exactOptional()
    .describe("share of the worst 6 or 30 minutes that you transmit, above 0 up to 1 (1 where left out)"),
});

const analyser = record({
  directivityDb: positive.describe("corrected directivity, dB (30 to 40 for hand-held ones)"),
  trackingDb: z.number().min(0).exactOptional().describe("reflection tracking error, dB (0 where left out)"),
  sourceMatchDb: positive.exactOptional().describe("corrected source match, dB (no error where left out)"),
});

const shareOfBand = z.number().min(0).max(1).exactOptional();
const gradeShares = record({
  withoutTuner: shareOfBand,
  withBuiltInTuner: shareOfBand,
  withWideRangeTuner: shareOfBand,
});

const valuesOf = (unit: string) =>
  z
    .union([z.array(positive).min(1), z.literal("usual")])
    .exactOptional()
    .describe(`values, ${unit}, or "usual" for any of the E12 series`);

const kindOfLine = z.enum(FEEDLINE_KINDS.map(({ id }) => id));

const parts = record({
  lines: z
    .array(
      record({ kind: kindOfLine, lengthM: positive.exactOptional().describe("as much as is wanted where left out") }),
    )
    .exactOptional()
    .describe("kinds of line, and how much there is of each, m"),
  transformers: z
    .array(
      record({
        ratio: positive.describe("of the impedances: 9 for 9:1"),
        magnetisingHenry: positive.exactOptional().describe("inductance across its low side"),
        leakageHenry: positive.exactOptional().describe("inductance in series with its low side"),
      }),
    )
    .exactOptional(),
  coils: valuesOf("H"),
  capacitors: valuesOf("F"),
  coilQ: positive.exactOptional().describe("Q of the coils (200 where left out)"),
  capacitorQ: positive.exactOptional().describe("Q of the capacitors (1000 where left out)"),
  manualTuner: z.boolean().exactOptional().describe("a tuner that is set by hand, band by band"),
});

/** What a station file must hold, as a zod schema. Everything may be left out; unknown keys are refused. */
export const stationSchema = record({
  $schema: z.string().exactOptional().describe("where an editor finds this schema"),
  $examples: z.unknown().exactOptional().describe("to copy from; not read"),
  licence: licence.exactOptional(),
  bands: z
    .array(z.string())
    .min(1)
    .exactOptional()
    .describe('bands wanted, such as ["40m", "20m"]; all where left out'),
  modes: z
    .partialRecord(z.enum(MODE_NAMES), modeSettings)
    .exactOptional()
    .describe("the modes that you use; {} takes the usual values"),
  limits: limits.exactOptional(),
  radio: radio.exactOptional(),
  antenna: antenna.exactOptional(),
  feedline: feedline.exactOptional().describe("the line between the place of measurement and the antenna"),
  analyser: analyser.exactOptional(),
  parts: parts.exactOptional().describe("parts at hand, to be advised from"),
  people: people.exactOptional().describe("people near the antenna"),
  criteria: record({
    A: gradeShares.exactOptional(),
    B: gradeShares.exactOptional(),
    C: gradeShares.exactOptional(),
    D: gradeShares.exactOptional(),
  })
    .exactOptional()
    .describe("shares of a band that grades ask for, where they differ from the usual"),
  wantedHz: z
    .record(z.string(), frequencyHz)
    .superRefine((wanted, context) => {
      for (const [band, hz] of Object.entries(wanted)) {
        const about = WAVE_SPEED / wavelengthM(band);
        // A name that is no wavelength says nothing of the frequency; one that is not in Hz is refused already.
        if (!Number.isFinite(about) || hz < LEAST_HZ || Math.abs(Math.log(hz / about)) < FAR_FROM_BAND) continue;
        const message = `${band} lies around ${(about / 1e6).toFixed(1)} MHz, not at ${(hz / 1e6).toFixed(3)}`;
        context.addIssue({ code: "custom", path: [band], message });
      }
    })
    .exactOptional()
    .describe('where the dip is wanted, by band, Hz: {"40m": 7100000}'),
}).meta({ title: "feedpoint station file" }) satisfies z.ZodType<Station>;

/**
 * Checks data that should be a station file, such as `JSON.parse` gives of one.
 *
 * @returns the same data
 * @throws Error whose message names each place that is wrong, and for an unknown key the nearest known one
 * @example
 * ```ts
 * import { parseStation } from "@feedpoint/core/schema";
 *
 * parseStation({ bands: ["40m"], radio: { powerW: 100 } }).radio; // → { powerW: 100 }
 * ```
 */
export const parseStation = (data: unknown): Station => parseWith(stationSchema, data);
