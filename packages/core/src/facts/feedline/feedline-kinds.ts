/**
 * A common kind of feedline by its generic designation.
 *
 * Coaxial kinds: their loss is fitted to the values of published data sheets, each as quoted in public files (the sheets were not
 * seen). Cables of one designation differ by 20 % and more between makers, so their loss is typical, never exact. Balanced kinds:
 * computed from the skin effect in dry copper wire in air, so they lose at least this.
 */
export interface FeedlineKind {
  /** What it is called with `--feedline` and in a station file */
  readonly id: string;
  /** For a person: "RG-58C/U" */
  readonly title: string;
  readonly characteristicOhms: number;
  /** Speed on the line over that of light */
  readonly velocityFactor: number;
  readonly loss: LossModel;
  /** Whether the loss is a typical value, or the least that it can be */
  readonly lossIs: "typical" | "at-least";
  /** Where its loss comes from */
  readonly source: string;
}

/** Matched loss in dB per 100 m is k0 + k1 √f + k2 f, f in MHz. */
export interface LossModel {
  /** dB per 100 m at every frequency */
  readonly k0: number;
  /** dB per 100 m at 1 MHz that grow with the root of frequency: the conductors */
  readonly k1: number;
  /** dB per 100 m at 1 MHz that grow with frequency: the dielectric */
  readonly k2: number;
}

/** Steel-cored kinds carry a constant term: below some MHz the current no longer flows in copper alone. */
const loss = (k1: number, k2: number, k0 = 0): LossModel => ({ k0, k1, k2 });

const SHEET = "data sheet as quoted in public files (second-hand)";
const SKIN_EFFECT = "computed: skin effect in copper of 5.8e7 S/m, dry, in air";

/** The catalogue of feedlines: coaxial kinds first, then balanced ones. */
export const FEEDLINE_KINDS: readonly FeedlineKind[] = [
  coax("rg-58", "RG-58C/U", 50, 0.66, loss(1.35826, 0.0259431), `Belden 8262 ${SHEET}`),
  coax("rg-58a", "RG-58A/U", 50, 0.66, loss(1.4803, 0.0291255), `Belden 8259 ${SHEET}`),
  coax("rg-8x", "RG-8X", 50, 0.82, loss(0.91273, 0.00896539), `Belden 9258 ${SHEET}; others give a velocity of 0.78`),
  coax("rg-213", "RG-213/U", 50, 0.66, loss(0.559173, 0.00671509), `Belden 8267 ${SHEET}`),
  coax(
    "rg-174",
    "RG-174/U, steel-cored",
    50,
    0.66,
    loss(1.74344, 0.0578367, 4.47464),
    `Belden 8216 ${SHEET}, partly memory`,
  ),
  coax(
    "foam-400",
    "10 mm low-loss foam (400 type)",
    50,
    0.85,
    loss(0.401214, 0.000853018),
    `Times Microwave formula, ${SHEET}`,
  ),
  coax(
    "foam-240",
    "6 mm low-loss foam (240 type)",
    50,
    0.84,
    loss(0.794226, 0.00108268),
    `Times Microwave formula, ${SHEET}`,
  ),
  coax("rg-6", "RG-6", 75, 0.82, loss(0.644691, 0, 0.162097), `Belden 1694A ${SHEET}, partly memory`),
  coax(
    "rg-59",
    "RG-59/U, steel-cored",
    75,
    0.66,
    loss(0.816158, 0.0156323, 1.09454),
    `Belden 8241 ${SHEET}, partly memory`,
  ),
  balanced("window-400", "window line, 1.0 mm (18 AWG) copper", 405, 0.91, loss(0.173983, 0)),
  balanced("window-360", "window line, 1.6 mm (14 AWG) copper", 360, 0.93, loss(0.123097, 0)),
  balanced("open-wire-600", "open wire line, 2.05 mm (12 AWG) copper", 600, 0.97, loss(0.0585721, 0)),
];

function coax(
  id: string,
  title: string,
  characteristicOhms: number,
  velocityFactor: number,
  lossModel: LossModel,
  source: string,
): FeedlineKind {
  return { id, title, characteristicOhms, velocityFactor, loss: lossModel, lossIs: "typical", source };
}

function balanced(
  id: string,
  title: string,
  characteristicOhms: number,
  velocityFactor: number,
  lossModel: LossModel,
): FeedlineKind {
  return { id, title, characteristicOhms, velocityFactor, loss: lossModel, lossIs: "at-least", source: SKIN_EFFECT };
}

/** A kind of the catalogue by its id; null where there is none of that name. */
export const feedlineKindById = (id: string): FeedlineKind | null =>
  FEEDLINE_KINDS.find((kind) => kind.id === id) ?? null;
