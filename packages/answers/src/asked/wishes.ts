import {
  ACTIVITIES,
  modeOf,
  type Station,
  type UsableBand,
  type Wish,
  wishAtActivity,
  wishBetween,
  wishesOf,
  wishInMode,
} from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";
import { frequencyArgument, listOf, modesArgument } from "./arguments.js";
import { bandName, type ChosenPlan } from "./find-plan.js";
import { UsageError } from "./usage-error.js";

/** A wish as it is typed: "40m", "40m ft8", "7.0-7.1", each with a weight behind a star. */
export interface TypedWish {
  readonly text: string;
  readonly weight: number;
}

export const wishesArgument = (text: string): readonly TypedWish[] =>
  listOf(text).map((part) => {
    const [what = "", weight = "1", ...more] = part.split("*").map((each) => each.trim());
    if (what === "" || more.length > 0)
      throw new UsageError('Bands, modes on them, or ranges in MHz are needed, such as "40m,20m ft8,7.0-7.1".');
    if (!(Number(weight) > 0)) throw new UsageError(`A weight is a number above 0, such as 2 in ${what}*2.`);
    return { text: what, weight: Number(weight) };
  });

type Asked = ChosenPlan & { readonly station: Station };

/** What was typed as wishes of the plan. @throws UsageError for what the plan does not know, or does not permit */
export const wishesFrom = (typed: readonly TypedWish[], asked: Asked): readonly Wish[] =>
  typed.map(({ text, weight }) => ({ ...wishFrom(text, asked), weight }));

function wishFrom(text: string, asked: Asked): Wish {
  const [first = "", ...others] = text.split(/\s+/);
  const [low, high, ...more] = text.split("-");
  if (high !== undefined && more.length === 0 && /^[\d.]/.test(high.trim())) return between(low ?? "", high, asked);
  // "40 m ft8" is written as well.
  const isUnitApart = others[0] === "m" || others[0] === "cm";
  if (others.length === 0 && ACTIVITIES.some(({ label }) => label.toLowerCase() === first.toLowerCase()))
    throw new UsageError(`"${text}": on which band? Say it with the band, such as "20m ${first}".`);
  const band = bandName(isUnitApart ? first + others[0] : first, asked.plan);
  const mode = (isUnitApart ? others.slice(1) : others).join(" ");
  const wish = mode === "" ? wholeBand(band, asked) : inMode(band, mode, asked);
  if (wish === null)
    throw new UsageError(`"${text}": nothing of that may be sent there by ${asked.plan.id}${classText(asked)}.`);
  return wish;
}

const classText = ({ licenceClass }: Asked) => (licenceClass === null ? "" : `, class ${licenceClass}`);

const wholeBand = (band: UsableBand["band"], asked: Asked): Wish | null =>
  wishesOf({ ...asked, bands: [band] })[0] ?? null;

/** An activity such as FT8 has its own dial frequencies; of a mode all counts where it may be sent. */
function inMode(band: string, name: string, asked: Asked): Wish | null {
  const labels = [...new Set(ACTIVITIES.map(({ label }) => label))];
  const label = labels.find((each) => each.toLowerCase() === name.toLowerCase());
  if (label !== undefined) {
    const wish = wishAtActivity(asked, band, label);
    if (wish === null) throw new UsageError(`${label} has no common dial frequency on ${band} that may be used there.`);
    return wish;
  }
  const [mode] = modesOf(name, labels);
  return mode === undefined ? null : wishInMode(asked, band, modeOf(mode, asked.station.modes?.[mode]));
}

function modesOf(name: string, labels: readonly string[]) {
  try {
    return modesArgument(name);
  } catch (error) {
    throw new UsageError(`${(error as Error).message}${suggestion(name, labels)}`);
  }
}

function between(low: string, high: string, asked: Asked): Wish {
  const [lowHz, highHz] = [frequencyOf(low), frequencyOf(high)];
  if (lowHz >= highHz) throw new UsageError(`${low.trim()}-${high.trim()}: the lower frequency comes first.`);
  const wish = wishBetween(asked, lowHz, highHz);
  if (wish === null) throw new UsageError(`${low.trim()}-${high.trim()} MHz lies in no band of ${asked.plan.id}.`);
  return wish;
}

function frequencyOf(text: string): number {
  try {
    return frequencyArgument(text);
  } catch (error) {
    throw new UsageError(`"${text.trim()}": ${(error as Error).message}`);
  }
}
