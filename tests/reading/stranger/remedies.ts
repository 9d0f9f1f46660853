/** The options that a refusal names as its remedy, and whether the file can be read with them. */
import { parseColumnRoles, ReadError, type ReadOptions, readSweeps } from "@feedpoint/core";
import type { Case } from "./truth.js";

/** An option of the command line with the text after it. */
interface Named {
  name: string;
  text: string;
}

const UNITS = ["Hz", "kHz", "MHz", "GHz"] as const;
const DELIMITERS = ["comma", "semicolon", "tab", "space", "bar"] as const;
const DECIMALS = ["point", "comma"] as const;

/** The option of the library for one of the command line; null where no value is named ("say which with --unit or ..."). */
function optionOf({ name, text }: Named): (() => ReadOptions) | null {
  const [unit, delimiter, decimal] = [
    UNITS.find((each) => each === text),
    DELIMITERS.find((each) => each === text),
    DECIMALS.find((each) => each === text),
  ];
  if (name === "columns" && /[:,]/.test(text)) return () => ({ columns: parseColumnRoles(text) });
  if (name === "unit" && unit !== undefined) return () => ({ frequencyUnit: unit });
  if (name === "delimiter" && delimiter !== undefined) return () => ({ delimiter });
  if (name === "decimal" && decimal !== undefined) return () => ({ decimal });
  if (name === "reference-ohms" && Number(text) > 0) return () => ({ referenceOhms: Number(text) });
  return null;
}

/** What a remedy names, one list for each of its alternatives ("--unit Hz, --unit kHz or --unit MHz"). */
export function alternativesIn(remedy: string): Named[][] {
  return remedy
    .split(/,? or |, (?=--)/)
    .map((alternative) => [...alternative.matchAll(/--(columns|unit|delimiter|decimal|reference-ohms) ([^\s()]+)/g)])
    .map((found) => found.map(([, name = "", text = ""]) => ({ name, text: text.replace(/[.,;]+$/, "") })))
    .map((alternative) => alternative.filter((named) => optionOf(named) !== null))
    .filter((alternative) => alternative.length > 0);
}

/** Null if the file can be read with these options; else why not. */
export function refusalWith({ bytes, fileName }: Case, named: readonly Named[]): string | null {
  try {
    const options: ReadOptions = Object.assign({}, ...named.map((each) => optionOf(each)?.()));
    readSweeps(bytes, { ...options, fileName });
    return null;
  } catch (error) {
    if (error instanceof ReadError) return error.message;
    throw error;
  }
}
