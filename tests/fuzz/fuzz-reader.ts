import { readdirSync, readFileSync } from "node:fs";
import { check, planById, ReadError, readSweeps, type Sweep } from "@feedpoint/core";
import { present } from "../support/sweeps.js";
import { mutated } from "./mutate.js";

const FOLDERS = ["../../samples/sweeps/", "../golden/touchstone/"];
const plan = present(planById("us-part97"), "us-part97");

export interface Original {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Forms that no file of the project has: units and marks between thousands in the cells. */
const WRITTEN: Readonly<Record<string, (step: number) => string>> = {
  "units.csv": (step) => `${(7 + step / 100).toFixed(2)} MHz,${20 + step} ohm,${step - 15} Ω`,
  "thousands.csv": (step) => `7.${100 + step}.000;${20 + step},5;${step - 15},25`,
};

/** Every sweep file that the project holds, and some more: what the mutations start from. */
export function originals(root: URL): readonly Original[] {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(new URL(folder, root)).map((name) => ({
      name,
      bytes: new Uint8Array(readFileSync(new URL(`${folder}${name}`, root))),
    })),
  );
  const written = Object.entries(WRITTEN).map(([name, row]) => {
    const rows = Array.from({ length: 40 }, (_, step) => row(step));
    const header = `Frequency${name === "units.csv" ? ",R,X" : " (Hz);R;X"}`;
    return { name, bytes: new TextEncoder().encode([header, ...rows, ""].join("\n")) };
  });
  return [...files, ...written];
}

/** What became of one mutated file. A fault is anything but sweeps that keep their rules, or a ReadError. */
export interface Trial {
  readonly seed: number;
  readonly name: string;
  readonly outcome: "read" | "refused" | "fault";
  readonly fault?: string;
  readonly milliseconds: number;
}

/** Reads the file that a seed makes of the originals, and judges what was read. */
export function trial(files: readonly Original[], seed: number): Trial {
  const original = present(files[seed % files.length], "original");
  const other = present(files[(seed * 7 + 3) % files.length], "other");
  const bytes = mutated(original.bytes, other.bytes, seed);
  const started = performance.now();
  const end = (outcome: Trial["outcome"], fault?: string): Trial => ({
    seed,
    name: original.name,
    outcome,
    ...(fault === undefined ? {} : { fault }),
    milliseconds: performance.now() - started,
  });
  try {
    const sweeps = readSweeps(bytes, { fileName: original.name });
    const broken = sweeps.map(brokenRule).find((rule) => rule !== null);
    if (broken !== undefined) return end("fault", broken ?? "");
    for (const sweep of sweeps.slice(0, 2)) check(sweep, { plan, bands: ["40m"] });
    return end("read");
  } catch (error) {
    if (error instanceof ReadError && error.message !== "" && !/\n/.test(error.message)) return end("refused");
    return end("fault", error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
}

/** The rule of a sweep that does not hold; null where all do. */
function brokenRule({ frequencyHz, reflectionMagnitude }: Sweep): string | null {
  if (frequencyHz.length === 0 || frequencyHz.length !== reflectionMagnitude.length) return "columns of other lengths";
  for (let i = 0; i < frequencyHz.length; i++) {
    const frequency = frequencyHz[i] ?? Number.NaN;
    if (!(frequency > (frequencyHz[i - 1] ?? 0) && Number.isFinite(frequency))) return `frequency ${i}`;
    if (!((reflectionMagnitude[i] ?? -1) >= 0 && Number.isFinite(reflectionMagnitude[i]))) return `magnitude ${i}`;
  }
  return null;
}
