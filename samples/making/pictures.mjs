/** The pictures of the README: the name of each, and the arguments of `feedpoint` that draw it, in samples/. */

const POLE = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const WET = "sweeps/2026-07-11-lantern-bridge-wet-feedline.csv";
const FOUR_BANDS = ["--bands", "40m,20m,15m,10m"];
const ALWAYS = ["--plan", "itu-r1", "--no-station"];
const NOTE = ["--note", "Invented demo data, computed from a model, not a measurement."];

const DRAWN = {
  swr: [POLE, ...FOUR_BANDS, "--what", "swr"],
  smith: [POLE, ...FOUR_BANDS, "--what", "smith"],
  change: [POLE, WET, "--bands", "15m", "--what", "curves"],
  season: ["sweeps", ...FOUR_BANDS, "--what", "grid"],
};

export const PICTURES = Object.entries(DRAWN).map(([name, args]) => ({
  name,
  args: ["chart", ...args, ...ALWAYS, ...NOTE],
}));
