/** So near to the middle between two decimals the product with 10⁴, which is rounded itself, does not tell which is nearer. */
const DOUBTFUL = 1e-4;
/** Below this a number and its product are known to far more digits than are kept. */
const GREATEST = 1e9;

/** A number rounded to four decimals, exactly as `Number(value.toFixed(4))`, which writes and reads a text for it. */
export function toFourDecimals(value: number): number {
  const scaled = value * 1e4;
  const nearest = Math.round(scaled);
  const isClear = Math.abs(scaled - nearest) < 0.5 - DOUBTFUL && Math.abs(value) < GREATEST;
  return isClear ? nearest / 1e4 : Number(value.toFixed(4));
}
