import * as z from "zod";
import { nearestName, suggestion } from "./nearest.js";

/**
 * Checks data from outside against a schema.
 *
 * @throws Error whose message names each place that is wrong ("bands[2].segments[0].lowHz: …"), and for an unknown key the
 *   nearest known one
 */
export function parseWith<Data>(schema: z.ZodType<Data>, data: unknown): Data {
  const result = schema.safeParse(data, { reportInput: true });
  if (result.success) return result.data;
  throw new Error(result.error.issues.map((issue) => `${placeOf(issue.path)}: ${messageOf(schema, issue)}`).join("; "));
}

function messageOf(schema: z.ZodType, issue: z.core.$ZodIssue): string {
  if (issue.code === "invalid_value") return notOneOf(issue.values.map(String), issue.input);
  if (issue.code !== "unrecognized_keys") return issue.message;
  const known = keysAt(schema, issue.path);
  return issue.keys.map((key) => unknownKey(key, nearestName(key, known))).join(", ");
}

function notOneOf(values: readonly string[], input: unknown): string {
  const meant = typeof input === "string" ? suggestion(input, values) : "";
  return `expected one of ${values.join(", ")}${typeof input === "string" ? `, got "${input}"` : ""}.${meant}`;
}

const unknownKey = (key: string, nearest: string | null) =>
  `unknown key "${key}"${nearest === null ? "" : ` (did you mean "${nearest}"?)`}`;

function placeOf(path: readonly PropertyKey[]): string {
  const place = path.map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`)).join("");
  return place.replace(/^\./, "") || "the file";
}

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
