/** The one place that picks digits and units for people. */

export const megahertz = (frequencyHz: number): string => (frequencyHz / 1e6).toFixed(3);

export const kilohertz = (widthHz: number): string => `${Math.round(widthHz / 1000)} kHz`;

export const swr = (value: number | null): string => {
  if (value === null) return "–";
  if (value === Number.POSITIVE_INFINITY) return "∞";
  return value < 10 ? value.toFixed(2) : value < 100 ? value.toFixed(1) : value.toFixed(0);
};

/** A share of a whole; neither a part of it nor all but a part is rounded away. */
export const percent = (fraction: number): string => {
  const rounded = Math.round(fraction * 100);
  if (rounded === 100 && fraction < 1) return "99 %";
  if (rounded === 0 && fraction > 0) return "1 %";
  return `${rounded} %`;
};

export const span = ({ lowHz, highHz }: { lowHz: number; highHz: number }): string =>
  `${megahertz(lowHz)}-${megahertz(highHz)}`;

const NEEDS = {
  none: "no tuner",
  "built-in-tuner": "built-in tuner",
  "wide-range-tuner": "wide-range tuner",
  "beyond-tuner": "more than a tuner",
  unknown: "not known",
} as const;

export const need = (value: keyof typeof NEEDS): string => NEEDS[value];

/** A change with its sign, a true minus for a person; what rounds to nothing has none. */
export const signed = (value: number, digits: number): string => {
  const size = Math.abs(value).toFixed(digits);
  if (Number(size) === 0) return size;
  return `${value > 0 ? "+" : "−"}${size}`;
};
