import { readFileSync } from "node:fs";
import {
  type BandPlan,
  COMMON_PLAN_ID,
  DEFAULT_LIMITS,
  type Instrument,
  type Limits,
  parseColumnRoles,
  planById,
  planIds,
  type ReadOptions,
} from "@feedpoint/core";
import { type Command, InvalidArgumentError, Option } from "commander";
import { UsageError } from "./exit.js";
import { reasonOf } from "./files.js";

export const FORMATS = ["table", "json", "ndjson", "csv", "markdown"] as const;
export type Format = (typeof FORMATS)[number];

/** What commander hands over, before it is checked. */
export interface RawOptions {
  readonly plan?: string;
  readonly class?: string;
  readonly bands?: readonly string[];
  readonly limit?: number;
  readonly builtInTuner?: number;
  readonly wideRangeTuner?: number;
  readonly format?: Format;
  readonly json?: boolean;
  readonly systemOhms?: number;
  readonly directivity?: number;
  readonly tracking?: number;
  readonly sourceMatch?: number;
  readonly port?: number;
  readonly referenceOhms?: number;
  readonly delimiter?: ReadOptions["delimiter"];
  readonly decimal?: ReadOptions["decimal"];
  readonly unit?: ReadOptions["frequencyUnit"];
  readonly columns?: ReadOptions["columns"];
  readonly signedReactance?: boolean;
}

/** Everything that judging and presenting need, checked. */
export interface Settings {
  readonly plan: BandPlan;
  readonly licenceClass: string | null;
  readonly bands?: readonly string[];
  readonly limits: Limits;
  readonly format: Format;
  readonly width: number;
  readonly reading: ReadOptions;
  /** SWR is judged against this impedance; null: against each file's own */
  readonly systemOhms: number | null;
  readonly instrument: Instrument | null;
}

/** Adds the options for judging that check, diff and grade share. */
export function addJudgingOptions(command: Command): Command {
  return addFormatOptions(command, FORMATS)
    .option("--plan <name>", `band plan: ${planIds().join(", ")}, or a file such as ./mine.json`)
    .option("--class <class>", "licence class, where the plan knows classes")
    .option("--bands <list>", "bands to judge, such as 40m,20m (default: all of the plan)", listOf)
    .option(
      "--limit <swr>",
      `SWR up to which you transmit without a tuner (default ${DEFAULT_LIMITS.swr})`,
      swrArgument,
    )
    .option(
      "--built-in-tuner <swr>",
      `SWR that a built-in tuner matches (default ${DEFAULT_LIMITS.builtInTunerSwr})`,
      swrArgument,
    )
    .option(
      "--wide-range-tuner <swr>",
      `SWR that a wide-range tuner matches (default ${DEFAULT_LIMITS.wideRangeTunerSwr})`,
      swrArgument,
    );
}

/** Adds the choice of output formats. */
export function addFormatOptions(command: Command, formats: readonly Format[]): Command {
  return command
    .addOption(new Option("--format <format>", "how to print the result (default: table)").choices(formats))
    .option("--json", "short for --format json");
}

/** Adds what is known of radio and analyser, for the commands that judge. */
export function addStationOptions(command: Command): Command {
  return command
    .option("--system-ohms <ohms>", "judge the SWR against this impedance instead of the file's own", positiveArgument)
    .option(
      "--directivity <dB>",
      "corrected directivity of the analyser (30 to 40 for hand-held ones)",
      positiveArgument,
    );
}

/** Adds the options that say how a file is to be read. */
export function addReadingOptions(command: Command): Command {
  return command
    .option("--port <number>", "port of a file with several (default 1)", wholeNumberArgument)
    .option("--reference-ohms <ohms>", "reference impedance of a file that states none (default 50)", positiveArgument)
    .addOption(
      new Option("--delimiter <name>", "what splits the columns").choices(["comma", "semicolon", "tab", "space"]),
    )
    .addOption(new Option("--decimal <mark>", "decimal mark").choices(["point", "comma"]))
    .addOption(new Option("--unit <unit>", "unit of frequency").choices(["Hz", "kHz", "MHz", "GHz"]))
    .option(
      "--columns <list>",
      "what the columns hold, such as frequency:MHz,r,x or frequency:Hz,skip,swr",
      columnsArgument,
    )
    .option("--signed-reactance", "the reactance has its sign although it is nowhere negative");
}

/** Turns what was typed into settings. @throws UsageError naming the option and what it takes */
export async function settingsFrom(raw: RawOptions): Promise<Settings> {
  const limits = limitsFrom(raw);
  return {
    ...(await planSettings(raw)),
    limits,
    ...outputFrom(raw),
    reading: readingFrom(raw),
    systemOhms: raw.systemOhms ?? null,
    instrument: instrumentFrom(raw),
  };
}

/** The plan, class and bands that were asked for. */
export async function planSettings(
  raw: Pick<RawOptions, "plan" | "class" | "bands">,
): Promise<Pick<Settings, "plan" | "licenceClass" | "bands">> {
  const plan = await findPlan(raw.plan ?? COMMON_PLAN_ID);
  const bands = raw.bands?.map((name) => bandName(name, plan));
  return { plan, licenceClass: licenceClass(raw.class, plan), ...(bands === undefined ? {} : { bands }) };
}

