/** Sweeps for the bench, made by a formula. */
const POINTS = 1001;

/** A sweep of a series resonance at 7.1 MHz behind a line, with a little deterministic unrest, as rows of f, Γ, Z, SWR. */
export function rowsOf(seed) {
  let state = seed + 1;
  const unrest = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 2 ** 32 - 0.5) * 0.002;
  };
  return Array.from({ length: POINTS }, (_, i) => {
    const megahertz = 1 + (29 * i) / (POINTS - 1);
    const x = 12 * 60 * (megahertz / 7.1 - 7.1 / megahertz);
    const size = (60 + 50) ** 2 + x * x;
    const angle = -0.9 * megahertz;
    const re = ((60 - 50) * (60 + 50) + x * x) / size;
    const im = (x * (60 + 50) - x * (60 - 50)) / size;
    return {
      megahertz,
      re: re * Math.cos(angle) - im * Math.sin(angle) + unrest(),
      im: re * Math.sin(angle) + im * Math.cos(angle) + unrest(),
    };
  });
}

/** The same as a Touchstone file. */
export const touchstoneText = (rows) =>
  `! bench\n# MHz S RI R 50\n${rows.map(({ megahertz, re, im }) => `${megahertz.toFixed(6)} ${re.toFixed(6)} ${im.toFixed(6)}`).join("\n")}\n`;
