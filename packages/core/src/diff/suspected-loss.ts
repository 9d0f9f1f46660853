import { median } from "simple-statistics";
import { at } from "../column.js";
import { type Curve, reflectionMagnitudeAt } from "../curve/curve.js";
import { returnLossDb } from "../reflection.js";
import type { Cause } from "./causes.js";

/** Where the first sweep reflected this much, next to nothing reaches the antenna, whatever its shape. */
const FAR_FROM_MATCHED = 0.7;
const FEWEST_SAMPLES = 12;
/** Rise of the return loss there that is remarkable, dB (there and back), and the share of samples that must show it. */
const LEAST_RISE_DB = 0.5;
const LEAST_SHARE = 0.8;

/**
 * Loss that has grown, by the size of the reflection alone: an antenna far from matched sends nearly everything back, so a
 * return loss that rises nearly everywhere there speaks for loss on the way (or in the joint), not for a better antenna.
 */
export function suspectedLoss(before: Curve, after: Curve): readonly Cause[] {
  const rises: number[] = [];
  const { frequencyHz } = before.sweep;
  for (let i = 0; i < frequencyHz.length; i++) {
    const first = reflectionMagnitudeAt(before, at(frequencyHz, i));
    const second = reflectionMagnitudeAt(after, at(frequencyHz, i));
    if (first < FAR_FROM_MATCHED || first >= 1 || Number.isNaN(second)) continue;
    rises.push(returnLossDb(second) - returnLossDb(first));
  }
  if (rises.length < FEWEST_SAMPLES) return [];
  const middle = median(rises);
  const share = rises.filter((rise) => rise > 0).length / rises.length;
  if (middle < LEAST_RISE_DB || share < LEAST_SHARE) return [];
  return [
    {
      code: "loss-added",
      confidence: "possible",
      evidence: { returnLossRiseDb: middle, shareOfSamples: share },
      message: `Where the antenna was far from matched, ${middle.toFixed(1)} dB more of the return is missing now: loss does that (a wet line, a poor joint, a resistance). Check line and joints before calling a lower SWR better.`,
    },
  ];
}
