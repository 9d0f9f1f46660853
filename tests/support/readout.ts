import { readFileSync } from "node:fs";
import {
  type Curve,
  curveOf,
  impedanceFromReflection,
  readSweeps,
  reflectionAt,
  reflectionMagnitudeAt,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "@feedpoint/core";
import { expect } from "vitest";
import { present } from "./sweeps.js";

export interface Told {
  readonly megahertz: number;
  readonly swr: number;
  readonly returnLossDb: number;
  readonly resistanceOhms: number;
  readonly reactanceOhms: number;
}

/** The numbers of a readout: "7.15 MHz, SWR 1.14, Z 44.1 − j2.5 Ω, return loss 23.7 dB". */
export function numbersIn(line: string): Told {
  const found = /([\d.]+) MHz, SWR ([\d.]+), Z ([\d.]+) ([+−]) j([\d.]+) Ω, return loss ([\d.]+) dB/.exec(line);
  const [, megahertz, swr, resistance, sign, reactance, loss] = present(found, `numbers in "${line}"`);
  return {
    megahertz: Number(megahertz),
    swr: Number(swr),
    returnLossDb: Number(loss),
    resistanceOhms: Number(resistance),
    reactanceOhms: Number(reactance) * (sign === "−" ? -1 : 1),
  };
}

/** Holds what was told against the curve in core. */
export function expectOnCurve(told: Told, curve: Curve): void {
  const frequencyHz = told.megahertz * 1e6;
  const rho = reflectionMagnitudeAt(curve, frequencyHz);
  const impedance = impedanceFromReflection(present(reflectionAt(curve, frequencyHz), "Γ"), 50);
  expect(told.swr).toBeCloseTo(swrFromReflectionMagnitude(rho), told.swr < 10 ? 1 : 0);
  expect(told.returnLossDb).toBeCloseTo(returnLossDb(rho), 1);
  expect(Math.abs(told.resistanceOhms - impedance.real)).toBeLessThan(0.06 + 0.001 * impedance.real);
  expect(Math.abs(told.reactanceOhms - impedance.imaginary)).toBeLessThan(0.06 + 0.001 * Math.abs(impedance.imaginary));
}

/** The curve of a demo sweep. */
export function curveFrom(file: string): Curve {
  const bytes = readFileSync(new URL(`../../samples/${file}`, import.meta.url));
  return curveOf(present(readSweeps(bytes, { fileName: file })[0], "sweep"));
}
