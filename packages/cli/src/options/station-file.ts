import { existsSync } from "node:fs";
import type { Station } from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { readJsonFile } from "./json-file.js";

/** Looked for in the current folder where no other is named. */
export const STATION_FILE = "station.json";

/** What the operator states about the station, and the file that says so; null where there is none. */
export interface StationFile {
  readonly file: string | null;
  readonly station: Station;
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
    return { file, station: parseStation(data) };
  } catch (error) {
    throw new UsageError(`${file} is no station file: ${(error as Error).message}`);
  }
}
