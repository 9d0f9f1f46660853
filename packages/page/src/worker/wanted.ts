import { type Place, placesArgument } from "@feedpoint/answers/asked/arguments";
import type { Settings } from "@feedpoint/answers/asked/settings";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type TypedWish, wishesArgument, wishesFrom } from "@feedpoint/answers/asked/wishes";
import { megahertz } from "@feedpoint/answers/text/units";
import { ACTIVITIES, type Wish } from "@feedpoint/core";

/** What the user wants to transmit: places on the dial, and wishes, which can be ranked and advised for. */
interface Wanted {
  readonly places: readonly Place[];
  readonly wishes: readonly TypedWish[];
}

/** "ft8" and "7.1" are places; "20m", "20m ft8" and "7.0-7.1" are wishes. */
function wantedFrom(text: string): Wanted {
  const parts = text
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "");
  const places = parts.flatMap((part) => placesIn(part) ?? []);
  const wishes = parts.filter((part) => placesIn(part) === null).flatMap(wishesArgument);
  return { places, wishes };
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

/** What is wanted, as the plan of the settings knows it. */
export interface Asked {
  /** Where the dial is to be told: what was named, and the activities of the wishes */
  readonly places: readonly Place[];
  readonly typed: readonly TypedWish[];
  readonly wishes: readonly Wish[];
  /** What of it is no wish, and so can neither be ranked nor advised for, in words; empty where all is */
  readonly note: string;
}

/** @throws UsageError for what the plan does not know, or does not permit */
export function askedFor(text: string, settings: Settings): Asked {
  const { places, wishes: typed } = wantedFrom(text);
  const wishes = wishesFrom(typed, settings);
  const names = places.map((place) => (typeof place === "number" ? `${megahertz(place)} MHz` : place.label));
  const note =
    names.length === 0
      ? ""
      : `${names.join(", ")}: named without a band, so nothing is ranked or advised for it. Say the band as well, such as 20m FT8.`;
  return { places: [...places, ...wishes.flatMap(dialsOf)], typed, wishes, note };
}

/** The activity of a wish, on its band. */
function dialsOf({ dialsHz, title, band }: Wish): readonly Place[] {
  const activity = ACTIVITIES.find(({ label }) => title === `${band} ${label}`);
  return dialsHz.length === 0 || activity === undefined ? [] : [{ label: activity.label, band }];
}
