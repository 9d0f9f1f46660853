/**
 * done: and all that was required holds; required: done, but a required verdict fails; input: usage or input error;
 * interrupted: stopped by the operator (128 + SIGINT, as shells have it).
 */
export const EXIT = { done: 0, required: 1, input: 2, interrupted: 130 } as const;
