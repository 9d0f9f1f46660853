import { type FrequencyUnit, frequencyUnitOf } from "./options.js";

/** What a column of a delimited file can hold. Angles, and real and imaginary parts, may lack their subject. */
export type Quantity =
  | "frequency"
  | "resistance"
  | "reactance"
  | "reactance-magnitude"
  | "impedance-magnitude"
  | "impedance-angle"
  | "parallel-resistance"
  | "parallel-reactance"
  | "conductance"
  | "susceptance"
  | "swr"
  | "return-loss"
  | "s11-db"
  | "reflection-magnitude"
  | "reflection-angle"
  | "reflection-real"
  | "reflection-imaginary"
  | "reflected-power"
  | "angle"
  | "real"
  | "imaginary"
  | "transmission"
  | "other";

export interface ColumnRole {
  readonly quantity: Quantity;
  /** Only for frequencies; null where the header does not say */
  readonly frequencyUnit?: FrequencyUnit | null;
  /** Only for angles: radians where the header says so, else degrees */
  readonly radians?: boolean;
  /** Only for reflected power and reflection magnitude: given in per cent */
  readonly percent?: boolean;
}

/** Header words by meaning, lower case without accents: English, German, French, Spanish, Portuguese, Italian, Dutch. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  frequency: [
    "freq",
    "frequency",
    "frequenz",
    "frequence",
    "frecuencia",
    "frequencia",
    "frequenza",
    "frequentie",
    "frq",
    "f",
  ],
  swr: ["swr", "vswr", "ros", "roe", "tos", "swv", "stehwellenverhaltnis", "sgv", "staandegolfverhouding"],
  loss: ["loss", "verlust", "perte", "perdida", "perda", "perdita"],
  return: ["return", "ruckfluss", "retour", "retorno", "ritorno"],
  returnLoss: ["rl", "ruckflussdampfung", "returnloss", "rtnloss"],
  reflected: ["reflected", "reflektiert", "reflechie", "reflejada", "refletida", "riflessa"],
  power: ["power", "leistung", "puissance", "potencia", "potenza", "pwr"],
  reflection: ["s11", "s22", "gamma", "rho", "reflection", "refl", "reflexion", "reflexao", "riflessione", "rc"],
  impedance: [
    "z",
    "z11",
    "zs",
    "impedance",
    "impedanz",
    "scheinwiderstand",
    "impedancia",
    "impedenza",
    "impedantie",
    "imp",
  ],
  resistance: [
    "r",
    "rs",
    "resistance",
    "resistanz",
    "wirkwiderstand",
    "resistencia",
    "resistenza",
    "weerstand",
    "rseries",
  ],
  reactance: [
    "x",
    "xs",
    "reactance",
    "reaktanz",
    "blindwiderstand",
    "reactancia",
    "reatancia",
    "reattanza",
    "reactantie",
    "xseries",
  ],
  parallel: ["parallel", "par", "paralelo", "parallelo"],
  conductance: ["g", "conductance", "leitwert", "conductancia", "conduttanza"],
  susceptance: ["b", "susceptance", "suszeptanz", "susceptancia", "suscettanza"],
  real: ["re", "real", "realteil", "reel", "reelle", "reale"],
  imaginary: ["im", "imag", "imaginary", "imaginar", "imaginarteil", "imaginaire", "imaginaria", "immaginaria"],
  magnitude: ["mag", "mg", "magnitude", "abs", "betrag", "module", "modulo", "lin", "linmag"],
  angle: ["phase", "ang", "angle", "theta", "ph", "arg", "winkel", "phasen", "fase", "angulo", "phi", "phasenwinkel"],
  degrees: ["deg", "degree", "degrees", "grad", "°"],
  radians: ["rad", "radian", "radians"],
  decibel: ["db", "logmag", "log"],
  ohm: ["ohm", "ohms"],
  siemens: ["s", "siemens", "ms", "mho"],
  percent: ["%", "percent", "prozent"],
  spread: ["uncertainty", "unc", "sigma", "std", "stdev", "error", "err", "tolerance"],
};

/**
 * What a header cell says its column holds.
 *
 * @param header the cell's text, brackets and units included
 */
