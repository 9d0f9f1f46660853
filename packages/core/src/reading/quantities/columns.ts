import { lookUp } from "../../input/look-up.js";
import type { ColumnRole, Quantity } from "../options/column-role.js";
import { frequencyUnitOf } from "../options/units.js";
import { WORDS } from "./header-words.js";
import { wordsOf } from "./name-words.js";

type Meaning = keyof typeof WORDS | "transmission" | "other-port" | "unknown";

const MEANINGS: ReadonlyMap<string, Meaning> = new Map(
  (Object.keys(WORDS) as (keyof typeof WORDS)[]).flatMap((meaning) =>
    WORDS[meaning].map((word) => [word, meaning] as const),
  ),
);

function meaningOf(word: string, port: number): Meaning {
  const parameter = /^s(\d)(\d)$/.exec(word);
  if (parameter !== null) {
    if (parameter[1] !== parameter[2]) return "transmission";
    return Number(parameter[1]) === port ? "reflection" : "other-port";
  }
  // Numbers and names of traces ("trc1", "ch1") say nothing.
  return MEANINGS.get(word) ?? (/^(\d+|(trc|tr|ch)\d+)$/.test(word) ? "filler" : "unknown");
}

/**
 * What a header cell says its column holds. A cell with a word that is not known is left alone: "insertion loss (dB)" must
 * not pass for a reflection because of its dB.
 *
 * @param header the cell's text, brackets and units included
 * @param port the port whose reflection is wanted
 */
export function roleFromHeader(header: string, port = 1): ColumnRole {
  const named = header.replace(REFERENCE, " ");
  if (named !== header) return roleFromHeader(named, port);
  const bare = header.replace(NORMALISED, " ");
  if (bare !== header) return normalised(roleFromHeader(bare, port));
  const words = wordsOf(header);
  const meanings = new Set(words.map((word) => meaningOf(word, port)));
  meanings.delete("filler");
  if (meanings.has("frequency") && isOffset(header))
    return { quantity: "frequency", frequencyUnit: null, isUnknownUnit: true };
  if (meanings.has("frequency")) {
    // A word beside it may be a unit that is not known (THz, rad/s): its numbers must not be taken for Hz or MHz.
    if (meanings.size > 1 && !words.some((word) => frequencyUnitOf(word) !== null) && hasBracket(header)) {
      return { quantity: "frequency", frequencyUnit: null, isUnknownUnit: true };
    }
    return { quantity: "frequency", frequencyUnit: words.map(frequencyUnitOf).find((unit) => unit !== null) ?? null };
  }
  if (meanings.has("transmission")) return { quantity: "transmission" };
  const turned = TURNED.exec(header);
  if (turned !== null && !meanings.has("decibel")) return negated(roleFromHeader(header.slice(turned[0].length), port));
  const squared = SQUARE.exec(header)?.[1];
  if (squared !== undefined && SIZES_OF_REFLECTION.has(roleFromHeader(squared, port).quantity)) return SHARE_OF_POWER;
  if (isAltered(header, meanings)) return { quantity: "other" };
  if (meanings.size === 0 || meanings.has("unknown") || meanings.has("other-port")) return { quantity: "other" };
  /** Whether the cell says all of `needed`, and nothing but those and what may stand beside them. */
  const says = (needed: readonly Meaning[], beside: readonly Meaning[] = []) =>
    needed.every((meaning) => meanings.has(meaning)) &&
    [...meanings].every((meaning) => needed.includes(meaning) || beside.includes(meaning));
  return READINGS.find(({ needed, beside }) => says(needed, beside))?.role(meanings) ?? { quantity: "other" };
}

/** What the readings refer to: "SWR (Z0 = 75 ohm)", "SWR re 50 ohms", "S11 (75 Ω)". */
const REFERENCE =
  /(?<=\S)\s*[([]?\s*(?:(?:@|re|ref\.?|rel\.?|at|z[0o₀])\s*[=:]?\s*\d+(?:[.,]\d+)?\s*(?:ohms?|Ω|ω|\u2126)?|\d+(?:[.,]\d+)?\s*(?:ohms?|Ω|ω|\u2126))\s*[)\]]?$/iu;
