/**
 * Invented antennas whose wire is cut or made longer in the model itself: the truth for what a change of length is foretold to do.
 * Heights, radials and counterpoise stay as they are. None of them was used to choose a number of the prediction.
 * `factor` multiplies the length of the wire; lengths in metres.
 */
const averageGround = "GN 0 0 0 0 13.0 0.005";
const copperSiemensPerM = 5.8e7;
const radiusM = 0.001;

/** @typedef {import("./nec2c.mjs").Model} Model @typedef {import("./nec2c.mjs").Wire} Wire */

/** @param {number} tag @param {number} segments @param {import("./nec2c.mjs").Point} from @param {import("./nec2c.mjs").Point} to @returns {Wire} */
const wire = (tag, segments, from, to) => ({ tag, segments, from, to, radiusM });

/** @param {Wire[]} wires @param {number} sourceTag @returns {Model} */
const overGround = (wires, sourceTag) => ({
  wires,
  coils: [],
  conductivitySiemensPerM: copperSiemensPerM,
  groundCard: averageGround,
  sourceTag,
});

/** Radials from a mast, evenly spread. @param slope how steeply they fall, radians */
const radials = (count, length, height, firstTag, slope = 0) =>
  Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    const [out, down] = [length * Math.cos(slope), length * Math.sin(slope)];
    return wire(firstTag + k, 31, [0, 0, height], [out * Math.cos(angle), out * Math.sin(angle), height - down]);
  });

/** A vertical over radials. */
const vertical =
  (length, count, radialLength, height, slope = 0) =>
  (factor) =>
    overGround(
      [
        wire(1, 1, [0, 0, height], [0, 0, height + 0.2]),
        wire(2, 31, [0, 0, height + 0.2], [0, 0, height + length * factor]),
        ...radials(count, radialLength, height, 3, slope),
      ],
      1,
    );

/** A wire that rises from its feed point, over a counterpoise on the other side. */
const rising = (length, angle, counterpoise, height) => (factor) =>
  overGround(
    [
      wire(1, 1, [0, 0, height], [0, 0, height + 0.2]),
      wire(
        2,
        71,
        [0, 0, height + 0.2],
        [length * factor * Math.cos(angle), 0, height + 0.2 + length * factor * Math.sin(angle)],
      ),
      wire(3, 21, [0, 0, height], [-counterpoise, 0, height]),
    ],
    1,
  );

/**
 * @typedef {object} TrimmedAntenna
 * @property {string} name of the CSV file
 * @property {string} words
 * @property {"nothing" | "radials" | "counterpoise"} fixed what is not cut with the wire
 * @property {number} [wireLengthM] of the wire that is cut, as its owner would state it; where something stays
 * @property {number} [count] of the wires that stay
 * @property {number} [fixedLengthM] of each of them
 * @property {number} ratio of the ideal transformer between feed point and connector; 1: none
 * @property {readonly string[]} bands
 * @property {(factor: number) => Model} model
 */