export function roleFromHeader(header: string): ColumnRole {
  const words = wordsOf(header);
  const has = (meaning: string) => words.some((word) => WORDS[meaning]?.includes(word));
  const unit = words.map(frequencyUnitOf).find((found) => found !== null) ?? null;
  if (has("spread")) return { quantity: "other" };
  if (has("frequency") || (unit !== null && words.length === 1)) return { quantity: "frequency", frequencyUnit: unit };
  if (words.some((word) => /^s(12|21|[3-9]\d|\d[3-9])$/.test(word))) return { quantity: "transmission" };
  if (has("swr")) return { quantity: "swr" };
  if (has("returnLoss") || (has("return") && has("loss"))) return { quantity: "return-loss" };
  if (has("reflected") && (has("power") || has("percent"))) return { quantity: "reflected-power", percent: true };
  return partOfSomething(words, has);
}

/** Headers made of a subject (impedance, reflection, …) and a part of it (real, magnitude, angle, …). */
function partOfSomething(words: readonly string[], has: (meaning: string) => boolean): ColumnRole {
  const radians = has("radians");
  const isAngle = has("angle") || has("degrees") || radians;
  const isMagnitude = has("magnitude");
  const isParallel = has("parallel") || words.includes("rp") || words.includes("xp");
  if (isParallel && (has("resistance") || words.includes("rp"))) return { quantity: "parallel-resistance" };
  if (isParallel && (has("reactance") || words.includes("xp"))) return { quantity: "parallel-reactance" };
  if (has("reactance") && !isAngle) return { quantity: isMagnitude ? "reactance-magnitude" : "reactance" };
  if (has("resistance") && !isAngle) return { quantity: "resistance" };
  if (has("impedance") || has("ohm")) {
    if (isAngle) return { quantity: "impedance-angle", radians };
    if (has("real")) return { quantity: "resistance" };
    if (has("imaginary")) return { quantity: "reactance" };
    return has("impedance") ? { quantity: "impedance-magnitude" } : { quantity: "other" };
  }
  if (has("conductance") && words.length <= 2) return { quantity: "conductance" };
  if (has("susceptance") && words.length <= 2) return { quantity: "susceptance" };
  const isReflection = has("reflection") || / s 1 1 | s 2 2 /.test(` ${words.join(" ")} `);
  if (has("decibel") && !isAngle) return { quantity: "s11-db" };
  if (isReflection) {
    if (isAngle) return { quantity: "reflection-angle", radians };
    if (has("real")) return { quantity: "reflection-real" };
    if (has("imaginary")) return { quantity: "reflection-imaginary" };
    return { quantity: "reflection-magnitude", percent: has("percent") };
  }
  if (isAngle) return { quantity: "angle", radians };
  if (has("real")) return { quantity: "real" };
  if (has("imaginary")) return { quantity: "imaginary" };
  if (isMagnitude) return { quantity: "reflection-magnitude" };
  return { quantity: "other" };
}

/** Words of a header: lower case, no accents, "|Z|" as "mag z", brackets and separators as blanks. */
export function wordsOf(header: string): readonly string[] {
  return header
    .replace(/\|([^|]+)\|/g, " mag $1 ")
    .replace(/[Ωω\u2126]/gu, " ohm ")
    .replace(/[ßẞ]/g, "ss")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[ΓΓγ]/gu, " gamma ")
    .replace(/[ρ]/gu, " rho ")
    .replace(/[θϑφ∠]/gu, " theta ")
    .toLowerCase()
    .replace(/\bs\.?w\.?r\.?(?![a-z])/g, "swr")
    .replace(/([°%])/g, " $1 ")
    .split(/[^\p{L}\p{N}°%]+/u)
    .flatMap(
      (word) =>
        GLUED.exec(word)
          ?.slice(1)
          .filter((part) => part !== undefined) ?? [word],
    )
    .filter((word) => word !== "");
}

/** A part and its subject, or a name and its unit of frequency, written as one word: "ReZ", "FreqMHz". */
const GLUED = /^(?:(re|im|mag|ang|arg)(z|s11|gamma)|([a-z]{2,}?)([kmg]?hz))$/;

/** The names that `--columns` takes, and what each means. */
export const COLUMN_NAMES: Readonly<Record<string, Quantity>> = {
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
 * Reads what the user says of the columns: names from the left, the frequency with its unit ("frequency:MHz,r,x").
 *
 * @throws TypeError naming the word that is not known and those that are
 */
export function parseColumnRoles(text: string): readonly ColumnRole[] {
  return text.split(",").map((part) => {
    const [name = "", unit] = part.trim().toLowerCase().split(":");
    const quantity = COLUMN_NAMES[name];
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
