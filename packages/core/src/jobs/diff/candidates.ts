import { at } from "../../numbers/column.js";
import { fitLossAlongLine } from "./along-line-fit.js";
import type { Cause } from "./cause.js";
import { lengthCause, lossCause, referenceCause, scaleCause, seriesCause } from "./cause-words.js";
import type { CommonSamples } from "./common-samples.js";
import { isLineChange, isLonger, isLossier, lineCauses } from "./line-causes.js";
import { electricalLengthM, type LineChange, lossAt10MHzDb } from "./line-change.js";
import { fitLine, fitLineOf, withBestLaw } from "./line-fit.js";
import { fitReference, isAnotherReference } from "./reference-fit.js";
import { fitScale, type ScaleFit } from "./scale-fit.js";
import { LEAST_SCALE } from "./scale-search.js";
import { fitSeries } from "./series-fit.js";
import { bulkDelayOf, type SideCurve, widestSpanHz } from "./side-curve.js";
import { type Fitted, type Nearly, OF_PARTS } from "./spare-numbers.js";
import { LEAST_LENGTH_M } from "./thresholds.js";

/** A residual of this share of what is overlooked anyway needs no better explanation. */
const WELL_EXPLAINED_SHARE = 0.02;
/** The other common impedance of coax, that of television. */
const TELEVISION_OHMS = 75;

/** One way to explain a difference. */
export interface Candidate extends Fitted {
  readonly causes: readonly Cause[];
  readonly line: LineChange | null;
  /** Against what physics allows (line that takes loss away), or two changes that these sweeps do not tell apart: never likely */
  readonly isDoubtful: boolean;
}

/**
 * A wire of another length keeps its height, its traps and its line: it scales only nearly. With a change of the line beside it
 * there is more to fit with, and less may be left. Chosen on pairs of modelled antennas.
 */
const OF_WIRE: Nearly = { share: 0.4, spare: 9 };
const OF_WIRE_AND_LINE: Nearly = { share: 0.15, spare: 20 };
/** In so many of the stretches of frequency that changed it must do so. */
const THROUGHOUT = 0.8;

/** All that was tried. */
export interface Tried {
  readonly candidates: readonly Candidate[];
  /** How much longer or shorter a wire was tried, as a share; 0 where another cause explains all */
  readonly wireReach: number;
  /** A wire a little longer or shorter, as a lead or hanging it up again makes it; null where it is more, or another cause explains all */
  readonly slightWire: Pick<Candidate, "causes" | "residual"> | null;
}

/**
 * Every cause that is known, fitted.
 *
 * @param enough what an explanation may leave over, root mean square of Γ
 */
