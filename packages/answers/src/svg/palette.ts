/**
 * Colours by what they are for. Lines and signs take theirs from the palette of M. Okabe and K. Ito, "Color Universal
 * Design: how to make figures and presentations that are friendly to colorblind people", 2008 (the values from memory);
 * what tells two things apart is never colour alone.
 */
export const PALETTE_SOURCE =
  "M. Okabe, K. Ito: Color Universal Design, how to make figures and presentations that are friendly to colorblind people, 2008";

const OKABE_ITO = {
  orange: "#e69f00",
  skyBlue: "#56b4e9",
  bluishGreen: "#009e73",
  yellow: "#f0e442",
  blue: "#0072b2",
  vermillion: "#d55e00",
  reddishPurple: "#cc79a7",
} as const;

export type ColourName =
  | "paper"
  | "ink"
  | "muted"
  | "grid"
  | "frame"
  | "band"
  | "limit"
  | "curve"
  | "before"
  | "within"
  | `band-${0 | 1 | 2 | 3 | 4 | 5}`;

export type Palette = Readonly<Record<ColourName, string>>;

export const LIGHT: Palette = {
  paper: "#ffffff",
  ink: "#1b1f23",
  muted: "#57606a",
  grid: "#e1e5e9",
  frame: "#8b949e",
  band: "#eef2f6",
  limit: "#57606a",
  curve: OKABE_ITO.blue,
  before: OKABE_ITO.vermillion,
  within: OKABE_ITO.bluishGreen,
  "band-0": OKABE_ITO.blue,
  "band-1": OKABE_ITO.vermillion,
  "band-2": OKABE_ITO.bluishGreen,
  "band-3": OKABE_ITO.reddishPurple,
  "band-4": OKABE_ITO.orange,
  "band-5": OKABE_ITO.skyBlue,
};

export const DARK: Palette = {
  paper: "#14181c",
  ink: "#e8ecf0",
  muted: "#a3adb7",
  grid: "#2b3238",
  frame: "#6b7680",
  band: "#20272d",
  limit: "#a3adb7",
  curve: OKABE_ITO.skyBlue,
  before: OKABE_ITO.orange,
  within: OKABE_ITO.bluishGreen,
  "band-0": OKABE_ITO.skyBlue,
  "band-1": OKABE_ITO.orange,
  "band-2": OKABE_ITO.bluishGreen,
  "band-3": OKABE_ITO.reddishPurple,
  "band-4": OKABE_ITO.yellow,
  "band-5": OKABE_ITO.vermillion,
};

/** How many colours there are for bands. */
export const BAND_COLOURS = 6;
