import { fc } from "./property.js";
import { evenly, type Pair, reflectionOf } from "./sweeps.js";

/** A smooth, noise-free sweep of a single resonance behind a 50 ohm line, on a grid of its own. */
export interface ResonantSweep {
  readonly frequencyHz: readonly number[];
  readonly reflections: readonly Pair[];
}

/** At least eight steps to the 2:1 bandwidth of a well matched antenna, so that the samples do describe the curve. */
export const resonantSweep: fc.Arbitrary<ResonantSweep> = fc
  .record({
    resonanceHz: fc.integer({ min: 6_900_000, max: 7_400_000 }),
    ohms: fc.integer({ min: 20, max: 150 }),
    q: fc.integer({ min: 5, max: 30 }),
    delayNs: fc.integer({ min: 0, max: 300 }),
    stepHz: fc.integer({ min: 5_000, max: 20_000 }),
    offsetHz: fc.integer({ min: 0, max: 20_000 }),
  })
  .map(({ resonanceHz, ohms, q, delayNs, stepHz, offsetHz }) => {
    const frequencyHz = evenly(6_500_000 + offsetHz, 7_800_000, stepHz);
    const reflections = frequencyHz.map((frequency): Pair => {
      const u = frequency / resonanceHz;
      const [real, imaginary] = reflectionOf([ohms, ohms * q * (u - 1 / u)]);
      const angle = -2 * Math.PI * frequency * delayNs * 1e-9;
      return [
        real * Math.cos(angle) - imaginary * Math.sin(angle),
        real * Math.sin(angle) + imaginary * Math.cos(angle),
      ];
    });
    return { frequencyHz, reflections };
  });

/** Any numbers at all that a passive load may show, sample by sample without any shape. */
export const shapelessSweep: fc.Arbitrary<ResonantSweep> = fc
  .record({
    startHz: fc.integer({ min: 1_500_000, max: 28_000_000 }),
    points: fc.array(
      fc.record({
        stepHz: fc.integer({ min: 1000, max: 3000 }),
        magnitude: fc.double({ min: 0, max: 1, noNaN: true }),
        angle: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      }),
      { minLength: 1, maxLength: 120 },
    ),
  })
  .map(({ startHz, points }) => {
    let frequency = startHz;
    const frequencyHz = points.map(({ stepHz }) => {
      frequency += stepHz;
      return frequency;
    });
    return {
      frequencyHz,
      reflections: points.map(
        ({ magnitude, angle }): Pair => [magnitude * Math.cos(angle), magnitude * Math.sin(angle)],
      ),
    };
  });

export const magnitudesOf = ({ reflections }: ResonantSweep) =>
  reflections.map(([real, imaginary]) => Math.hypot(real, imaginary));
