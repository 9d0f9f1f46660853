import type { Feedline } from "./feedline.js";
import { magnitudeAtLoad } from "./line.js";

/** Cables of one kind differ by this share of their loss, and an old one loses more (common practice, no source). */
export const SPREAD_OF_KIND = 0.2;

/**
 * Whether so much comes back at the antenna's end that a line which loses a little more than is usual for its kind would leave
 * an antenna that reflects everything.
 *
 * @param antennaMagnitude ρ at the antenna's end as the line's usual loss leaves it, 0 or more
 * @param matchedLossDb that loss, one way, 0 or more
 * @param lossIs what that loss is known from; one that is stated, or the least that may be, does not grow
 */
export const mayReflectAll = (antennaMagnitude: number, matchedLossDb: number, lossIs: Feedline["lossIs"]): boolean =>
  magnitudeAtLoad(antennaMagnitude, lossIs === "typical" ? SPREAD_OF_KIND * matchedLossDb : 0) >= 1;
