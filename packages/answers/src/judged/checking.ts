import {
  activitiesFor,
  type CheckResult,
  check,
  type Deployment,
  type Dial,
  dialOf,
  type Sweep,
  type Tuner,
} from "@feedpoint/core";
import { drawnSweep } from "@feedpoint/core/for-command";
import type { Place } from "../asked/arguments.js";
import type { Settings } from "../asked/settings.js";

/** A deployment with its verdict, and what is drawn and listed of it. */
export interface DrawnCheck {
  readonly sweep: Sweep;
  readonly parts: Deployment["parts"];
  readonly result: CheckResult;
  /** The tuner that was stated */
  readonly tuner: Tuner;
}

/** A deployment checked by the settings, and at places on the dial. */
export const checkedBy = (settings: Settings, deployment: Deployment, places: readonly Place[] = []): CheckResult =>
  check(deployment, { ...settings, dials: dialsAt(places, settings, sweptRange(deployment, settings)) });

/** The same with all that a page draws and lists of it. */
export const drawnCheck = (settings: Settings, deployment: Deployment, places: readonly Place[] = []): DrawnCheck => ({
  sweep: drawnSweep(deployment, settings.plan),
  parts: deployment.parts,
  result: checkedBy(settings, deployment, places),
  tuner: settings.equipment.radio?.tuner ?? "none",
});

/** From the lowest to the highest frequency that is known; of readings that name bands, as far as those reach. */
function sweptRange({ parts }: Deployment, { plan }: Settings): { readonly lowHz: number; readonly highHz: number } {
  const ends = parts.flatMap((sweep) => {
    const named = sweep.kind === "scalar" ? sweep.readings.map(({ band }) => band) : [];
    const bands = plan.bands.filter(({ band }) => named.includes(band));
    const swept = { lowHz: sweep.frequencyHz.at(0) ?? 0, highHz: sweep.frequencyHz.at(-1) ?? 0 };
    return [swept, ...bands];
  });
  return {
    lowHz: Math.min(...ends.map(({ lowHz }) => lowHz)),
    highHz: Math.max(...ends.map(({ highHz }) => highHz)),
  };
}

/** The dial frequencies that places stand for: those named, in each mode; those of an activity that were swept. */
function dialsAt(
  places: readonly Place[],
  { modes, bands, plan }: Settings,
  { lowHz, highHz }: { readonly lowHz: number; readonly highHz: number },
): readonly Dial[] {
  return places.flatMap((place): readonly Dial[] => {
    if (typeof place === "number") {
      return (modes ?? [null]).map((mode) => ({ frequencyHz: place, mode, activity: null }));
    }
    const { label, band } = place;
    const region = plan.region === undefined ? {} : { region: plan.region };
    return activitiesFor({ label, ...(band === null ? {} : { band }), ...region })
      .filter((activity) => bands === undefined || bands.includes(activity.band))
      .filter(({ frequencyHz }) => frequencyHz >= lowHz && frequencyHz <= highHz)
      .map(dialOf);
  });
}
