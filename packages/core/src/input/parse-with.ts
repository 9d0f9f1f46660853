import * as z from "zod";
import { nearestName, suggestion } from "./nearest.js";

/**
 * Checks data from outside against a schema.
 *
 * @throws Error whose message names each place that is wrong ("bands[2].segments[0].lowHz: …"), and for an unknown key the
 *   nearest known one
 */
export function parseWith<Data>(schema: z.ZodType<Data>, data: unknown): Data {
  const hidden = placesOfProto(data);
  if (hidden.length > 0) throw new Error(hidden.map((place) => `${place}: no key may be "__proto__"`).join("; "));
  const result = schema.safeParse(data, { reportInput: true });
  if (result.success) return result.data;
  const said = result.error.issues.map((issue) => `${placeOf(issue.path)}: ${messageOf(schema, issue)}`);
  const more = said.length > MOST_SAID ? `; and ${said.length - MOST_SAID} more` : "";
  throw new Error(said.slice(0, MOST_SAID).join("; ") + more);
}

/** Where an object has "__proto__" for a key of its own, as JSON can give it: schemas of records pass over it in silence. */
function placesOfProto(data: unknown): readonly string[] {
  const found: string[] = [];
  const values = [{ value: data, place: "" }];
  // The list grows while it is walked, until all that is within has been seen.
  for (const { value, place } of values) {
    if (typeof value !== "object" || value === null) continue;
    if (Object.hasOwn(value, "__proto__")) found.push(withoutDot(place));
    for (const [key, inner] of Object.entries(value)) {
      values.push({ value: inner, place: place + placeWithin(Array.isArray(value) ? Number(key) : key) });
    }
  }
  return found;
}

/** More places than this are counted: the file is then another than it was taken for. */
const MOST_SAID = 6;

/** What is wrong in the words of one who writes such a file by hand. */
const KINDS: Readonly<Record<string, string>> = {
  object: "settings in braces, { … }",
  record: "settings in braces, { … }",
  array: "a list in brackets, [ … ]",
  string: "text in quotes",
  number: "a number",
  boolean: "true or false",
  null: "null",
};

function kindOf(input: unknown): string {
  if (input === undefined) return "nothing";
  return KINDS[Array.isArray(input) ? "array" : input === null ? "null" : typeof input] as string;
}

/** Why a number, a list or a text is too small. */
function smallText({ origin, minimum, inclusive }: z.core.$ZodIssueTooSmall): string {
  if (origin !== "number") return "must not be empty";
  return inclusive ? `must be ${minimum} or more` : `must be more than ${minimum}`;
}

/** zod's own words, which are put into others; where a schema has some, they are said. */
const NO_MATCH = /^Invalid string/;
const TOO_SMALL = /^Too small/;

function messageOf(schema: z.ZodType, issue: z.core.$ZodIssue): string {
  if (issue.input === Number.POSITIVE_INFINITY || issue.input === Number.NEGATIVE_INFINITY)
    return "the number is too large (more than 1.8e308)";
  if (issue.code === "invalid_value") return notOneOf(issue.values.map(String), issue.input);
  if (issue.code === "invalid_type") return `expected ${KINDS[issue.expected]}, got ${kindOf(issue.input)}`;
  if (issue.code === "too_small" && TOO_SMALL.test(issue.message)) return smallText(issue);
  if (issue.code === "too_big") return `must be ${issue.maximum} or less`;
  if (issue.code === "invalid_format" && NO_MATCH.test(issue.message)) return "is not written as it must be";
  if (issue.code === "invalid_union") return noneOfThem(issue);
  if (issue.code === "invalid_key") return "no such name is known here";
  if (issue.code !== "unrecognized_keys") return issue.message;
  const known = keysAt(schema, issue.path);
  return issue.keys.map((key) => unknownKey(key, nearestName(key, known))).join(", ");
}

/** Of ways that are of other kinds each, the kinds are named. */
function noneOfThem({ errors, input }: z.core.$ZodIssueInvalidUnion): string {
  const kinds = errors.flatMap(([issue, ...others]) =>
    issue?.code === "invalid_type" && issue.path.length === 0 && others.length === 0
      ? (KINDS[issue.expected] ?? [])
      : [],
  );
  if (kinds.length < errors.length) return "is written in none of the ways that it may be";
  return `expected ${kinds.join(" or ")}, got ${kindOf(input)}`;
}

function notOneOf(values: readonly string[], input: unknown): string {
  const meant = typeof input === "string" ? suggestion(input, values) : "";
  return `expected one of ${values.join(", ")}${typeof input === "string" ? `, got "${input}"` : ""}.${meant}`;
}

const unknownKey = (key: string, nearest: string | null) =>
  `unknown key "${key}"${nearest === null ? "" : ` (did you mean "${nearest}"?)`}`;

const placeOf = (path: readonly PropertyKey[]): string => withoutDot(path.map(placeWithin).join(""));

const placeWithin = (part: PropertyKey): string => (typeof part === "number" ? `[${part}]` : `.${String(part)}`);

const withoutDot = (place: string): string => place.replace(/^\./, "") || "the file";

/** The keys that a schema knows at a place within it. */
function keysAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly string[] {
  const bare = withoutWrapping(schema);
  const [first, ...rest] = path;
  if (bare instanceof z.ZodArray) return keysAt(bare.element, rest);
  if (bare instanceof z.ZodUnion) return bare.options.flatMap((option) => keysAt(option, path));
  if (bare instanceof z.ZodRecord) return first === undefined ? keysOf(bare) : keysAt(bare.valueType, rest);
  if (!(bare instanceof z.ZodObject)) return [];
  if (first === undefined) return Object.keys(bare.shape);
  const inner: unknown = bare.shape[String(first)];
  return inner instanceof z.ZodType ? keysAt(inner, rest) : [];
}

/** The keys that a record may have; none where it takes any. */
const keysOf = ({ keyType }: z.ZodRecord): readonly string[] =>
  keyType instanceof z.ZodEnum ? keyType.options.map(String) : [];

function withoutWrapping(schema: z.core.$ZodType): z.core.$ZodType {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodExactOptional
    ? withoutWrapping(schema.unwrap())
    : schema;
}
