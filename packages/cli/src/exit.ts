/** done: and all that was required holds; required: done, but a required verdict fails; input: usage or input error. */
export const EXIT = { done: 0, required: 1, input: 2 } as const;

/** A call that cannot be carried out as it was typed. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
