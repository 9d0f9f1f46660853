/** Headers, units and statements of the reference in 21 languages besides English. */
import { present } from "../../support/sweeps.js";
import type { Language } from "./language.js";
import { EAST } from "./languages-east.js";
import { WEST } from "./languages-west.js";
import type { Layout } from "./layout.js";
import { linesOf, tableOf, wrapOf } from "./printed-table.js";
import { type Rng, words } from "./random.js";
import type { Draft } from "./truth.js";

type Say = (names: string, unit?: string) => string;

/** What a table is of: how it is printed, and the heads of its columns; `ohm` may be left out. */
interface Subject {
  kind: string;
  heads: (language: Language, say: Say, ohm: string, bare: string) => string[];
}

const SUBJECTS: Readonly<Record<string, Subject>> = {
  swr: { kind: "swr", heads: ({ swr }, say) => [say(swr)] },
  "return loss": { kind: "return-loss", heads: ({ returnLoss, units }, say) => [say(returnLoss, units.decibel)] },
  "R and X": {
    kind: "r-x",
    heads: ({ resistance, reactance }, say, _ohm, bare) => [say(resistance, bare), say(reactance, bare)],
  },
  "Z and angle": {
    kind: "z-angle",
    heads: ({ impedance, angle, units }, say, ohm) => [say(impedance, ohm), say(angle, units.degree)],
  },
  rho: { kind: "rho", heads: ({ rho }, say) => [say(rho)] },
  "rho and angle": { kind: "gamma-angle", heads: ({ rho, angle, units }, say) => [say(rho), say(angle, units.degree)] },
  "reflected power": { kind: "reflected-share", heads: ({ reflectedPower }, say) => [say(reflectedPower, "%")] },
};
const REFERENCE = "reference";
const REFERRED = ["swr", "return loss"];

/** Where the decimal mark is a point. */
const BY_POINT = new Set(["ja", "zh", "ko"]);

/** A table whose words are all of one language. */
export function languages(rng: Rng): Draft {
  const [name, language] = rng.pick(Object.entries({ ...WEST, ...EAST }));
  const what = rng.pick([...Object.keys(SUBJECTS), REFERENCE]);
  const reference = what === REFERENCE ? rng.pick([75, 75, 100, 200, 300, 450, 600]) : 50;
  const byPoint = BY_POINT.has(name) || rng.chance(0.4);
  const byComma = (): Partial<Layout> => ({ decimal: ",", delimiter: rng.pick([";", ";", "\t", "|"]) });
  const layout = byPoint ? {} : byComma();
  const { kind, heads } = present(SUBJECTS[what === REFERENCE ? rng.pick(REFERRED) : what], what);
  const table = tableOf(rng, { kinds: [kind], reference, layout, plainUnits: true });
  const wrap = wrapOf(rng, table.layout);
  const ohm = rng.pick(language.units.ohm);
  const say: Say = (names, unit = "") => {
    const word = rng.pick(words(names));
    if (rng.chance(0.15)) return wrap(word.toLocaleLowerCase(name), unit);
    return wrap(rng.chance(0.1) ? word.toLocaleUpperCase(name) : word, unit);
  };
  const frequency = say(language.frequency, language.units[table.layout.unit]);
  const bare = rng.chance(0.2) ? "" : ohm;
  table.head = [frequency, ...heads(language, say, ohm, bare)];
  const stated = what === REFERENCE ? [rng.pick(words(language.reference)).replace("{z}", String(reference))] : [];
  const title = rng.chance(0.4) ? [language.title, ""] : [];
  const lines = linesOf(table);
  return {
    variant: `${name}: ${what}`,
    lines: [...title, ...(rng.chance(0.75) ? [...stated, ...lines] : [...lines, ...stated])],
    layout: table.layout,
    truth: { kind: "sweeps", ways: [[table.truth]] },
    clear: true,
    mustCaution: false,
  };
}
