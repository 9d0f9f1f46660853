/** A result as JSON holds it: where a number may be infinite there is null, and nothing is read only. */
export type JsonOf<Result> = Result extends number
  ? number | null
  : Result extends readonly (infer Item)[]
    ? JsonOf<Item>[]
    : Result extends object
      ? { -readonly [Key in keyof Result]: JsonOf<Result[Key]> }
      : Result;
