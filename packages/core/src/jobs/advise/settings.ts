import { impedanceAt } from "../../facts/matching/chain.js";
import { lNetworks } from "../../facts/matching/closed-forms.js";
import type { MatchingPart } from "../../facts/matching/matching-part.js";
import type { PartsAtHand } from "../../facts/matching/parts-at-hand.js";
import { at } from "../../numbers/column.js";
import { AS_IS, type Candidate } from "./candidate.js";
import { sharesIn, type View } from "./view.js";
import { rangeOf } from "./wish-grid.js";

/** Places of a wish at which a tuner is set exactly. */
const PLACES = 9;

/**
 * A tuner of a coil and a capacitor at the radio, set once for each wish: of all settings that match it exactly somewhere, the one
 * that serves most of it.
 *
 * @returns null where no setting serves any of it better than none
 */
export function tunerSettings(view: View, { coilQ, capacitorQ }: PartsAtHand): Candidate | null {
  const asIs = sharesIn(view, AS_IS);
  const settings = view.grid.wishes.map((_, wish) => {
    let best: readonly MatchingPart[] = [];
    let reached = at(asIs.withoutTuner, wish);
    for (const chain of exactSettings(view, wish, coilQ, capacitorQ)) {
      const withoutTuner = at(sharesIn(view, { ...AS_IS, kind: "settings", atRadio: chain }).withoutTuner, wish);
      if (withoutTuner > reached) [best, reached] = [chain, withoutTuner];
    }
    return best;
  });
  return settings.every((chain) => chain.length === 0) ? null : { ...AS_IS, kind: "settings", settings };
}

function exactSettings(
  view: View,
  wish: number,
  coilQ: number,
  capacitorQ: number,
): readonly (readonly MatchingPart[])[] {
  const { radio } = view.endsAt(0);
  const { frequencyHz } = view.grid;
  const [start, end] = rangeOf(view.grid, wish);
  const places = Array.from({ length: PLACES }, (_, k) => start + Math.round((k * (end - 1 - start)) / (PLACES - 1)));
  return [...new Set(places)].flatMap((i) => {
    const angular = 2 * Math.PI * at(frequencyHz, i);
    return lNetworks(impedanceAt(radio, i), view.terms.radioOhms).map(({ nearLoad, seriesOhms, acrossSiemens }) => {
      const series = reactor("series", seriesOhms, angular, coilQ, capacitorQ);
      const across = reactor("across", -1 / acrossSiemens, angular, coilQ, capacitorQ);
      return nearLoad === "across" ? [across, series] : [series, across];
    });
  });
}

/** A coil or a capacitor of a reactance. */
function reactor(
  placing: "series" | "across",
  ohms: number,
  angular: number,
  coilQ: number,
  capacitorQ: number,
): MatchingPart {
  return ohms >= 0
    ? { kind: "coil", placing, inductanceHenry: settable(ohms / angular), q: coilQ }
    : { kind: "capacitor", placing, capacitanceFarad: settable(-1 / (ohms * angular)), q: capacitorQ };
}

/** As finely as the scale of a variable part can be set (our own choice). */
const settable = (value: number): number => Number(value.toPrecision(2));
