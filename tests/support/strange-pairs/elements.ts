import type { Pair } from "../sweeps.js";
import { add, gammaOfImpedance, impedanceOfGamma, inverse, parallel, scaled } from "./complex.js";
import { LIGHT, type Line, throughLine } from "./lines.js";
import { alongWire } from "./wires.js";

/** A choke on the outside of the line: a lossy parallel resonance. */
export interface Choke {
  readonly ohms: number;
  readonly henry: number;
  readonly farad: number;
}

/** The outside of the line's braid as a wire above ground, earthed at the station. */
interface Braid {
  readonly kind: "braid";
  readonly lengthM: number;
  readonly waveOhms: number;
  /** Attenuation at 10 MHz, nepers. */
  readonly nepers: number;
  readonly earthOhms: number;
  readonly choke: Choke | null;
}

/** Something between the line and what it is screwed to: ohms, H, F, dB. */
export type Element =
  | { readonly kind: "series-resistance" | "parallel-resistance"; readonly ohms: number }
  | { readonly kind: "series-coil"; readonly henry: number; readonly q: number }
  | { readonly kind: "series-capacitor" | "parallel-capacitor"; readonly farad: number; readonly q: number }
  | { readonly kind: "line"; readonly line: Line; readonly lengthM: number }
  | { readonly kind: "attenuator"; readonly db: number }
  | { readonly kind: "choke"; readonly choke: Choke }
  | Braid;

/** The impedance in ohms on the analyser's side of an element that ends in `z`. */
export function throughElement(element: Element, z: Pair, hz: number): Pair {
  const w = 2 * Math.PI * hz;
  switch (element.kind) {
    case "series-resistance":
      return add(z, [element.ohms, 0]);
    case "parallel-resistance":
      return parallel(z, [element.ohms, 0]);
    case "series-coil":
      return add(z, [(w * element.henry) / element.q, w * element.henry]);
    case "series-capacitor":
      return add(z, capacitor(element, w));
    case "parallel-capacitor":
      return parallel(z, capacitor(element, w));
    case "line":
      return throughLine(z, element.line, element.lengthM, hz);
    case "attenuator":
      return impedanceOfGamma(scaled(gammaOfImpedance(z, 50), 10 ** (-element.db / 10)), 50);
    case "choke":
      return parallel(z, chokeImpedance(element.choke, w));
    case "braid":
      return parallel(z, braidImpedance(element, hz));
  }
}

const capacitor = ({ farad, q }: { readonly farad: number; readonly q: number }, w: number): Pair => [
  1 / (w * farad * q),
  -1 / (w * farad),
];

const chokeImpedance = ({ ohms, henry, farad }: Choke, w: number): Pair =>
  inverse([1 / ohms, w * farad - 1 / (w * henry)]);

/** The braid hangs on one half of the antenna only: a factor of 4 on its impedance. */
function braidImpedance(braid: Braid, hz: number): Pair {
  const w = 2 * Math.PI * hz;
  const radians = (w / (LIGHT * 0.95)) * braid.lengthM;
  const path = alongWire([braid.earthOhms, 0], braid.waveOhms, braid.nepers * Math.sqrt(hz / 1e7), radians);
  return scaled(braid.choke ? add(path, chokeImpedance(braid.choke, w)) : path, 4);
}