/** Columns of text where there is no terminal to ask, and the most that is used of a wide one. */
const UNKNOWN_WIDTH = 120;
const WIDEST = 160;

/** How to print: the format, and the width that text may take. */
export function outputFrom(raw: RawOptions): { readonly format: Format; readonly width: number } {
  if (raw.json && raw.format !== undefined && raw.format !== "json") {
    throw new UsageError(`--json and --format ${raw.format} contradict each other.`);
  }
  return {
    format: raw.json ? "json" : (raw.format ?? "table"),
    width: Math.max(60, Math.min(process.stdout.columns ?? UNKNOWN_WIDTH, WIDEST)),
  };
}

/** What the user says about the files. */
export function readingFrom(raw: RawOptions): ReadOptions {
  return withoutUndefined({
    port: raw.port,
    referenceOhms: raw.referenceOhms,
    delimiter: raw.delimiter,
    decimal: raw.decimal,
    frequencyUnit: raw.unit,
    columns: raw.columns,
    signedReactance: raw.signedReactance,
  });
}

function instrumentFrom({ directivity, tracking, sourceMatch }: RawOptions): Instrument | null {
  if (directivity === undefined) {
    if (tracking === undefined && sourceMatch === undefined) return null;
    throw new UsageError("--tracking and --source-match need --directivity.");
  }
  return {
    directivityDb: directivity,
    ...(tracking === undefined ? {} : { trackingDb: tracking }),
    ...(sourceMatch === undefined ? {} : { sourceMatchDb: sourceMatch }),
  };
}

/** The plan of a name, or from a file. */
export async function findPlan(name: string): Promise<BandPlan> {
  const known = planById(name);
  if (known !== null) return known;
  if (!/[/\\]|\.json$/i.test(name)) throw new UsageError(`There is no plan "${name}". Plans: ${planIds().join(", ")}.`);
  let text: string;
  try {
    text = readFileSync(name, "utf8");
  } catch (error) {
    throw new UsageError(`${name}: ${reasonOf(error)}.`);
  }
  const { parseBandPlan } = await import("@feedpoint/core/schema");
  try {
    return parseBandPlan(JSON.parse(text));
  } catch (error) {
    throw new UsageError(`${name} is no band plan: ${(error as Error).message}.`);
  }
}

function limitsFrom({ limit, builtInTuner, wideRangeTuner }: RawOptions): Limits {
  const limits = {
    swr: limit ?? DEFAULT_LIMITS.swr,
    builtInTunerSwr: builtInTuner ?? Math.max(DEFAULT_LIMITS.builtInTunerSwr, limit ?? 0),
    wideRangeTunerSwr: wideRangeTuner ?? Math.max(DEFAULT_LIMITS.wideRangeTunerSwr, builtInTuner ?? 0, limit ?? 0),
  };
  if (limits.swr > limits.builtInTunerSwr || limits.builtInTunerSwr > limits.wideRangeTunerSwr) {
    throw new UsageError("--limit, --built-in-tuner and --wide-range-tuner must ascend in this order.");
  }
  return limits;
}

function licenceClass(name: string | undefined, plan: BandPlan): string | null {
  if (name === undefined) return null;
  if (plan.classes === undefined)
    throw new UsageError(
      `The plan ${plan.id} knows no licence classes. Leave out --class, or choose a plan that does (--plan us-part97).`,
    );
  const found = plan.classes.find((known) => known.toLowerCase() === name.toLowerCase());
  if (found === undefined)
    throw new UsageError(`There is no class "${name}" in ${plan.id}. Classes: ${plan.classes.join(", ")}.`);
  return found;
}

/** "40", "40m" and "40 m" are all the band "40m". */
function bandName(name: string, plan: BandPlan): string {
  const wanted = name.toLowerCase().replace(/\s/g, "");
  const found = plan.bands.find(({ band }) => band === wanted || band === `${wanted}m`);
  if (found === undefined) {
    throw new UsageError(
      `There is no band "${name}" in ${plan.id}. Bands: ${plan.bands.map(({ band }) => band).join(", ")}.`,
    );
  }
  return found.band;
}

export const listOf = (text: string) => text.split(",").map((part) => part.trim());

function swrArgument(text: string): number {
  const value = Number(text.replace(/:1$/, ""));
  if (!(value >= 1 && Number.isFinite(value)))
    throw new InvalidArgumentError("An SWR is a number of 1 or more, with a decimal point.");
  return value;
}

function positiveArgument(text: string): number {
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) throw new InvalidArgumentError("A number above 0 is needed.");
  return value;
}

export function wholeNumberArgument(text: string): number {
  const value = Number(text);
  if (!(Number.isInteger(value) && value > 0)) throw new InvalidArgumentError("A whole number above 0 is needed.");
  return value;
}

function columnsArgument(text: string) {
  try {
    return parseColumnRoles(text);
  } catch (error) {
    throw new InvalidArgumentError((error as Error).message);
  }
}

/** An object without the keys whose value is undefined. */
function withoutUndefined<Shape extends object>(
  shape: Shape,
): { [Key in keyof Shape]?: Exclude<Shape[Key], undefined> } {
  return Object.fromEntries(Object.entries(shape).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Shape]?: Exclude<Shape[Key], undefined>;
  };
}
