/**
 * How broad a lossless network can match a load of one resonance: B · ln(1 / ρ) ≤ π / Q, for wide bands B / (1 - B²/4).
 *
 * Sources: R. M. Fano, Theoretical limitations on the broadband matching of arbitrary impedances, J. Franklin Inst. 249, 1950; for the
 * resonant load M. Gustafsson, S. Nordebo, Bandwidth, Q factor, and resonance models of antennas, PIER 62, 2006 (both second-hand).
 * Only loss beats the limit, and a load of several resonances is not one of those that it holds for.
 */

/**
 * The least ρ that a lossless network can keep throughout a band.
 *
 * @param q of the load
 * @param bandwidth the band's width over its centre, above 0, below 2
 */
export const leastMagnitude = (q: number, bandwidth: number): number =>
  Math.exp((-Math.PI * (1 - (bandwidth * bandwidth) / 4)) / (q * bandwidth));

/**
 * The widest band, its width over its centre, throughout which a lossless network can keep a ρ; the inverse of {@link leastMagnitude}.
 *
 * @param magnitude ρ, above 0, below 1
 * @returns 0 to 2
 */
export function greatestBandwidth(q: number, magnitude: number): number {
  const narrow = Math.PI / (q * Math.log(1 / magnitude));
  return (2 * (Math.sqrt(1 + narrow * narrow) - 1)) / narrow;
}
