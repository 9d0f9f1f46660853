/** What of a message may be held to something: its numbers, and whether two of them say the same, but never their words. */

export const numbersIn = (message = ""): number[] => (message.match(/\d+(\.\d+)?/g) ?? []).map(Number);

/** A message without its numbers, to be held against another one. */
export const wordsOf = (message = ""): string => message.replace(/\d+(\.\d+)?/g, "#");
