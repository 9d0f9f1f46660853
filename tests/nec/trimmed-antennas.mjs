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

/** Radials from a mast, evenly spread. */
const radials = (count, length, height, firstTag) =>
  Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    return wire(firstTag + k, 31, [0, 0, height], [length * Math.cos(angle), length * Math.sin(angle), height]);
  });

/**
 * @typedef {object} TrimmedAntenna
 * @property {string} name of the CSV file
 * @property {string} words
 * @property {"nothing" | "radials" | "counterpoise"} fixed what is not cut with the wire
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
];
