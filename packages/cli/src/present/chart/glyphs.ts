/** The characters that a terminal chart is drawn with. */
export interface Glyphs {
  /** Whether the eight dots of a braille character draw the curve; else one character a column */
  readonly hasDots: boolean;
  readonly curve: string;
  readonly before: string;
  readonly limit: string;
  readonly axis: string;
  readonly tick: string;
  readonly corner: string;
  readonly floor: string;
  readonly within: string;
  readonly low: string;
  readonly high: string;
  readonly best: string;
  readonly upTo: string;
  readonly infinity: string;
}

export const UNICODE: Glyphs = {
  hasDots: true,
  curve: "⠒",
  before: "○",
  limit: "┄",
  axis: "│",
  tick: "┤",
  corner: "└",
  floor: "─",
  within: "━",
  low: "┝",
  high: "┥",
  best: "▲",
  upTo: "≤",
  infinity: "∞",
};

export const ASCII: Glyphs = {
  hasDots: false,
  curve: "*",
  before: "o",
  limit: "-",
  axis: "|",
  tick: "+",
  corner: "+",
  floor: "-",
  within: "=",
  low: "[",
  high: "]",
  best: "^",
  upTo: "<=",
  infinity: "inf",
};

/** ASCII where it is asked for, or where the locale is not one of UTF-8. */
export function glyphsFor(wantsAscii: boolean, environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): Glyphs {
  if (wantsAscii) return ASCII;
  const locale = environment.LC_ALL || environment.LC_CTYPE || environment.LANG || "";
  // The console of Windows takes Unicode whatever the environment says.
  return platform === "win32" || /utf-?8/i.test(locale) ? UNICODE : ASCII;
}
