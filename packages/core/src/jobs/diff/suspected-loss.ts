import { median } from "simple-statistics";
import { at } from "../../numbers/column.js";
import { returnLossDb } from "../../reflection/swr.js";
import type { Cause } from "./cause.js";
import { commonAxis } from "./common-samples.js";
import { knownMagnitudeAt, type SideCurve } from "./side-curve.js";

/** Where one of the sweeps reflected this much, next to nothing reaches the antenna, whatever its shape. */
const FAR_FROM_MATCHED = 0.7;
const FEWEST_SAMPLES = 12;
/** Change of the return loss there that is remarkable, dB (there and back), and the share of samples that must show it. */
const LEAST_CHANGE_DB = 0.5;
const LEAST_SHARE = 0.8;

/**
 * Loss that has grown or fallen, by the size of the reflection alone: an antenna far from matched sends nearly everything
 * back, so a return loss that changes one way nearly everywhere there speaks for loss on the way (or in a joint), not for
 * another antenna.
 */
export function suspectedLoss(before: SideCurve, after: SideCurve): readonly Cause[] {
  const changes = changesFarFromMatched(before, after);
  if (changes.length < FEWEST_SAMPLES) return [];
  const middle = median([...changes]);
  const share = changes.filter((change) => change * middle > 0).length / changes.length;
  if (Math.abs(middle) < LEAST_CHANGE_DB || share < LEAST_SHARE) return [];
  const evidence = { returnLossChangeDb: middle, shareOfSamples: share };
  const amount = `${Math.abs(middle).toFixed(1)} dB`;
  return [
    middle > 0
      ? {
          code: "loss-added",
          confidence: "possible",
          evidence,
          message: `Where the antenna was far from matched, ${amount} more of the return is missing now: loss does that (a wet line, a poor joint, a resistance). Check line and joints before calling a lower SWR better.`,
        }
      : {
          code: "loss-removed",
          confidence: "possible",
          evidence,
          message: `Where the antenna was far from matched, ${amount} more comes back now: less loss on the way does that. A higher SWR is then no worse antenna.`,
        },
  ];
}

/** Changes of the return loss where one of the sweeps was far from matched, dB. */
function changesFarFromMatched(before: SideCurve, after: SideCurve): readonly number[] {
  const changes: number[] = [];
  const frequencyHz = commonAxis(before, after);
  for (let i = 0; i < frequencyHz.length; i++) {
    const first = knownMagnitudeAt(before, at(frequencyHz, i));
    const second = knownMagnitudeAt(after, at(frequencyHz, i));
    const greater = Math.max(first, second);
    if (greater >= FAR_FROM_MATCHED && greater < 1) changes.push(returnLossDb(second) - returnLossDb(first));
  }
  return changes;
}
