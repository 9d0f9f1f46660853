/**
 * A series R-L-C circuit, for which bandwidth and Q are known in closed form.
 *
 * Z = R + jX with X = Q R (u - 1/u), u = f / f0. The SWR is s where (X/Z0)² = r (s + 1/s) - r² - 1, r = R/Z0: two edges
 * with f1 f2 = f0². Derived; for R = Z0 it is the relation of bandwidth and Q of A. D. Yaghjian, S. R. Best, "Impedance,
 * Bandwidth, and Q of Antennas", IEEE Trans. Antennas Propag. 53(4), 2005 (equations seen in quotations only). The edges
 * below were computed with numpy in double precision, each verified to give its SWR to 1e-9.
 *
 * The Q of the dip on the line is that of the circuit with the line's resistance added: Q R / (R + Z0).
 */
import { check, curveOf, planById, spansWithin, traceOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

/** SWR 1.5, 2, 2.618 (the golden ratio squared), 3 and 5.828 (3 + √8), as reflection magnitudes. */
const LIMITS = [1 / 5, 1 / 3, Math.sqrt(1 / 5), 1 / 2, Math.sqrt(1 / 2)] as const;

interface Circuit {
  readonly f0Mhz: number;
  readonly ohms: number;
  readonly q: number;
  readonly referenceOhms: number;
  /** Edges at each of the limits; null where the SWR never gets so low */
  readonly edgesMhz: readonly (Pair | null)[];
}

const CIRCUITS: readonly Circuit[] = [
  {
    f0Mhz: 14.175,
    ohms: 50,
    q: 10,
    referenceOhms: 50,
    edgesMhz: [
      [13.8886068416, 14.4672987933],
      [13.682694677, 14.6850185393],
      [13.4839576896, 14.9014576896],
      [13.3802113387, 15.0169993518],
      [12.8281986929, 15.6631986929],
    ],
  },
  {
    f0Mhz: 14.175,
    ohms: 50,
    q: 20,
    referenceOhms: 50,
    edgesMhz: [
      [14.0310652741, 14.32041125],
      [13.9266337052, 14.4277956363],
      [13.8250539956, 14.5338039956],
      [13.7717080168, 14.5901020233],
      [13.4839576896, 14.9014576896],
    ],
  },
  {
    f0Mhz: 7.1,
    ohms: 50,
    q: 12,
    referenceOhms: 50,
    edgesMhz: [
      [6.9802536722, 7.2218005774],
      [6.8938951727, 7.3122666849],
      [6.8103271884, 7.4019938551],
      [6.7666139333, 7.4498117518],
      [6.5329434591, 7.7162767925],
    ],
  },
  {
    f0Mhz: 14.15,
    ohms: 73,
    q: 11,
    referenceOhms: 50,
    edgesMhz: [
      [14.0717412726, 14.2286939562],
      [13.8363690056, 14.4707401139],
      [13.6663401724, 14.6507768338],
      [13.5816116337, 14.7421753323],
      [13.143407724, 15.2336824821],
    ],
  },
  {
    f0Mhz: 14.15,
    ohms: 36.5,
    q: 12,
    referenceOhms: 50,
    edgesMhz: [
      [13.9727695753, 14.329478413],
      [13.7202272192, 14.5932349954],
      [13.5104440513, 14.8198311794],
      [13.4043522001, 14.937126167],
      [12.8526987078, 15.5782458262],
    ],
  },
  {
    f0Mhz: 3.65,
    ohms: 60,
    q: 15,
    referenceOhms: 50,
    edgesMhz: [
      [3.6096697461, 3.6907808572],
      [3.5749159981, 3.7266609921],
      [3.542433947, 3.7608322976],
      [3.525561417, 3.7788307802],
      [3.4354923486, 3.8779012288],
    ],
  },
  {
    f0Mhz: 28.5,
    ohms: 75,
    q: 14,
    referenceOhms: 75,
    edgesMhz: [
      [28.0874907373, 28.9185676143],
      [27.7893528737, 29.2288202497],
      [27.5003130853, 29.536027371],
      [27.3489042079, 29.6995445896],
      [26.5368972969, 30.6083258684],
    ],
  },
  {
    f0Mhz: 14.2,
    ohms: 20,
    q: 50,
    referenceOhms: 50,
    edgesMhz: [
      null,
      null,
      [14.1291774989, 14.2711774989],
      [14.0529708599, 14.3485674318],
      [13.8101901645, 14.6008127041],
    ],
  },
  {
    f0Mhz: 145.0,
    ohms: 50,
    q: 35,
    referenceOhms: 50,
    edgesMhz: [
      [144.1568087923, 145.8481231385],
      [143.5426765809, 146.4721189601],
      [142.9433665921, 147.086223735],
      [142.6278468627, 147.4116062359],
      [140.9163144572, 149.202028743],
    ],
  },
];

/** Half of the last digit of an edge printed to 0.1 kHz. */
const EDGE_TOLERANCE_HZ = 50;
/** Half of the last digit of a Q printed to 0.01. */
const Q_TOLERANCE = 0.005;

function samplesOf({ f0Mhz, ohms, q, referenceOhms }: Circuit, stepHz: number) {
  // On the step's own grid, so that neither f0 nor an edge is a sample but by chance.
  const start = Math.floor((0.85 * f0Mhz * 1e6) / stepHz) * stepHz;
  const frequencyHz = evenly(start, 1.15 * f0Mhz * 1e6, stepHz);
  const reflections = frequencyHz.map((frequency): Pair => {
    const u = frequency / (f0Mhz * 1e6);
    return reflectionOf([ohms, q * ohms * (u - 1 / u)], referenceOhms);
  });
  return { frequencyHz, reflections };
}

const sweepOf = {
  vector: (circuit: Circuit, stepHz: number) => {
    const { frequencyHz, reflections } = samplesOf(circuit, stepHz);
    return sweepOfReflections(frequencyHz, reflections, circuit.referenceOhms);
  },
  scalar: (circuit: Circuit, stepHz: number) => {
    const { frequencyHz, reflections } = samplesOf(circuit, stepHz);
    const magnitudes = reflections.map(([real, imaginary]) => Math.hypot(real, imaginary));
    return sweepOfMagnitudes(frequencyHz, magnitudes, circuit.referenceOhms);
  },
};

const plan = present(planById("us-part97"), "us-part97");

describe.each(["vector", "scalar"] as const)("a %s sweep", (kind) => {
  describe.each([10_000, 25_000, 50_000])("in steps of %d Hz", (stepHz) => {
    test.each(CIRCUITS)("finds the edges of $f0Mhz MHz, $ohms ohm, Q $q at every limit", (circuit) => {
      const trace = traceOf(curveOf(sweepOf[kind](circuit, stepHz)));
      LIMITS.forEach((limit, i) => {
        const spans = spansWithin(trace, limit);
        const edges = circuit.edgesMhz[i] ?? null;
        expect(spans, `spans at limit ${limit}`).toHaveLength(edges === null ? 0 : 1);
        if (edges === null) return;
        const span = present(spans[0], "span");
        expect(span).toMatchObject({ openLow: false, openHigh: false });
        const off = [span.lowHz - edges[0] * 1e6, span.highHz - edges[1] * 1e6].map(Math.abs);
        expect(Math.max(...off), `at limit ${limit}, Hz`).toBeLessThanOrEqual(EDGE_TOLERANCE_HZ);
      });
    });

    test.each(CIRCUITS)("has the loaded Q of $f0Mhz MHz, $ohms ohm, Q $q: Q R / (R + Z0)", (circuit) => {
      const { f0Mhz, ohms, q, referenceOhms } = circuit;
      for (const [swr, edges] of [
        [2, circuit.edgesMhz[1]],
        [3, circuit.edgesMhz[3]],
      ] as const) {
        const limits = { swr, builtInTunerSwr: 4, wideRangeTunerSwr: 10 };
        const { bands } = check(sweepOf[kind](circuit, stepHz), { plan, limits });
        const band = present(
          bands.find(({ lowHz, highHz }) => lowHz <= f0Mhz * 1e6 && f0Mhz * 1e6 <= highHz),
          "band",
        );
        if (edges === null || edges === undefined) {
          expect(band).toMatchObject({ bandwidth: null, loadedQ: null, verdict: "fail" });
          continue;
        }
        const bandwidth = present(band.bandwidth, "bandwidth");
        expect(Math.abs(bandwidth.widthHz - (edges[1] - edges[0]) * 1e6)).toBeLessThanOrEqual(2 * EDGE_TOLERANCE_HZ);
        const expected = (q * ohms) / (ohms + referenceOhms);
        expect(Math.abs(present(band.loadedQ, "loadedQ") - expected)).toBeLessThanOrEqual(Q_TOLERANCE);
      }
    });
  });
});
