import { type Complex, complex, divide, multiply } from "../../numbers/complex.js";

/**
 * The textbooks' exact matches at one frequency. What a deployment is advised comes from trying parts that one can buy over whole
 * bands; these are for a tuner set band by band, and for whoever designs a network.
 *
 * All line impedances are real.
 */

/** A network of two reactances. */
export interface LNetwork {
  /** Which of them is nearer to the load */
  readonly nearLoad: "across" | "series";
  /** Of the one in series, Ω; above 0 a coil */
  readonly seriesOhms: number;
  /** Of the one across, S; above 0 a capacitor */
  readonly acrossSiemens: number;
}

/**
 * Every network of two reactances that makes a resistance of a load: two to four of them, none for a load without resistance.
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., section 5.1.
 *
 * @param load Ω
 * @param ohms the resistance wanted, Ω
 */
export function lNetworks({ real: r, imaginary: x }: Complex, ohms: number): readonly LNetwork[] {
  if (!(r > 0)) return [];
  const networks: LNetwork[] = [];
  const square = r * r + x * x;
  if (square >= ohms * r) {
    for (const sign of [1, -1]) {
      const acrossSiemens = (x + sign * Math.sqrt(r / ohms) * Math.sqrt(square - ohms * r)) / square;
      // Seen beside what lies across it, what the load leaves to be taken out in series.
      const left = divide(complex(1, 0), complex(r / square, acrossSiemens - x / square));
      networks.push({ nearLoad: "across", seriesOhms: -left.imaginary, acrossSiemens });
    }
  }
  if (r <= ohms) {
    for (const sign of [1, -1]) {
      const root = sign * Math.sqrt(r * (ohms - r));
      networks.push({
        nearLoad: "series",
        seriesOhms: root - x,
        acrossSiemens: (sign * Math.sqrt((ohms - r) / r)) / ohms,
      });
    }
  }
  return networks;
}

/** A stub at a distance from a load, both in wavelengths on the line, below ½. */
export interface StubMatch {
  /** From the load */
  readonly distance: number;
  /** Of a stub with its far end shorted */
  readonly shorted: number;
  /** Of one with its far end open */
  readonly open: number;
}

/**
 * Where a stub across the line, of the line's own impedance, matches a load, and how long it is.
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., section 5.2.
 */
export function stubsAcross(load: Complex, ohms: number): readonly StubMatch[] {
  return distancesOf(complex(load.real / ohms, load.imaginary / ohms)).map((distance) => {
    const { imaginary } = divide(complex(1, 0), turned(load, ohms, distance));
    const susceptance = imaginary * ohms;
    return {
      distance,
      shorted: halfWave(Math.atan(1 / susceptance)),
      open: halfWave(-Math.atan(susceptance)),
    };
  });
}

/**
 * The same of a stub in series with the line.
 *
 * Source: as of {@link stubsAcross}, with admittances in place of impedances.
 */
export function stubsInSeries(load: Complex, ohms: number): readonly StubMatch[] {
  const admittance = divide(complex(ohms, 0), load);
  return distancesOf(admittance).map((distance) => {
    const reactance = turned(load, ohms, distance).imaginary / ohms;
    return { distance, shorted: halfWave(-Math.atan(reactance)), open: halfWave(Math.atan(1 / reactance)) };
  });
}

/** Distances at which the conductance (of a normalised impedance) is that of the line. */
function distancesOf({ real: r, imaginary: x }: Complex): readonly number[] {
  if (!(r > 0)) return [];
  if (r === 1) return [...new Set([0, halfWave(Math.atan(-x / 2))])];
  const root = Math.sqrt(r * ((1 - r) ** 2 + x * x));
  return [1, -1].map((sign) => halfWave(Math.atan((x + sign * root) / (r - 1))));
}

const halfWave = (radian: number): number => (radian < 0 ? radian + Math.PI : radian) / (2 * Math.PI);

/** Impedance of a load through a lossless line of some wavelengths. */
function turned(load: Complex, ohms: number, wavelengths: number): Complex {
  const t = Math.tan(2 * Math.PI * wavelengths);
  const top = complex(load.real, load.imaginary + ohms * t);
  const bottom = multiply(complex(0, t), load);
  return multiply(complex(ohms, 0), divide(top, complex(ohms + bottom.real, bottom.imaginary)));
}

/** A section of another line, and the length of the first between it and the load. */
export interface SeriesSection {
  /** Of the line's own kind between section and load, degrees */
  readonly toLoadDegrees: number;
  /** Of the section, degrees */
  readonly sectionDegrees: number;
}

/**
 * How a section of another impedance in the line matches a load: none where the two impedances do not differ enough.
 *
 * Source: F. A. Regier, Series-section transmission-line impedance matching, Proc. IEEE 59, 1971, p. 1133 (from memory; the tests hold
 * it to what the line then shows).
 *
 * @param lineOhms of the line, Ω
 * @param sectionOhms of the section, Ω
 */
export function seriesSections(load: Complex, lineOhms: number, sectionOhms: number): readonly SeriesSection[] {
  const [n, r, x] = [sectionOhms / lineOhms, load.real / lineOhms, load.imaginary / lineOhms];
  const off = (r - 1) ** 2 + x * x;
  const square = r * (n - 1 / n) ** 2 - off;
  if (!(square > 0)) return [];
  return [1, -1].map((sign) => {
    const section = sign * Math.sqrt(off / square);
    const toLoad = ((n - r / n) * section + x) / (r + x * n * section - 1);
    return { toLoadDegrees: degrees(toLoad), sectionDegrees: degrees(section) };
  });
}

const degrees = (tangent: number): number => 360 * halfWave(Math.atan(tangent));

/** The impedance of a quarter wave of line that makes one resistance of another, √(R1 · R2), Ω. */
export const quarterWaveOhms = (oneOhms: number, otherOhms: number): number => Math.sqrt(oneOhms * otherOhms);

/**
 * The share of the frequency over which a quarter wave of line keeps a match: Δf / f.
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., section 5.4 and example 5.5.
 *
 * @param magnitude greatest ρ wanted, below 1
 * @returns 2 where it is kept throughout
 */
export function quarterWaveBandwidth(oneOhms: number, otherOhms: number, magnitude: number): number {
  const difference = Math.abs(otherOhms - oneOhms);
  const cosine =
    (magnitude / Math.sqrt(1 - magnitude * magnitude)) * ((2 * Math.sqrt(oneOhms * otherOhms)) / difference);
  return cosine >= 1 ? 2 : 2 - (4 / Math.PI) * Math.acos(cosine);
}
