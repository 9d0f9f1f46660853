/**
 * A 49:1 impedance transformer between a 50 ohm connector and a high-impedance wire,
 * as a lumped circuit seen from the connector:
 *
 *   connector --+-- leakage inductance --+----------+-----------+
 *               |                        |          |           |
 *           capacitor              magnetising  core loss   wire / turnsRatio^2
 *               |                  inductance   resistance      |
 *   ------------+------------------------+----------+-----------+
 *
 * The values are invented, of the order common for a ferrite core (common practice, no source).
 */

/** @typedef {{re: number, im: number}} Complex */

export const transformer49 = {
  turnsRatio: 7,
  magnetisingInductanceH: 6e-6,
  coreLossResistanceOhms: 900,
  leakageInductanceH: 0.12e-6,
  capacitanceF: 100e-12,
};

/**
 * @param {import("./nec2c.mjs").ImpedancePoint} wire impedance of the wire at its feed point
 * @returns {import("./nec2c.mjs").ImpedancePoint} impedance at the connector
 */
export function throughTransformer(wire, transformer = transformer49) {
  const omega = 2 * Math.PI * wire.frequencyHz;
  const wireAdmittance = inverse({ re: wire.resistanceOhms, im: wire.reactanceOhms });
  const coreAdmittance = {
    re: 1 / transformer.coreLossResistanceOhms + transformer.turnsRatio ** 2 * wireAdmittance.re,
    im: -1 / (omega * transformer.magnetisingInductanceH) + transformer.turnsRatio ** 2 * wireAdmittance.im,
  };
  const core = inverse(coreAdmittance);
  const afterLeakage = inverse({ re: core.re, im: core.im + omega * transformer.leakageInductanceH });
  const connector = inverse({ re: afterLeakage.re, im: afterLeakage.im + omega * transformer.capacitanceF });
  return {
    frequencyHz: wire.frequencyHz,
    resistanceOhms: connector.re,
    reactanceOhms: connector.im,
  };
}

/** @param {Complex} value @returns {Complex} */
function inverse(value) {
  const square = value.re ** 2 + value.im ** 2;
  return { re: value.re / square, im: -value.im / square };
}
