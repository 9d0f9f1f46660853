import { activitiesFor, type Dial, dialOf, type Sweep } from "@feedpoint/core";
import type { Place } from "./arguments.js";
import type { Settings } from "./settings.js";

/** The dial frequencies that places stand for: those named, in each mode; those of an activity that were swept. */
export function dialsAt(
  places: readonly Place[],
  { modes, bands, plan }: Settings,
  swept: Sweep["frequencyHz"],
): readonly Dial[] {
  const [first = 0, last = 0] = [swept.at(0), swept.at(-1)];
  return places.flatMap((place): readonly Dial[] => {
    if (typeof place === "number") {
      return (modes ?? [null]).map((mode) => ({ frequencyHz: place, mode, activity: null }));
    }
    return activitiesFor({ label: place, ...(plan.region === undefined ? {} : { region: plan.region }) })
      .filter(({ band }) => bands === undefined || bands.includes(band))
      .filter(({ frequencyHz }) => frequencyHz >= first && frequencyHz <= last)
      .map(dialOf);
  });
}
