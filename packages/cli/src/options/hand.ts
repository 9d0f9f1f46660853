import { listOf } from "@feedpoint/answers/asked/arguments";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { FEEDLINE_KINDS, type StatedParts } from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";

const PREFIXES: Readonly<Record<string, number>> = { "": 1, m: 1e-3, u: 1e-6, µ: 1e-6, μ: 1e-6, n: 1e-9, p: 1e-12 };

/** Parts at hand in one list: "rg-58:20,rg-6,9:1,2.2uH,470pF,coils,capacitors,tuner". */
export function handArgument(text: string): StatedParts {
  const words = listOf(text).filter((word) => word !== "");
  if (words.length === 0) throw new UsageError("Name what is at hand, such as rg-58:20,9:1,coils.");
  const parts = words.map((word) => partOf(word));
  return {
    lines: parts.flatMap(({ line }) => line ?? []),
    transformers: parts.flatMap(({ ratio }) => (ratio === undefined ? [] : [{ ratio }])),
    coils: words.includes("coils") ? "usual" : parts.flatMap(({ henry }) => henry ?? []),
    capacitors: words.includes("capacitors") ? "usual" : parts.flatMap(({ farad }) => farad ?? []),
    manualTuner: words.includes("tuner"),
  };
}

function partOf(word: string): {
  readonly line?: { readonly kind: string; readonly lengthM?: number };
  readonly ratio?: number;
  readonly henry?: number;
  readonly farad?: number;
} {
  if (["coils", "capacitors", "tuner"].includes(word)) return {};
  const ratio = /^([\d.]+):1$/.exec(word)?.[1];
  if (ratio !== undefined && Number(ratio) > 0) return { ratio: Number(ratio) };
  const turned = /^1:([\d.]+)$/.exec(word)?.[1];
  if (turned !== undefined) throw new UsageError(`A transformer is named with its high side first: ${turned}:1.`);
  const [, digits, prefix = "", unit] = /^([\d.]+)\s*([munpµμ]?)([HF])$/i.exec(word) ?? [];
  if (digits !== undefined && unit !== undefined) {
    const value = Number((Number(digits) * (PREFIXES[prefix.toLowerCase()] ?? 1)).toPrecision(12));
    if (value > 0) return unit.toUpperCase() === "H" ? { henry: value } : { farad: value };
  }
  const [, name = "", length] = /^(.*?)(?::([\d.]+)\s*m?)?$/.exec(word) ?? [];
  const kinds = FEEDLINE_KINDS.map(({ id }) => id);
  const kind = kinds.find((id) => id === name.toLowerCase());
  if (kind !== undefined && (length === undefined || Number(length) > 0))
    return { line: { kind, ...(length === undefined ? {} : { lengthM: Number(length) }) } };
  throw new UsageError(
    `"${word}" is no part: a kind of line with or without its length (rg-58:20), a transformer (9:1), a coil (2.2uH), a capacitor (470pF), or coils, capacitors, tuner.${suggestion(name, kinds)}`,
  );
}
