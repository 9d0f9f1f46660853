/** A kind of finding: what its code stands for whenever it is met, and what is said of one that has been made. */
export interface FindingKind {
  readonly meaning: string;
  /** One or two sentences, from what the finding holds. They name no option of a command: who shows them adds what helps there */
  readonly words: (params: never) => string;
}

/** "1 row", "2 rows" */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** "line 4", "line 4 and 2 more" */
export const firstOf = (line: number, count: number): string =>
  `line ${line}${count > 1 ? ` and ${count - 1} more` : ""}`;

const MOST_NAMED = 5;

/** Names one after the other, the first few of many. */
export const listed = (names: readonly string[]): string =>
  names.length > MOST_NAMED
    ? `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more`
    : names.join(", ");

export const megahertz = (hertz: number, digits: number): string => (hertz / 1e6).toFixed(digits);
export const kilohertz = (hertz: number): string => `${Math.round(hertz / 1000)} kHz`;
export const swrText = (swr: number): string => (swr === Number.POSITIVE_INFINITY ? "∞" : swr.toFixed(2));
