/**
 * done: and all that was required holds; required: done, but a required verdict fails; input: usage or input error;
 * interrupted: stopped by the operator (128 + SIGINT, as shells have it).
 */
export const EXIT = { done: 0, required: 1, input: 2, interrupted: 130 } as const;

/** A call that cannot be carried out as it was typed. */
export class UsageError extends Error {
  override readonly name = "UsageError";

  /** @param hint what may have been meant, for whoever typed the name; a blank before it */
  constructor(
    message: string,
    readonly hint = "",
  ) {
    super(message);
  }
}

/** What went wrong, with the hint that goes with it. */
export const hintedMessage = (error: unknown): string =>
  error instanceof UsageError ? error.message + error.hint : error instanceof Error ? error.message : String(error);
