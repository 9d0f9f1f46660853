import { existsSync } from "node:fs";
import { dirname, isAbsolute, join } from "node:path";
import { isPlanFile } from "@feedpoint/answers/asked/find-plan";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import type { Station } from "@feedpoint/core";
import { readJsonFile } from "./json-file.js";

/** Looked for in the current folder where no other is named. */
export const STATION_FILE = "station.json";

/** What the operator states about the station, and the file that says so; null where there is none. */
export interface StationFile {
  readonly file: string | null;
  readonly station: Station;
}

/** A plan of one's own is named as seen from the station file, wherever the command is run. */
function withPlanBeside(station: Station, file: string): Station {
  const { licence } = station;
  if (licence?.plan === undefined || !isPlanFile(licence.plan) || isAbsolute(licence.plan)) return station;
  return { ...station, licence: { ...licence, plan: join(dirname(file), licence.plan) } };
}

/**
 * Reads the station file.
 *
 * @param wanted its name; undefined: `station.json` if it is there; false: none
 * @throws UsageError that names the file and the place in it
 */
export async function readStation(wanted: string | false | undefined): Promise<StationFile> {
  if (wanted === false || (wanted === undefined && !existsSync(STATION_FILE))) return { file: null, station: {} };
  const file = wanted ?? STATION_FILE;
  const data = readJsonFile(file);
  const { parseStation } = await import("@feedpoint/core/schema");
  try {
    return { file, station: withPlanBeside(parseStation(data), file) };
  } catch (error) {
    throw new UsageError(`${file} is no station file: ${(error as Error).message}`);
  }
}
