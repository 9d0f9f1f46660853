/** Modes of operating that can be named with `--modes` and in a station file. */
export const MODE_NAMES = ["cw", "ssb", "usb", "lsb", "am", "fm", "rtty", "data", "image"] as const;
/** The name of a mode: one of {@link MODE_NAMES}. ssb is the sideband that is usual on the band; usb and lsb are that one. */
export type ModeName = (typeof MODE_NAMES)[number];
