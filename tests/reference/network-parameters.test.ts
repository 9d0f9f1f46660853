/**
 * The reflection at a port of a network given by Z or Y, the other ports ended in their references.
 *
 * Two ports: D. A. Frickey, IEEE Transactions on Microwave Theory and Techniques 42, 1994, p. 205, table I (from memory). Three
 * ports: networks so symmetrical that they fall apart into three loads, one for each way to drive them (worked out by hand).
 */
import { describe, expect, test } from "vitest";
import { expectRefusal, readOne, textOf } from "../support/known-load.js";
import type { Pair } from "../support/sweeps.js";

const times = ([a, b]: Pair, [c, d]: Pair): Pair => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Pair, [c, d]: Pair): Pair => {
  const norm = c * c + d * d;
  return [(a * c + b * d) / norm, (b * c - a * d) / norm];
};
const plus = ([a, b]: Pair, [c, d]: Pair): Pair => [a + c, b + d];
const minus = (a: Pair, [c, d]: Pair): Pair => plus(a, [-c, -d]);
const ONE: Pair = [1, 0];

/** A two-port, normalised, in the order 11, 21, 12, 22 of a Touchstone file. */
const TWO_PORT: readonly [Pair, Pair, Pair, Pair] = [
  [0.8, -1.2],
  [0.3, 0.4],
  [0.3, 0.4],
  [1.5, 0.7],
];

describe("a two-port", () => {
  const [p11, p21, p12, p22] = TWO_PORT;
  const cross = times(p12, p21);
  const below = minus(times(plus(p11, ONE), plus(p22, ONE)), cross);
  const s = {
    Z1: over(minus(times(minus(p11, ONE), plus(p22, ONE)), cross), below),
    Z2: over(minus(times(plus(p11, ONE), minus(p22, ONE)), cross), below),
    Y1: over(plus(times(minus(ONE, p11), plus(ONE, p22)), cross), below),
    Y2: over(plus(times(plus(ONE, p11), minus(ONE, p22)), cross), below),
  };

  test.each([
    ["Z", 1, s.Z1],
    ["Z", 2, s.Z2],
    ["Y", 1, s.Y1],
    ["Y", 2, s.Y2],
  ] as const)("in %s, at port %i", (parameter, port, expected) => {
    const cells = TWO_PORT.flat().join(" ");
    const text = textOf(`# MHz ${parameter} RI R 50`, `7 ${cells}`, `8 ${cells}`);
    const sweep = readOne(text, { port, fileName: "mooring.s2p" });
    if (sweep.kind !== "vector") throw new Error("no phase");
    expect(sweep.reflectionReal[0]).toBeCloseTo(expected[0], 12);
    expect(sweep.reflectionImaginary[0]).toBeCloseTo(expected[1], 12);
  });
});

describe("a three-port that is alike at every port", () => {
  // Driven alike at all ports its eigenvalue is own + 2 · mutual; driven so that the three add to nothing, own - mutual, twice.
  const expected = (own: number, mutual: number, sign: 1 | -1) => {
    const reflection = (value: number) => (sign * (value - 1)) / (value + 1);
    return (reflection(own + 2 * mutual) + 2 * reflection(own - mutual)) / 3;
  };

  test.each([
    // Three resistors of the reference between the ports: each port sees it matched.
    ["Y", 2, -1, -1, 0],
    ["Y", 3, -1, -1, null],
    ["Z", 0.5, 0.25, 1, -0.4],
    ["Z", 2, 0.5, 1, null],
  ] as const)("%s with %d and %d", (parameter, own, mutual, sign, known) => {
    const row = (r: number) => [0, 1, 2].map((c) => `${r === c ? own : mutual} 0`).join(" ");
    const block = (mhz: number) => [`${mhz} ${row(0)}`, row(1), row(2)];
    const text = textOf(`# MHz ${parameter} RI R 50`, block(7), block(8));
    const value = expected(own, mutual, sign);
    if (known !== null) expect(value).toBeCloseTo(known, 12);
    for (const port of [1, 2, 3]) {
      const sweep = readOne(text, { port, fileName: "mooring.s3p" });
      expect(sweep.reflectionMagnitude[0]).toBeCloseTo(Math.abs(value), 12);
    }
  });

  test("pivots where the first ports are shorted by what is measured", () => {
    // Normalised Z of -1 at port 1 makes z + 1 begin with 0; the others decide. det is not 0, so S exists.
    const block = (mhz: number) => [`${mhz} -1 0 1 0 0 0`, "1 0 0 0 0 0", "0 0 0 0 3 0"];
    const sweep = readOne(textOf("# MHz Z RI R 50", block(7), block(8)), { port: 3, fileName: "mooring.s3p" });
    // Port 3 is by itself: (3 - 1) / (3 + 1).
    expect(sweep.reflectionMagnitude[0]).toBeCloseTo(0.5, 12);
  });
});

describe("keywords of version 2 that cannot be", () => {
  const text = (version: string, ...keywords: readonly string[]) =>
    textOf(`[Version] ${version}`, "# MHz S RI R 50", keywords, "[Network Data]", "7 0.1 0", "8 0.1 0");

  test.each<[string, number | undefined, RegExp]>([
    [text("3.0", "[Number of Ports] 1"), 1, /is not supported/],
    [text("2.0", "[Number of Ports] 1.5"), 3, /is no count/],
    [text("2.0", "[Number of Ports] 1", "[Reference] 0"), 4, /is not usable/],
    [text("2.0", "[Number of Ports] 2", "[Two-Port Data Order] 11_22"), 4, /port order/],
    [text("2.0", "[Number of Ports"), 3, /is no keyword/],
    [text("2.0"), undefined, /without \[Number of Ports\]/],
  ])("%j is refused", (bad, line, says) => {
    expectRefusal(bad, { code: "bad-keyword", says, ...(line === undefined ? {} : { line }) });
  });
});
