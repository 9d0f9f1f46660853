import { basename } from "@feedpoint/answers/asked/paths";
import { hintedMessage, UsageError } from "@feedpoint/answers/asked/usage-error";
import {
  type DecimalMark,
  type Delimiter,
  type FrequencyUnit,
  parseColumnRoles,
  ReadError,
  type ReadOptions,
} from "@feedpoint/core";
import type { Question, ReadAs, Source, Unread } from "../protocol.js";

/** Options of the command that a remedy may name, as the questions that the page asks. */
const QUESTIONS: Readonly<Record<string, Question>> = {
  "--unit": "unit",
  "--columns": "columns",
  "--reference-ohms": "reference",
  "--decimal": "decimal",
  "--delimiter": "delimiter",
  "--signed-reactance": "sign",
  "--port": "port",
};

/**
 * Why a source could not be read, without the options that the command would name, and the questions that stand for them: those of the
 * file, and those that were answered before, so that an answer can be mended.
 */
export function unreadBecause(error: unknown, { id, readAs }: Pick<Source, "id" | "readAs">): Unread {
  const said = (Object.keys(readAs) as Question[]).filter((question) => isSaid(readAs[question]));
  if (!(error instanceof ReadError))
    return { source: id, reason: hintedMessage(error), questions: said, proposed: readAs };
  const problem = { ...error.problem, file: basename(error.problem.file) };
  const { remedy = "", ...withoutRemedy } = problem;
  const named = [...remedy.matchAll(/--[a-z-]+/g)].flatMap(([option]) => QUESTIONS[option] ?? []);
  const columns = /--columns (\S+?)\.?(?:\s|,\s|$)/.exec(remedy)?.[1];
  return {
    source: id,
    reason: new ReadError(remedy.includes("--") ? withoutRemedy : problem).message,
    questions: [...new Set([...named, ...said])],
    proposed: { ...(columns === undefined ? {} : { columns }), ...readAs },
  };
}

/** What the user says about a file, checked. @throws UsageError naming what is wrong */
export function readOptionsOf({ unit, columns, reference, decimal, delimiter, sign, port }: ReadAs): ReadOptions {
  return {
    // Names that the form offers; the reader refuses any other.
    ...(isSaid(unit) ? { frequencyUnit: unit as FrequencyUnit } : {}),
    ...(isSaid(decimal) ? { decimal: decimal as DecimalMark } : {}),
    ...(isSaid(delimiter) ? { delimiter: delimiter as Delimiter } : {}),
    ...(isSaid(columns) ? { columns: rolesOf(columns) } : {}),
    ...(isSaid(reference) ? { referenceOhms: numberOf(reference, "A reference is a number of ohms above 0.") } : {}),
    ...(isSaid(port) ? { port: numberOf(port, "A port is a number from 1.") } : {}),
    ...(isSaid(sign) ? { signedReactance: true } : {}),
  };
}

const isSaid = (text: string | undefined): text is string => text !== undefined && text.trim() !== "";

function rolesOf(text: string) {
  try {
    return parseColumnRoles(text);
  } catch (error) {
    throw new UsageError((error as Error).message);
  }
}

function numberOf(text: string, otherwise: string): number {
  const value = Number(text.replace(",", "."));
  if (!(value > 0 && Number.isFinite(value))) throw new UsageError(otherwise);
  return value;
}
