/**
 * Published tables of SWR, return loss, mismatch loss and reflected power, typed as printed.
 *
 * [RLT] Radio-Electronics.com, table "return loss / VSWR / voltage reflection coefficient", three decimals
 * [LEN] LZ1LEN, table "Transmission line conditions", two decimals; several of its cells are cut instead of rounded
 * [POZ] D. M. Pozar, Microwave Engineering, 4th ed., Wiley 2012, Example 2.2, p. 66
 * [K6LL] K6LL, TowerTalk mailing list, November 1998, message 020629
 * [NUM] numpy, double precision, ten digits: the same textbook definitions computed by another program
 *
 * Tolerance: half of the last printed digit; one whole digit where the print is known to be cut.
 */
import {
  mismatchLossDb,
  reflectedPowerFraction,
  reflectionFromImpedance,
  reflectionMagnitudeFromReturnLoss,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";

/** A little slack, so that a printed value that ends exactly on half a digit does not depend on the last bit. */
const HALF = 0.5 + 1e-9;

function expectPrinted(actual: number, printed: number, digit: number, isCut = false): void {
  expect(Math.abs(actual - printed), `${actual} against ${printed} as printed`).toBeLessThanOrEqual(
    (isCut ? 1 : HALF) * digit,
  );
}

describe("[RLT] from return loss", () => {
  // dB, SWR, reflection coefficient. At 26 dB the print cuts the SWR: 1.10553 stands as 1.105.
  const rows = [
    [1, 17.391, 0.891, false],
    [3, 5.848, 0.708, false],
    [6, 3.01, 0.501, false],
    [10, 1.925, 0.316, false],
    [14, 1.499, 0.2, false],
    [20, 1.222, 0.1, false],
    [26, 1.105, 0.05, true],
    [30, 1.065, 0.032, false],
  ] as const;
  test.each(rows)("%d dB is SWR %d and reflection magnitude %d", (lossDb, swr, magnitude, isCut) => {
    const rho = reflectionMagnitudeFromReturnLoss(lossDb);
    expectPrinted(rho, magnitude, 0.001);
    expectPrinted(swrFromReflectionMagnitude(rho), swr, 0.001, isCut);
  });
});

describe("[LEN] from SWR", () => {
  // SWR, reflected %, return loss dB, mismatch loss dB: the rows read in full
  const rows = [
    [1.5, 4.0, 13.98, 0.18],
    [2, 11.11, 9.54, 0.51],
    [3, 25.0, 6.02, 1.25],
    [10, 66.94, 1.74, 4.81],
  ] as const;
  test.each(rows)("SWR %d reflects %d %%, return loss %d dB, mismatch loss %d dB", (swr, percent, lossDb, mismatch) => {
    const rho = reflectionMagnitudeFromSwr(swr);
    expectPrinted(100 * reflectedPowerFraction(rho), percent, 0.01);
    expectPrinted(returnLossDb(rho), lossDb, 0.01);
    expectPrinted(mismatchLossDb(rho), mismatch, 0.01);
  });

  // Cells that the table cuts, or computes from a cut reflection coefficient: SWR, reflected %.
  const cut = [
    [1.4, 2.77],
    [1.6, 5.32],
    [2.5, 18.36],
  ] as const;
  test.each(cut)("SWR %d reflects %d %% and a cut rest", (swr, percent) => {
    const actual = 100 * reflectedPowerFraction(reflectionMagnitudeFromSwr(swr));
    expectPrinted(actual, percent, 0.01, true);
    expect(actual).toBeGreaterThan(percent);
  });

  test("SWR 3.5 has a reflection coefficient of 0.55 and a cut rest", () => {
    const actual = reflectionMagnitudeFromSwr(3.5);
    expectPrinted(actual, 0.55, 0.01, true);
    expect(actual).toBeGreaterThan(0.55);
  });

  test("SWR 10 transmits 33.05 % and a cut rest", () => {
    const actual = 100 * (1 - reflectedPowerFraction(reflectionMagnitudeFromSwr(10)));
    expectPrinted(actual, 33.05, 0.01, true);
    expect(actual).toBeGreaterThan(33.05);
  });
});

describe("worked examples", () => {
  test("[POZ] 40 + j70 ohm on a 100 ohm line: 0.59, SWR 3.87, return loss 4.6 dB", () => {
    const { real, imaginary } = reflectionFromImpedance({ real: 40, imaginary: 70 }, 100);
    const rho = Math.hypot(real, imaginary);
    expectPrinted(rho, 0.59, 0.01);
    expectPrinted(swrFromReflectionMagnitude(rho), 3.87, 0.01);
    expectPrinted(returnLossDb(rho), 4.6, 0.1);
  });

  test("[K6LL] a peak SWR of 8 bounds the one-way loss at 1.09 dB, half of the return loss", () => {
    expectPrinted(returnLossDb(reflectionMagnitudeFromSwr(8)) / 2, 1.09, 0.01);
  });
});

describe("[NUM] ten digits from SWR", () => {
  // SWR, reflection magnitude, return loss dB, mismatch loss dB, reflected %
  const rows = [
    [1.01, 0.004975124378, 46.06392115, 0.0001074973037, 0.002475186258],
    [1.05, 0.0243902439, 32.25567713, 0.002584317136, 0.05948839976],
    [1.1, 0.04761904762, 26.44438589, 0.009859129817, 0.2267573696],
    [1.2, 0.09090909091, 20.8278537, 0.03604124269, 0.826446281],
    [1.35, 0.1489361702, 16.53999636, 0.09741964721, 2.21819828],
    [1.7, 0.2592592593, 11.72531448, 0.3021861561, 6.721536351],
    [2.25, 0.3846153846, 8.299466959, 0.6952421252, 14.79289941],
    [2.618033989, 0.4472135955, 6.989700043, 0.9691001301, 20],
    [5, 0.6666666667, 3.521825181, 2.552725051, 44.44444444],
    [5.828427125, Math.SQRT1_2, 3.010299957, 3.010299957, 50],
    [30, 0.935483871, 0.5792739187, 9.035421416, 87.51300728],
    [100, 0.9801980198, 0.1737235837, 14.06582756, 96.0788158],
  ] as const;
  test.each(rows)("SWR %d is %d, %d dB, %d dB, %d %%", (swr, magnitude, lossDb, mismatch, percent) => {
    const rho = reflectionMagnitudeFromSwr(swr);
    // The two irrational SWRs are themselves printed to ten digits, hence 1e-9 of the value and not 5e-11.
    const close = (actual: number, printed: number) =>
      expect(Math.abs(actual / printed - 1), `${actual} against ${printed}`).toBeLessThan(1e-9);
    close(rho, magnitude);
    close(returnLossDb(rho), lossDb);
    close(mismatchLossDb(rho), mismatch);
    close(100 * reflectedPowerFraction(rho), percent);
    close(swrFromReflectionMagnitude(rho), swr);
  });
});

describe("ends of the scale, by definition", () => {
  test("a perfect match reflects nothing: SWR 1, endless return loss, no mismatch loss", () => {
    expect(swrFromReflectionMagnitude(0)).toBe(1);
    expect(returnLossDb(0)).toBe(Number.POSITIVE_INFINITY);
    expect(mismatchLossDb(0)).toBe(0);
  });

  test.each([
    ["short", { real: 0, imaginary: 0 }],
    ["open", { real: Number.POSITIVE_INFINITY, imaginary: 0 }],
    ["pure inductance", { real: 0, imaginary: 50 }],
    ["pure capacitance", { real: 0, imaginary: -50 }],
  ] as const)("total reflection from a %s: SWR infinite, return loss 0 dB", (_, load) => {
    const { real, imaginary } = reflectionFromImpedance(load, 50);
    const rho = Math.hypot(real, imaginary);
    expect(rho).toBe(1);
    expect(swrFromReflectionMagnitude(rho)).toBe(Number.POSITIVE_INFINITY);
    expect(returnLossDb(rho)).toBe(0);
    expect(mismatchLossDb(rho)).toBe(Number.POSITIVE_INFINITY);
    expect(reflectionMagnitudeFromSwr(Number.POSITIVE_INFINITY)).toBe(1);
  });
});
