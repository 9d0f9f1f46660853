/** Whole numbers that look random and are the same for the same seed (a 32-bit xorshift; G. Marsaglia, 2003; from memory). */
export function numbersFrom(seed: number) {
  let state = (Math.imul(seed, 2654435761) ^ 0x9e3779b9) >>> 0 || 1;
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state;
  };
  for (let i = 0; i < 8; i++) next();
  const once = next();
  return {
    /** From 0 to below a bound */
    below: (bound: number) => (bound > 0 ? next() % bound : 0),
    /** The same number each time, below a bound */
    fixed: (bound: number) => (bound > 0 ? once % bound : 0),
  };
}
