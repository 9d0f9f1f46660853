/** File number i of a seed: its group goes round, all else is by chance that depends on seed and number only. */
import { byHand } from "./by-hand.js";
import { languages } from "./languages.js";
import { encode } from "./layout.js";
import { layouts } from "./layouts.js";
import { ordinary } from "./ordinary.js";
import { preambles } from "./preambles.js";
import { at, Rng } from "./random.js";
import { references } from "./references.js";
import { remarks } from "./remarks.js";
import { series } from "./series.js";
import { treacherous } from "./treacherous.js";
import type { Case, Draft } from "./truth.js";

const GROUPS: readonly (readonly [string, (rng: Rng) => Draft])[] = [
  ["ordinary", ordinary],
  ["preambles", preambles],
  ["references", references],
  ["remarks", remarks],
  ["series", series],
  ["treacherous", treacherous],
  ["by hand", byHand],
  ["languages", languages],
  ["layouts", layouts],
];

export const GROUP_NAMES = GROUPS.map(([name]) => name);

/** Makes a file, with the line ends, the encoding and the name that it happens to have. */
export function caseOf(seed: number, index: number): Case {
  const rng = new Rng(seed, index);
  const [group, make] = at(GROUPS, index % GROUPS.length);
  const draft = make(rng);
  const { eol, encoding } = draft.layout;
  const text = draft.lines.join(eol) + (rng.chance(0.85) ? eol : "");
  const fileName = draft.fileName ?? `mooring-${index}.${rng.pick(["csv", "csv", "txt", "dat", "tsv"])}`;
  return { ...draft, group, index, text, fileName, bytes: encode(text, encoding) };
}
