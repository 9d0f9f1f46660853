/** How long a transmission of a mode takes, with the pause behind it, ms: public protocols; others are taken as a minute long. */
const SLOTS_MS: Readonly<Record<string, number>> = { WSPR: 120_000, FST4W: 120_000, FT8: 15_000, FT4: 7_500 };
const USUAL_MS = 60_000;

export const slotMs = (mode: string | null): number => SLOTS_MS[mode ?? ""] ?? USUAL_MS;

/** The number of the slot that a time lies in; a few seconds early counts as on time. */
export const slotOf = (time: number, mode: string | null): number => Math.floor((time + 2000) / slotMs(mode));

/** A clock may be wrong by so much. */
const SLACK_MS = 10_000;

/**
 * From when to when a transmission is surely on the air: its slot, less what a clock may be wrong by; of a mode without slots the
 * moment itself.
 */
export function slotSpan(time: number, mode: string | null): { readonly start: number; readonly end: number } {
  const length = SLOTS_MS[mode ?? ""];
  if (length === undefined) return { start: time, end: time + 1 };
  const start = slotOf(time, mode) * length;
  const slack = Math.min(SLACK_MS, length / 4);
  return { start: start + slack, end: start + length - slack };
}

/** Two transmissions further apart than this met other conditions (our own choice: fading exceeds 15 dB within an hour). */
export const ADJACENT_MS = 600_000;
