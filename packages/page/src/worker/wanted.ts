import { type Place, placesArgument } from "@feedpoint/answers/asked/arguments";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type TypedWish, wishesArgument } from "@feedpoint/answers/asked/wishes";
import { ACTIVITIES } from "@feedpoint/core";

/** What the user wants to transmit: places on the dial for a check, wishes for a grade and for advice. */
export interface Wanted {
  readonly places: readonly Place[];
  readonly wishes: readonly TypedWish[];
}

/** "ft8", "7.1" and the dials of "20m ft8" are places; "20m", "20m ft8" and "7.0-7.1" are wishes. */
export function wantedFrom(text: string): Wanted {
  const parts = text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const places = parts.flatMap((part) => placesIn(part) ?? activityIn(part));
  const wishes = parts.filter((part) => placesIn(part) === null).flatMap(wishesArgument);
  return { places: [...new Set(places)], wishes };
}

/** null for what is no place; a range begins with digits as a frequency does. */
function placesIn(part: string): readonly Place[] | null {
  try {
    return /^[\d.]+\s*-/.test(part) ? null : placesArgument(part);
  } catch (error) {
    if (error instanceof UsageError) return null;
    throw error;
  }
}

/** The activity that a wish names behind its band. */
function activityIn(part: string): readonly Place[] {
  const [, ...rest] = part.replace(/\*.*$/, "").trim().split(/\s+/);
  const said = rest
    .filter((word) => word !== "m")
    .join(" ")
    .toLowerCase();
  return ACTIVITIES.filter(({ label }) => label.toLowerCase() === said)
    .map(({ label }) => label)
    .slice(0, 1);
}
