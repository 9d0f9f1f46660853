/** Complex numbers as plain data, and the few functions that circuits need. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const subtract = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const scaled = (a: Complex, factor: number): Complex => ({ re: a.re * factor, im: a.im * factor });
export const magnitude = (a: Complex): number => Math.hypot(a.re, a.im);

export function divided(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}

export const inverse = (a: Complex): Complex => divided({ re: 1, im: 0 }, a);
export const sum = (terms: readonly Complex[]): Complex => terms.reduce(add, { re: 0, im: 0 });
/** Impedances side by side: the inverse of the sum of the inverses. */
export const parallel = (...impedances: readonly Complex[]): Complex => inverse(sum(impedances.map(inverse)));

/** tanh(a + jb) = (sinh 2a + j sin 2b) / (cosh 2a + cos 2b). */
export function tanh({ re, im }: Complex): Complex {
  if (re > 15) return { re: 1, im: 0 };
  const below = Math.cosh(2 * re) + Math.cos(2 * im);
  return { re: Math.sinh(2 * re) / below, im: Math.sin(2 * im) / below };
}
