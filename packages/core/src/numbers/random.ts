/**
 * Normally distributed numbers, the same ones for the same seed, so that a result does not change from run to run.
 *
 * Uniform numbers by the generator "mulberry32" (public domain; from memory), made normal by G. E. P. Box, M. E. Muller,
 * Annals of Mathematical Statistics 29, 1958, p. 610.
 */
export function normalNumbers(seed: number): () => number {
  let state = seed | 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
