/** The fields of the station form, out of the schema of the station file. */

/** As much of JSON Schema as the station file uses. */
export interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly enum?: readonly string[];
  readonly const?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
}

/**
 * What a field takes: a number; one of some words; yes or nothing; words with commas between; one number, or some by key; numbers, or
 * a word in their place; numbers by key; keys of which each may hold more; records, a line each.
 */
export type FieldKind =
  | "number"
  | "choice"
  | "yes"
  | "words"
  | "number-or-by-key"
  | "numbers-or-word"
  | "by-key"
  | "keys"
  | "records";

export interface Field {
  readonly path: readonly string[];
  readonly kind: FieldKind;
  /** The words that it takes, where there are only some */
  readonly choices: readonly string[];
  readonly help: string;
}

/** All fields below a schema, in its order; comments have none. */
export function fieldsOf(schema: Schema, path: readonly string[] = []): readonly Field[] {
  return Object.entries(schema.properties ?? {})
    .filter(([key]) => !key.startsWith("$"))
    .flatMap(([key, below]): readonly Field[] => {
      const own = [...path, key];
      if (below.properties !== undefined) return fieldsOf(below, own);
      return [{ path: own, kind: kindOf(below), choices: below.enum ?? [], help: below.description ?? "" }];
    });
}

function kindOf({ type, enum: words, anyOf, items, additionalProperties }: Schema): FieldKind {
  if (words !== undefined) return "choice";
  if (anyOf !== undefined)
    return anyOf.some((each) => each.const !== undefined) ? "numbers-or-word" : "number-or-by-key";
  if (type === "boolean") return "yes";
  if (type === "number") return "number";
  if (type === "array") return items?.type === "object" ? "records" : "words";
  return typeof additionalProperties === "object" && additionalProperties.type === "number" ? "by-key" : "keys";
}
