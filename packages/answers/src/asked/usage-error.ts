/** Something asked for that cannot be carried out as it was put. */
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

/** A file or folder that could not be used, and a sentence that says why. */
export interface Problem {
  readonly file: string;
  readonly reason: string;
}