export function candidatesFor(samples: CommonSamples, before: SideCurve, difference: number, enough: number): Tried {
  const { referenceOhms } = before;
  const wellExplained = enough * WELL_EXPLAINED_SHARE;
  const line = withBestLaw(samples, fitLine(samples), wellExplained);
  const reference = fitReference(samples, referenceOhms);
  const plain: readonly (Candidate | null)[] = [
    isLineChange(line)
      ? {
          causes: lineCauses(line, difference),
          line,
          numbers: (isLonger(line) ? 1 : 0) + line.loss.length,
          residual: line.residual,
          isDoubtful: isUnphysical(line),
          nearly: OF_PARTS,
        }
      : null,
    isAnotherReference(reference.ohms, referenceOhms)
      ? { ...ONE_NUMBER, causes: [referenceCause(reference, referenceOhms)], residual: reference.residual }
      : null,
    ...fitSeries(samples, referenceOhms).map((fit) => ({
      ...ONE_NUMBER,
      causes: [seriesCause(fit, difference)],
      residual: fit.residual,
    })),
  ];
  const known = plain.filter((candidate) => candidate !== null);
  // What is explained to the last needs no further fits, which take their time.
  if (known.some(({ residual }) => residual <= wellExplained))
    return { candidates: known, wireReach: 0, slightWire: null };
  const scaled = fitScale(samples, before, wellExplained);
  const wire = scaleCause(scaled);
  const ofWire = scaleFindings(scaled, samples, before, difference);
  const ofTelevision = fitLineOf(TELEVISION_OHMS, samples, referenceOhms);
  const alongLine = fitLossAlongLine(samples);
  const further: readonly (Candidate | null)[] = [
    Math.abs(scaled.scale - 1) >= LEAST_SCALE
      ? {
          ...ofWire,
          numbers: 2 + scaled.line.loss.length,
          residual: scaled.residual,
          nearly: scaled.throughout < THROUGHOUT ? null : ofWire.causes.length > 1 ? OF_WIRE_AND_LINE : OF_WIRE,
        }
      : null,
    isLonger(ofTelevision)
      ? {
          causes: [lengthCause(ofTelevision, difference)],
          line: ofTelevision,
          numbers: 2,
          residual: ofTelevision.residual,
          isDoubtful: isUnphysical(ofTelevision),
          nearly: OF_PARTS,
        }
      : null,
    isLossier(alongLine)
      ? {
          causes: [lossCause(alongLine, difference)],
          line: alongLine,
          numbers: 2,
          residual: alongLine.residual,
          isDoubtful: false,
          nearly: OF_PARTS,
        }
      : null,
  ];
  return {
    candidates: [...known, ...further.filter((candidate) => candidate !== null)],
    wireReach: scaled.reach,
    slightWire: Math.abs(scaled.scale - 1) <= SLIGHT ? { causes: [wire], residual: scaled.residual } : null,
  };
}

/** A wire that changed by less does what a coil or a capacitor of a small value does (our own choice). */
const SLIGHT = 0.01;

const ONE_NUMBER = { line: null, numbers: 1, isDoubtful: false, nearly: OF_PARTS } as const;

/** Loss that a fit may take away by chance, dB at 10 MHz. */
const LOSS_BY_CHANCE_DB = 0.1;

/** More line adds no less loss, and less of it takes none on. */
const isUnphysical = (line: LineChange): boolean =>
  isLonger(line) && lossAt10MHzDb(line) * Math.sign(line.delayS) < -LOSS_BY_CHANCE_DB;

/** Over less than this share of a frequency a wire and a line together follow any slope (chosen on the tuned half of the pairs). */
const NARROW = 0.2;

const isOverNarrowRange = ({ frequencyHz }: CommonSamples): boolean =>
  at(frequencyHz, frequencyHz.length - 1) < (1 + NARROW) * at(frequencyHz, 0);

/** A wire of another length, and with it the change of the line that goes beyond what the fit itself may make up. */
function scaleFindings(
  scaled: ScaleFit,
  samples: CommonSamples,
  before: SideCurve,
  difference: number,
): Pick<Candidate, "causes" | "line" | "isDoubtful"> {
  const { line, scale } = scaled;
  // The bulk delay of a sweep is the line's only roughly, and the less so the narrower the sweep; stretching the axis
  // turns its error into a delay.
  const doubtS = Math.abs(bulkDelayOf(before)) + 1 / (2 * widestSpanHz(before));
  const doubtM = electricalLengthM(doubtS * Math.abs(1 - 1 / scale));
  const changes = lineCauses(line, difference, LEAST_LENGTH_M + doubtM);
  // Line that the stretching itself may make up, and loss that is taken away, leave open what it was.
  const isOpen = changes.length === 0 && isLonger(line) && Math.abs(electricalLengthM(line.delayS)) > doubtM / 2;
  const isNarrow = changes.length > 0 && isOverNarrowRange(samples);
  const isDoubtful = isOpen || isNarrow || isUnphysical(line) || lossAt10MHzDb(line) < -LOSS_BY_CHANCE_DB;
  return { causes: [scaleCause(scaled), ...changes], line: changes.length > 0 ? line : null, isDoubtful };
}
