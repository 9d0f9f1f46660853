/** The most that is used of a wide terminal. */
const WIDEST = 160;
/** Charts and what hangs from an indent need as much; no terminal that anybody reads is narrower. */
const NARROWEST = 20;

/**
 * The width that text for a person may take: as COLUMNS wishes (POSIX, environment variables), else that of the terminal.
 *
 * @param unknown where there is no terminal to ask
 */
export function terminalWidth(
  { COLUMNS = "" }: NodeJS.ProcessEnv,
  { columns }: { readonly columns?: number },
  unknown: number,
): number {
  const wished = /^[1-9]\d*$/.test(COLUMNS) ? Number(COLUMNS) : (columns ?? unknown);
  return Math.max(NARROWEST, Math.min(wished, WIDEST));
}
