// Repeatable randomness: the same seed always gives the same sweep.

/**
 * A small 32-bit generator (a Weyl sequence with a mixing step); good enough for instrument noise.
 *
 * @param {number} seed
 * @returns {() => number} uniform numbers from 0 up to, not including, 1
 */
export function seededUniform(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * @param {() => number} uniform
 * @returns {() => number} numbers from a normal distribution, mean 0, deviation 1 (Box-Muller)
 */
export function normalFrom(uniform) {
  return () => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    return radius * Math.cos(2 * Math.PI * uniform());
  };
}

/**
 * A corroded joint: steady ohms that wander a little, and now and then a worse contact for a few points.
 *
 * @param {{ steadyOhm: number, worseOhm: number }} joint
 * @param {() => number} uniform
 * @returns {() => number} series resistance at the next point of the sweep, ohms
 */
export function wanderingJoint(joint, uniform) {
  const normal = normalFrom(uniform);
  let isWorse = false;
  return () => {
    const chanceOfChange = isWorse ? 0.25 : 0.02;
    if (uniform() < chanceOfChange) {
      isWorse = !isWorse;
    }
    const ohm = isWorse ? joint.worseOhm : joint.steadyOhm;
    return Math.max(0, ohm * (1 + 0.06 * normal()));
  };
}
