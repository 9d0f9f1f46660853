/** A twelfth of a year of 365.25 days. */
export const MILLISECONDS_A_MONTH = (365.25 / 12) * 24 * 3600 * 1000;
