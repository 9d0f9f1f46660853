import { leastBetween } from "../../numbers/search.js";
import { type Cause, isLikely, possible } from "./cause.js";
import { lostPercent, scaleCause } from "./cause-words.js";
import { FEWEST_SAMPLES, thinnedAxis } from "./common-samples.js";
import { interference } from "./interference.js";
import { LOSS_LAWS, type LossLaw } from "./line-change.js";
import { bestScale, LEAST_REACHED, LEAST_SCALE } from "./scale-search.js";
import { knownMagnitudeAt, type SideCurve } from "./side-curve.js";
import { type ChangeOverFrequency, smoothChange } from "./smooth-change.js";
import { ALIKE, againstSmooth, explains, type Fitted, OF_PARTS } from "./spare-numbers.js";
import { CLEARLY, LEAST_LOSS_DB, type Tolerances } from "./thresholds.js";

/** ρ before and after at the same frequencies. */
interface Magnitudes {
  readonly frequencyHz: readonly number[];
  readonly before: readonly number[];
  readonly after: readonly number[];
}

const GREATEST_LOSS_DB = 10;

/**
 * Why two sweeps differ, as far as ρ alone can tell: nothing; loss; a longer or shorter wire. How long the line is does not
 * show in ρ but for its loss, and another reference impedance cannot be told from another antenna. As with Γ a cause is likely only
 * where a smooth change of ρ would need clearly more numbers to leave as little.
 */
export function magnitudeCauses(
  before: SideCurve,
  after: SideCurve,
  { negligible, enough, tight }: Tolerances,
): readonly Cause[] {
  const unrest = interference(before, after);
  const all = magnitudesAt(before, after, 1);
  if (all.frequencyHz.length < FEWEST_SAMPLES) return unrest;
  const difference = residualOf(all, () => 1);
  if (difference < negligible) return unrest;
  const { isExact, isNear } = againstSmooth(smoothChange(changeIn(all), tight), difference, tight);
  const loss = fitLoss(all);
  const scaled = fitScale(before, after, all, difference);
  const found: readonly (Fitted & { readonly cause: Cause })[] = [
    ...(Math.abs(loss.lossAt10MHzDb) >= LEAST_LOSS_DB
      ? [{ numbers: 1, residual: loss.residual, nearly: OF_PARTS, cause: lossCause(loss) }]
      : []),
    ...(Math.abs(scaled.scale - 1) >= LEAST_SCALE
      ? [{ numbers: 1, residual: scaled.residual, nearly: OF_PARTS, cause: scaleCause(scaled) }]
      : []),
  ].sort((a, b) => a.residual - b.residual);
  const explaining = found.filter((fitted) => explains(fitted, difference, enough));
  const [best, other] = explaining;
  if (best !== undefined) {
    const isAlone = other === undefined || other.residual > ALIKE * best.residual;
    const isSure = isAlone && (isExact(best) || isNear(best));
    return isSure ? [...unrest, best.cause] : [...unrest, ...explaining.map(({ cause }) => possible(cause))];
  }
  if (difference <= enough || unrest.some(isLikely)) return unrest;
  return [...unrest, possible(antennaCause(difference, loss.residual, scaled.residual))];
}

/** The change of ρ that some samples show. */
const changeIn = ({ frequencyHz, before, after }: Magnitudes): ChangeOverFrequency => ({
  frequencyHz: Float64Array.from(frequencyHz),
  real: Float64Array.from(after, (value, i) => value - (before[i] ?? 0)),
  imaginary: null,
});

function magnitudesAt(before: SideCurve, after: SideCurve, scale: number): Magnitudes {
  const rows = Array.from(thinnedAxis(before, after)).flatMap((frequencyHz) => {
    const first = knownMagnitudeAt(before, frequencyHz / scale);
    const second = knownMagnitudeAt(after, frequencyHz);
    return Number.isNaN(first + second) ? [] : [{ frequencyHz, first, second }];
  });
  return {
    frequencyHz: rows.map(({ frequencyHz }) => frequencyHz),
    before: rows.map(({ first }) => first),
    after: rows.map(({ second }) => second),
  };
}

/** Root mean square of what is left of ρ after, where a factor by frequency explains it by ρ before. */
function residualOf({ frequencyHz, before, after }: Magnitudes, factor: (frequencyHz: number) => number): number {
  let square = 0;
  frequencyHz.forEach((frequency, i) => {
    square += ((after[i] ?? 0) - (before[i] ?? 0) * factor(frequency)) ** 2;
  });
  return Math.sqrt(square / frequencyHz.length);
}

interface LossFit {
  readonly lossAt10MHzDb: number;
  readonly residual: number;
}

function fitLoss(magnitudes: Magnitudes): LossFit {
  const fits = (Object.keys(LOSS_LAWS) as LossLaw[]).map((law): LossFit => {
    const residualAt = (lossDb: number) =>
      residualOf(magnitudes, (frequencyHz) => 10 ** ((-lossDb * LOSS_LAWS[law](frequencyHz)) / 10));
    const lossAt10MHzDb = leastBetween(residualAt, -GREATEST_LOSS_DB, GREATEST_LOSS_DB, 1e-4);
    return { lossAt10MHzDb, residual: residualAt(lossAt10MHzDb) };
  });
  return fits.reduce((best, next) => (next.residual < CLEARLY * best.residual ? next : best));
}

/** The wire that explains most; what it leaves is a share of the difference, told by the samples that the stretched axis reaches. */
function fitScale(
  before: SideCurve,
  after: SideCurve,
  all: Magnitudes,
  difference: number,
): { scale: number; residual: number } {
  const changes = new Map(all.frequencyHz.map((hz, i) => [hz, (all.after[i] ?? 0) - (all.before[i] ?? 0)]));
  const whole = difference ** 2 * all.frequencyHz.length;
  const residualAt = (scale: number) => {
    const magnitudes = magnitudesAt(before, after, scale);
    const reached = magnitudes.frequencyHz.length;
    const here = magnitudes.frequencyHz.reduce((sum, hz) => sum + (changes.get(hz) ?? 0) ** 2, 0);
    if (reached < FEWEST_SAMPLES || here < LEAST_REACHED * whole) return Number.POSITIVE_INFINITY;
    return (residualOf(magnitudes, () => 1) * difference) / Math.sqrt(here / reached);
  };
  const scale = bestScale(residualAt);
  return { scale, residual: residualAt(scale) };
}

function lossCause({ lossAt10MHzDb, residual }: LossFit): Cause {
  const percent = lostPercent(lossAt10MHzDb);
  const isMore = lossAt10MHzDb > 0;
  return {
    code: isMore ? "loss-added" : "loss-removed",
    confidence: "likely",
    evidence: { lossAt10MHzDb, powerPercentAt10MHz: percent, residualRms: residual },
    message: `${Math.abs(lossAt10MHzDb).toFixed(2)} dB ${isMore ? "more" : "less"} loss on the way (one way, at 10 MHz; ${percent.toFixed(0)} % of the power there) explains the whole difference: the line is wet, damaged, ${isMore ? "longer" : "shorter"}, or joined otherwise. Without phase its length cannot be told.`,
  };
}

const antennaCause = (difference: number, ofLoss: number, ofScaling: number): Cause => ({
  code: "antenna-changed",
  confidence: "possible",
  evidence: { differenceRms: difference, residualOfLoss: ofLoss, residualOfScaling: ofScaling },
  message:
    "Neither loss nor a longer or shorter wire explains the difference: the antenna itself may have changed, or the place of measuring. Without phase no more can be told.",
});
