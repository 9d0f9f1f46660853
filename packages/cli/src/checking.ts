import { activitiesFor, type CheckResult, check, type Dial, dialOf, type Sweep } from "@feedpoint/core";
import type { Place } from "./options/arguments.js";
import type { Settings } from "./options/settings.js";

/** A sweep checked by the settings, and at places on the dial. */
export const checkedBy = (settings: Settings, sweep: Sweep, places: readonly Place[] = []): CheckResult =>
  check(sweep, { ...settings, dials: dialsAt(places, settings, sweep.frequencyHz) });

/** The dial frequencies that places stand for: those named, in each mode; those of an activity that were swept. */
function dialsAt(
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
