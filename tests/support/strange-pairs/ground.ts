import { LIGHT } from "./lines.js";
import type { Random } from "./random.js";

/** What the ground below an antenna is, and what of the antenna decides how it feels it. */
export interface OverGround {
  /** Height of the middle of the antenna, metres; 0 where the ground is part of the antenna. */
  readonly heightM: number;
  /** Size of the ground's reflection. */
  readonly reflection: number;
  /** Loss near the ground as a fraction of the radiation resistance. */
  readonly groundLoss: number;
  readonly vertical: boolean;
  /** First resonance, Hz. */
  readonly firstHz: number;
  /** Wave impedance of the wire, ohms. */
  readonly waveOhms: number;
  /** Radiation resistance in free space, ohms, where it is not that of a wire of half waves. */
  readonly freeOhms?: number;
}

/** Factor on the radiation resistance, extra loss as a fraction of it, and relative shift of the resonance. */
interface GroundEffect {
  readonly radiation: number;
  readonly loss: number;
  readonly shift: number;
}

/** Radiation resistance of `halfWaves` half waves of wire in free space, ohms. */
export const halfWavesOhms = (halfWaves: number): number => 30 * (Math.log(2 * Math.PI * halfWaves) + 0.577);

function imageOf(vertical: boolean, v: number): readonly [number, number] {
  const s = Math.sin(v);
  const c = Math.cos(v);
  if (vertical) return [-(3 * (s / v ** 3 - c / v ** 2)), -(3 * (c / v ** 3 + s / v ** 2) * 0.5)];
  return [1.5 * (s / v + c / v ** 2 - s / v ** 3), 1.5 * (c / v - s / v ** 2 - c / v ** 3)];
}

/** The image of a short dipole in the ground, in closed form, and the loss of its near field. */
export function groundEffect(antenna: OverGround, hz: number): GroundEffect {
  if (antenna.heightM === 0) return { radiation: 1, loss: 0, shift: 0 };
  const halfWaves = Math.max(1, hz / antenna.firstHz);
  const height = (4 * Math.PI * hz * antenna.heightM) / LIGHT;
  const [image, imaginary] = imageOf(antenna.vertical, Math.max(1.2, height));
  const low = !antenna.vertical && height < 1.2;
  const real = low ? image + (1 - image) * (1 - height / 1.2) : image;
  const freeOhms = antenna.freeOhms ?? halfWavesOhms(halfWaves);
  const shift = (antenna.reflection * imaginary * freeOhms) / (((antenna.waveOhms * Math.PI) / 2) * halfWaves);
  return {
    radiation: Math.max(0.12, 1 - antenna.reflection * real),
    loss: antenna.groundLoss * Math.exp(-height / 0.9),
    shift: Math.max(-0.035, Math.min(0.035, shift)),
  };
}

/** A height and a ground. */
export function drawGround(
  random: Random,
  vertical = false,
): Pick<OverGround, "heightM" | "reflection" | "groundLoss" | "vertical"> {
  return {
    heightM: vertical ? random.range(5, 10) : random.log(5, 20),
    reflection: vertical ? random.range(0.2, 0.5) : random.range(0.5, 0.85),
    groundLoss: random.range(0.2, 1.2),
    vertical,
  };
}
