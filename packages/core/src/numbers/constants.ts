/** Speed of light in vacuum, m/s (exact, by the definition of the metre). */
export const SPEED_OF_LIGHT = 299_792_458;

/** dB in one neper: 20 / ln 10. */
export const DECIBELS_PER_NEPER = 20 / Math.LN10;