/** Divided by the reference impedance: "R/Z0", "X (normalised)", "r / Zo". */
const NORMALISED = /\s*[/÷]\s*z[o0₀](?![\p{L}\d])|[([]?\b(?:normali[sz]ed|norm\.?|normiert)(?![\p{L}\d])[)\]]?/iu;
/** A sign that is turned round: "-X", "−∠S11". */
const TURNED = /^[\s"']*[-−] ?(?=[|\p{L}∠Γρ])/u;
const NEGATABLE: readonly Quantity[] = [
  "reactance",
  "susceptance",
  "parallel-reactance",
  "impedance-angle",
  "reflection-angle",
  "angle",
  "reflection-imaginary",
  "imaginary",
];

const normalised = (role: ColumnRole): ColumnRole =>
  /^(?:resistance|reactance|impedance-magnitude|parallel-|conductance|susceptance)/.test(role.quantity)
    ? { ...role, isNormalised: true }
    : { quantity: "other" };

const negated = (role: ColumnRole): ColumnRole =>
  NEGATABLE.includes(role.quantity) ? { ...role, factor: -(role.factor ?? 1) } : { quantity: "other" };

/** |S11|² is the share of the power that comes back. */
const SQUARE = /^(?![\s"']*1 ?[-−])(.*)(?:\^ ?2|²)[\s)\]]*$/u;
const SHARE_OF_POWER: ColumnRole = { quantity: "reflected-power", percent: true, factor: 100 };

const SIZES_OF_REFLECTION: ReadonlySet<Quantity> = new Set<Quantity>(["reflection", "reflection-magnitude"]);

/** Whether a square is named, what is left of one, or a sign turned round: not the quantity itself. Of decibels the numbers tell the sign. */
function isAltered(header: string, meanings: ReadonlySet<Meaning>): boolean {
  if (/\^ ?\d|[²³]|^[\s"']*1 ?[-−]/u.test(header) || (meanings.has("swr") && /[-−] ?1\s*$/.test(header))) return true;
  const isNegated = /^[\s"']*[-−] ?[|\p{L}]/u.test(header);
  return isNegated && !(meanings.has("decibel") && !meanings.has("magnitude"));
}

/** Counted from another frequency: "offset from 6.9 MHz (kHz)", "f - 2.9 MHz (kHz)", "kHz above 3 MHz". */
const isOffset = (header: string) => /\boffset\b|\bdelta\b|Δ|\d ?[kmg]?hz/iu.test(header);

const hasBracket = (header: string) => /[([/]/.test(header);

const scaled =
  (quantity: Quantity) =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => {
    if (meanings.has("kiloohm")) return { quantity, factor: 1000 };
    if (meanings.has("microsiemens")) return { quantity, factor: 1e-6 };
    return meanings.has("millisiemens") ? { quantity, factor: 0.001 } : { quantity };
  };
const turned =
  (quantity: Quantity) =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => ({
    quantity,
    radians: meanings.has("radians"),
    ...(meanings.has("gons") ? { factor: DEGREES_IN_A_GON } : {}),
  });
/** A right angle has 100 gon. */
const DEGREES_IN_A_GON = 0.9;
const plain = (quantity: Quantity) => (): ColumnRole => ({ quantity });
const assumed = (quantity: Quantity) => (): ColumnRole => ({ quantity, isAssumed: true });

const OHMS: readonly Meaning[] = ["ohm", "kiloohm"];
const SIEMENS: readonly Meaning[] = ["siemens", "millisiemens", "microsiemens"];
const ANGLES: readonly Meaning[] = ["degrees", "radians", "gons"];
const OF_REFLECTION: readonly Meaning[] = ["reflection", "coefficient"];

/** What cells mean, by the meanings of their words; the first reading that fits counts. */
const READINGS: readonly {
  readonly needed: readonly Meaning[];
  readonly beside: readonly Meaning[];
  readonly role: (meanings: ReadonlySet<Meaning>) => ColumnRole;
}[] = [
  { needed: ["swr"], beside: [...OF_REFLECTION, "magnitude", "ohm", "standing", "wave", "ratio"], role: plain("swr") },
  { needed: ["standing", "wave", "ratio"], beside: [], role: plain("swr") },
  { needed: ["returnLoss"], beside: ["decibel", "reflection"], role: plain("return-loss") },
  { needed: ["return", "loss"], beside: ["decibel", "reflection", "magnitude"], role: plain("return-loss") },
  {
    needed: ["reflected", "power"],
    beside: ["percent"],
    role: (meanings) => ({ quantity: "reflected-power", percent: meanings.has("percent") }),
  },
  { needed: ["reflected", "percent"], beside: [], role: () => ({ quantity: "reflected-power", percent: true }) },
  { needed: ["parallelResistance"], beside: [...OHMS, "parallel"], role: scaled("parallel-resistance") },
  { needed: ["parallelReactance"], beside: [...OHMS, "parallel"], role: scaled("parallel-reactance") },
  { needed: ["parallel", "resistance"], beside: OHMS, role: scaled("parallel-resistance") },
  { needed: ["parallel", "reactance"], beside: OHMS, role: scaled("parallel-reactance") },
  { needed: ["reactance", "magnitude"], beside: OHMS, role: scaled("reactance-magnitude") },
  { needed: ["reactance"], beside: [...OHMS, "imaginary", "impedance"], role: scaled("reactance") },
  { needed: ["resistance"], beside: [...OHMS, "real", "impedance"], role: scaled("resistance") },
  { needed: ["impedance", "angle"], beside: ANGLES, role: turned("impedance-angle") },
  { needed: ["impedance", "degrees"], beside: [], role: turned("impedance-angle") },
  { needed: ["impedance", "radians"], beside: [], role: turned("impedance-angle") },
  { needed: ["impedance", "real"], beside: OHMS, role: scaled("resistance") },
  { needed: ["impedance", "imaginary"], beside: OHMS, role: scaled("reactance") },
  { needed: ["admittance", "real"], beside: SIEMENS, role: scaled("conductance") },
  { needed: ["admittance", "imaginary"], beside: SIEMENS, role: scaled("susceptance") },
  { needed: ["impedance"], beside: [...OHMS, "magnitude"], role: scaled("impedance-magnitude") },
  { needed: ["real", "ohm"], beside: ["reflection"], role: scaled("resistance") },
  { needed: ["imaginary", "ohm"], beside: ["reflection"], role: scaled("reactance") },
  { needed: ["conductance"], beside: SIEMENS, role: scaled("conductance") },
  { needed: ["susceptance"], beside: SIEMENS, role: scaled("susceptance") },
  { needed: ["reflection", "angle"], beside: [...ANGLES, "coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "degrees"], beside: ["coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "radians"], beside: ["coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "decibel"], beside: ["magnitude", "coefficient"], role: plain("s11-db") },
  { needed: ["reflection", "real"], beside: ["coefficient"], role: plain("reflection-real") },
  { needed: ["reflection", "imaginary"], beside: ["coefficient"], role: plain("reflection-imaginary") },
  { needed: ["reflection", "magnitude"], beside: ["coefficient"], role: plain("reflection-magnitude") },
  {
    needed: ["reflection", "percent"],
    beside: ["coefficient", "magnitude"],
    role: () => ({ quantity: "reflection-magnitude", percent: true }),
  },
  { needed: ["reflection"], beside: ["coefficient"], role: plain("reflection") },
  { needed: ["decibel"], beside: ["magnitude"], role: assumed("s11-db") },
  { needed: ["angle"], beside: ANGLES, role: turned("angle") },
  { needed: ["degrees"], beside: [], role: turned("angle") },
  { needed: ["radians"], beside: [], role: turned("angle") },
  { needed: ["real"], beside: [], role: assumed("real") },
  { needed: ["imaginary"], beside: [], role: assumed("imaginary") },
  { needed: ["magnitude"], beside: [], role: assumed("reflection-magnitude") },
];

/** The names that `--columns` takes, and what each means. */
const COLUMN_NAMES: Readonly<Record<string, Quantity>> = {
  frequency: "frequency",
  r: "resistance",
  x: "reactance",
  "abs-x": "reactance-magnitude",
  z: "impedance-magnitude",
  "z-angle": "impedance-angle",
  "parallel-r": "parallel-resistance",
  "parallel-x": "parallel-reactance",
  g: "conductance",
  b: "susceptance",
  swr: "swr",
  "return-loss": "return-loss",
  "s11-db": "s11-db",
  rho: "reflection-magnitude",
  angle: "reflection-angle",
  real: "reflection-real",
  imaginary: "reflection-imaginary",
  "reflected-power": "reflected-power",
  skip: "other",
};

/**
 * Reads what the user says of the columns: names from the left, the frequency with its unit ("frequency:MHz,r,x"), an angle
 * with :rad where it is in radians, a share with :percent.
 *
 * Names: frequency, r, x, abs-x, z, z-angle, parallel-r, parallel-x, g, b, swr, return-loss, s11-db, rho, angle, real,
 * imaginary, reflected-power, and skip for a column that is left alone.
 *
 * @throws TypeError naming the word that is not known and those that are
 * @example
 * ```ts
 * import { parseColumnRoles, readSweeps } from "@feedpoint/core";
 *
 * const columns = parseColumnRoles("frequency:MHz,r,x");
 * const [sweep] = readSweeps("7.0 40 -12\n7.1 46 3\n7.2 53 19\n", { columns });
 * sweep.kind; // → "vector"
 * ```
 */
export function parseColumnRoles(text: string): readonly ColumnRole[] {
  return text.split(",").map((part) => {
    const [name = "", unit] = part.trim().toLowerCase().split(":");
    const quantity = lookUp(COLUMN_NAMES, name);
    if (quantity === undefined) {
      throw new TypeError(`"${name}" is no column name; use ${Object.keys(COLUMN_NAMES).join(", ")}`);
    }
    if (quantity === "frequency") {
      const frequencyUnit = unit === undefined ? null : frequencyUnitOf(unit);
      if (unit !== undefined && frequencyUnit === null)
        throw new TypeError(`"${unit}" is no unit of frequency; use Hz, kHz, MHz or GHz`);
      return { quantity, frequencyUnit };
    }
    return { quantity, radians: unit === "rad", percent: unit === "percent" || quantity === "reflected-power" };
  });
}
