import { once } from "../../numbers/once.js";
import type { ColumnRole } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";

/** A reading of one of several series: its role, and what its name says of the series. */
export interface NamedSeries {
  readonly role: ColumnRole;
  readonly series: string;
}

/** Whether a column holds a reflection, and not what goes through. */
export const isReflection = ({ quantity }: ColumnRole): boolean =>
  quantity !== "other" && quantity !== "frequency" && quantity !== "transmission";

/** What tells of a reading, and is none of another series. */
export const NO_SERIES =
  /wanted|desired|ideal|goal|required|mask|err|uncert|±|\+\/-|sigma|std|dev|delta(?! ?loop)|diff|minus|change|limit|soll|allowed|permitted|threshold|rank|grenz|zulässig|target|trend|spread|tolerance|noise/i;
const UNIT_BEHIND = /\s*[([](?:ohms?|Ω|k?ohm|db|deg|°|%|rad|x:1)[)\]]\s*$/i;
/** No name of a column has more words. */
const MOST_WORDS = 16;
const EDGE_NUMBER = /^[-–:([\d.,]+$/;

/** Behind a reading without brackets: "Return loss dB" */
const IS_UNIT = /^(?:dB|k?ohms?|k?[Ω\u2126]|deg|°|%|rad|x:1|:1)$/iu;

/** A name that holds that of a reading, and words for the series before or behind it: the longest name that is one. */
export function partOfSeries(name: string): NamedSeries | null {
  const unit = UNIT_BEHIND.exec(name)?.[0] ?? "";
  const words = name
    .slice(0, name.length - unit.length)
    .split(/\s+|(?<=[)\]])(?=[^\s])|_|(?<=^(?:SWR|RL|R|X))(?=\d$)/)
    .filter((word) => word !== "");
  if (words.length > MOST_WORDS) return null;
  const parts = Array.from({ length: Math.max(0, words.length - 1) }, (_, i) => i + 1).flatMap((count) => [
    { reading: words.slice(0, count), rest: words.slice(count) },
    { reading: words.slice(-count), rest: words.slice(0, -count) },
  ]);
  const found = parts.flatMap(({ reading, rest }) => {
    // A number at its edge belongs to the words beside it: "6 m".
    if (EDGE_NUMBER.test(reading.at(-1) ?? "") || EDGE_NUMBER.test(reading[0] ?? "")) return [];
    const text = reading.join(" ").replace(/[-–:,]+$/, "");
    const role = roleFromHeader(text + unit);
    const series = rest.join(" ").replace(/^[-–:,(\s[]+|[-–:,)\s\]]+$/g, "");
    return isReflection(role) && !role.isAssumed && series !== "" && !IS_UNIT.test(series)
      ? [{ role, series, length: text.length }]
      : [];
  });
  return found.reduce<(NamedSeries & { length: number }) | null>(
    (best, part) => (best === null || part.length > best.length ? part : best),
    null,
  );
}

/** What no antenna showed. */
export const isReckoned = once(
  () =>
    /minus|less|plus|times|(?<!\p{L})(?:half|twice|double|log|ln|delta|tenths?|hundredths?|zehntel|hundertstel)(?!\p{L})|Δ|model|simul|calc|theor|expect|berechn|dBm?(?!\p{L})|[*×÷²]|x ?10/iu,
);