/** @type {readonly TrimmedAntenna[]} */
export const trimmedAntennas = [
  {
    name: "sloper-40m",
    words: "half-wave sloper, its middle 7 m up",
    fixed: "nothing",
    ratio: 1,
    bands: ["40m"],
    model: (factor) => {
      const [along, down] = [10.1 * factor * Math.cos(0.45), 10.1 * factor * Math.sin(0.45)];
      return overGround([wire(1, 63, [-along, 0, 7 - down], [along, 0, 7 + down])], 1);
    },
  },
  {
    name: "off-centre-80m",
    words: "wire fed off its centre, 9 m up, through 4:1",
    fixed: "nothing",
    ratio: 4,
    bands: ["80m", "40m", "20m", "10m"],
    model: (factor) =>
      overGround(
        [
          wire(1, 47, [-13.6 * factor, 0, 9], [-0.1, 0, 9]),
          wire(2, 1, [-0.1, 0, 9], [0.1, 0, 9]),
          wire(3, 81, [0.1, 0, 9], [26.6 * factor, 0, 9]),
        ],
        2,
      ),
  },
  {
    name: "low-dipole-30m",
    words: "half-wave dipole 3.5 m up",
    fixed: "nothing",
    ratio: 1,
    bands: ["30m"],
    model: (factor) => overGround([wire(1, 51, [0, -7.15 * factor, 3.5], [0, 7.15 * factor, 3.5])], 1),
  },
  {
    name: "dipole-15m",
    words: "half-wave dipole 10 m up",
    fixed: "nothing",
    ratio: 1,
    bands: ["15m"],
    model: (factor) => overGround([wire(1, 41, [0, -3.38 * factor, 10], [0, 3.38 * factor, 10])], 1),
  },
  {
    name: "loop-40m",
    words: "horizontal square loop of a wave, 8 m up, through 2:1",
    fixed: "nothing",
    ratio: 2,
    bands: ["40m", "20m", "15m"],
    model: (factor) => {
      const d = 5.4 * factor;
      const corners = [
        [-d, -d, 8],
        [d, -d, 8],
        [d, d, 8],
        [-d, d, 8],
      ];
      return overGround(
        corners.map((from, k) => wire(k + 1, 33, from, corners[(k + 1) % 4])),
        1,
      );
    },
  },
  {
    name: "doublet-40m",
    words: "half-wave doublet 11 m up, fed without a transformer on its other bands as well",
    fixed: "nothing",
    ratio: 1,
    bands: ["40m", "15m"],
    model: (factor) => overGround([wire(1, 121, [0, -10.3 * factor, 11], [0, 10.3 * factor, 11])], 1),
  },
  {
    name: "vertical-40m",
    words: "quarter-wave vertical over three raised radials, which are not cut",
    fixed: "radials",
    wireLengthM: 10.15,
    count: 3,
    fixedLengthM: 10.2,
    ratio: 1,
    bands: ["40m", "15m"],
    model: (factor) =>
      overGround(
        [
          wire(1, 1, [0, 0, 2.5], [0, 0, 2.7]),
          wire(2, 31, [0, 0, 2.7], [0, 0, 2.7 + 9.95 * factor]),
          ...radials(3, 10.2, 2.5, 3),
        ],
        1,
      ),
  },
  {
    name: "inverted-l-40m",
    words: "quarter-wave inverted L over one raised counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 10.1,
    count: 1,
    fixedLengthM: 9.6,
    ratio: 1,
    bands: ["40m"],
    model: (factor) =>
      overGround(
        [
          wire(1, 1, [0, 0, 1.5], [0, 0, 1.7]),
          wire(2, 17, [0, 0, 1.7], [0, 0, 7.5]),
          wire(3, 15, [0, 0, 7.5], [10.3 * factor - 5.8, 0, 7.5]),
          wire(4, 31, [0, 0, 1.5], [-9.6, 0, 1.5]),
        ],
        1,
      ),
  },
  {
    name: "end-fed-20m",
    words: "sloping end-fed half wave through 49:1, over a short counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 9.6,
    count: 1,
    fixedLengthM: 1.2,
    ratio: 49,
    bands: ["20m", "10m"],
    model: (factor) =>
      overGround(
        [
          wire(1, 1, [0, 0, 3], [0, 0, 3.2]),
          wire(2, 61, [0, 0, 3.2], [7 * factor, 0, 3.2 + 6.6 * factor]),
          wire(3, 9, [0, 0, 3], [-1.2, 0, 3]),
        ],
        1,
      ),
  },
  {
    name: "vertical-20m-two",
    words: "quarter-wave vertical over two raised radials, which are not cut",
    fixed: "radials",
    wireLengthM: 5.25,
    count: 2,
    fixedLengthM: 4.9,
    ratio: 1,
    bands: ["20m"],
    model: vertical(5.25, 2, 4.9, 1.8),
  },
  {
    name: "vertical-30m-five",
    words: "vertical over five short radials, which are not cut",
    fixed: "radials",
    wireLengthM: 7.6,
    count: 5,
    fixedLengthM: 5.6,
    ratio: 1,
    bands: ["30m"],
    model: vertical(7.6, 5, 5.6, 3),
  },
  {
    name: "vertical-17m-sloping",
    words: "quarter-wave vertical over three radials that slope, which are not cut",
    fixed: "radials",
    wireLengthM: 3.95,
    count: 3,
    fixedLengthM: 3.9,
    ratio: 1,
    bands: ["17m"],
    model: vertical(3.95, 3, 3.9, 4.5, 0.5),
  },
  {
    name: "vertical-10m-six",
    words: "quarter-wave vertical over six raised radials, which are not cut",
    fixed: "radials",
    wireLengthM: 2.5,
    count: 6,
    fixedLengthM: 2.45,
    ratio: 1,
    bands: ["10m"],
    model: vertical(2.5, 6, 2.45, 5),
  },
  {
    name: "sloping-quarter-40m",
    words: "quarter-wave wire that rises over one low counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 11,
    count: 1,
    fixedLengthM: 8.6,
    ratio: 1,
    bands: ["40m"],
    model: rising(10.8, 0.5, 8.6, 0.8),
  },
  {
    name: "sloping-long-80m",
    words: "wire longer than a quarter wave that rises over one short counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 24.5,
    count: 1,
    fixedLengthM: 13.8,
    ratio: 1,
    bands: ["80m"],
    model: rising(24.3, 0.3, 13.8, 4),
  },
  {
    name: "three-eighths-30m",
    words: "wire of three eighths of a wave, nearly upright, over one counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 10.4,
    count: 1,
    fixedLengthM: 3.9,
    ratio: 2,
    bands: ["30m"],
    model: rising(10.2, 1.2, 3.9, 1.5),
  },
  {
    name: "end-fed-40m",
    words: "end-fed half wave that hardly rises, through 49:1, over a short counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 20.2,
    count: 1,
    fixedLengthM: 2,
    ratio: 49,
    bands: ["40m", "20m", "15m"],
    model: rising(20, 0.1, 2, 5.5),
  },
  {
    name: "end-fed-17m",
    words: "end-fed half wave, upright, through 49:1, over a short counterpoise, which is not cut",
    fixed: "counterpoise",
    wireLengthM: 7.9,
    count: 1,
    fixedLengthM: 0.9,
    ratio: 49,
    bands: ["17m"],
    model: rising(7.7, 1.45, 0.9, 2),
  },
];
