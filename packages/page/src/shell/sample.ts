import type { Chosen } from "./flows.js";

/** Names and texts of the sample sweeps, put here by the build. */
declare const SAMPLE: readonly (readonly [name: string, text: string])[];

/** The invented sample. */
export const sample = (): readonly Chosen[] =>
  SAMPLE.map(([name, text]) => ({ path: `invented sample/${name}`, content: new Blob([text]) }));
