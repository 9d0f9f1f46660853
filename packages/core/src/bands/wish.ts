import type { Piece } from "../curve/pieces.js";
import { activitiesFor } from "../facts/activity/activity.js";
import { dialOf } from "../facts/activity/activity-modes.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { usableBands } from "../facts/band-plan/privileges.js";
import { type Mode, occupiedBy } from "../facts/modes.js";
import { type Scope, selectBands } from "./scope.js";

/** Something that the operator wants to do: a band, a mode on a band, or a range of frequencies. */
export interface Wish {
  /** As it is told: "40m", "40m FT8", "7.000-7.100" */
  readonly title: string;
  /** The band that it lies in */
  readonly band: string;
  /** null: whatever may be sent there */
  readonly mode: Mode | null;
  /** Where it takes place: the usable parts of the band, or what a signal on the dial frequency occupies */
  readonly pieces: readonly Piece[];
  /** The dial frequencies of a mode that has its own; empty for all others */
  readonly dialsHz: readonly number[];
  /** How much it counts beside the others, above 0; 1 as a rule */
  readonly weight: number;
}

/** A wish for each band of a scope. */
export const wishesOf = (scope: Scope): readonly Wish[] => selectBands(scope).map((band) => wishFor(band));

/** What one wants of a band: all that may be used of it. */
const wishFor = ({ band, pieces }: Pick<UsableBand, "band" | "pieces">, weight = 1): Wish => ({
  title: band,
  band,
  mode: null,
  pieces,
  dialsHz: [],
  weight,
});

/** What may be used of a band in a mode; null where nothing of it may. */
export function wishInMode({ plan, licenceClass = null }: Scope, band: string, mode: Mode): Wish | null {
  const usable = usableBands(plan, licenceClass, [mode]).find((each) => each.band === band);
  return usable === undefined ? null : { ...wishFor(usable), title: `${band} ${mode.name.toUpperCase()}`, mode };
}

/** Where an activity such as FT8 takes place on a band, as far as it may; null where it has no place there. */
export function wishAtActivity({ plan, licenceClass = null }: Scope, band: string, label: string): Wish | null {
  const region = plan.region === undefined ? {} : { region: plan.region };
  const dials = activitiesFor({ label, band, ...region }).flatMap((activity) => {
    const { frequencyHz, mode } = dialOf(activity);
    return mode === null ? [] : [{ frequencyHz, mode }];
  });
  const [first] = dials;
  if (first === undefined) return null;
  const usable = usableBands(plan, licenceClass, [first.mode]).find((each) => each.band === band);
  const pieces = dials.map(({ frequencyHz, mode }) => {
    const { belowHz, aboveHz } = occupiedBy(mode, frequencyHz);
    return { lowHz: frequencyHz - belowHz, highHz: frequencyHz + aboveHz };
  });
  const allowed = dials
    .map(({ frequencyHz }, i) => ({ frequencyHz, piece: pieces[i] as Piece }))
    .filter(({ piece }) => usable?.pieces.some(({ lowHz, highHz }) => piece.lowHz >= lowHz && piece.highHz <= highHz));
  if (allowed.length === 0) return null;
  return {
    title: `${band} ${label}`,
    band,
    mode: first.mode,
    pieces: allowed.map(({ piece }) => piece),
    dialsHz: allowed.map(({ frequencyHz }) => frequencyHz),
    weight: 1,
  };
}

/** A range of frequencies within one band of the plan; null where it lies in none. */
export function wishBetween({ plan }: Scope, lowHz: number, highHz: number): Wish | null {
  const band = plan.bands.find((each) => lowHz >= each.lowHz && highHz <= each.highHz);
  if (band === undefined) return null;
  const title = `${(lowHz / 1e6).toFixed(3)}-${(highHz / 1e6).toFixed(3)}`;
  return { ...wishFor({ band: band.band, pieces: [{ lowHz, highHz }] }), title };
}
