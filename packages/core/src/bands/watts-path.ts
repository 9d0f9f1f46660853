import type { Feedline } from "../facts/feedline/feedline.js";
import { SPREAD_OF_KIND } from "../facts/feedline/spread-of-kind.js";
import type { Limits } from "../facts/limits.js";
import { needFor } from "../facts/limits.js";
import type { LossRange } from "./band-feedline.js";
import type { Equipment } from "./power.js";

/** Where the power of a transmitter goes before it reaches the wire, on a band. */
export interface WattsPath {
  /** In the line, the least and the most on the band; null where no line was stated or it cannot be taken out */
  readonly line: LossRange | null;
  /** In the tuner; null where none is needed or there is none */
  readonly tuner: LossRange | null;
  /** In the antenna's transformer or choke, as stated; null where nothing was */
  readonly transformer: LossRange | null;
  /** Share of the power that reaches the wire, 0 to 1 */
  readonly arrives: { readonly least: number; readonly most: number };
}

/**
 * What a wide-range tuner loses: reckoned for a T network whose coil has a Q of 200, from a load of 500 Ω to one of 10 Ω in series with a
 * capacitor, at 3.65 MHz (derived, no published table).
 */
const TYPICAL_TUNER: LossRange = { leastDb: 0.1, greatestDb: 1 };

/**
 * Where the power goes on a band.
 *
 * @param ofLine what the line loses with standing waves, the least and the most; null: not known
 * @param worstSwr over the band as the analyser sees it; null where nothing was swept
 * @returns null where nothing is known of line, tuner and transformer
 */
export function wattsPath(
  ofLine: LossRange | null,
  feedline: Feedline | null,
  worstSwr: number | null,
  limits: Limits,
  { radio = {}, antenna = {} }: Equipment,
): WattsPath | null {
  if (worstSwr === null) return null;
  const line = lineLoss(ofLine, feedline);
  const { tuner: kind = "none", tunerLossDb } = radio;
  const isTuned = kind !== "none" && needFor(worstSwr, limits) !== "none";
  const tuner = !isTuned ? null : tunerLossDb === undefined ? TYPICAL_TUNER : exactly(tunerLossDb);
  const transformer = antenna.transformerLossDb === undefined ? null : exactly(antenna.transformerLossDb);
  const losses = [line, tuner, transformer].filter((loss) => loss !== null);
  if (losses.length === 0) return null;
  const share = (of: keyof LossRange) => 10 ** (-losses.reduce((sum, loss) => sum + loss[of], 0) / 10);
  return { line, tuner, transformer, arrives: { least: share("greatestDb"), most: share("leastDb") } };
}

const exactly = (lossDb: number): LossRange => ({ leastDb: lossDb, greatestDb: lossDb });

function lineLoss(losses: LossRange | null, feedline: Feedline | null): LossRange | null {
  // A line that would explain the whole reflection by itself cannot be taken out.
  if (losses === null || feedline === null || !Number.isFinite(losses.greatestDb)) return null;
  const spread = feedline.lossIs === "stated" ? 0 : SPREAD_OF_KIND;
  return { leastDb: (1 - spread) * losses.leastDb, greatestDb: (1 + spread) * losses.greatestDb };
}
