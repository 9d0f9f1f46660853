// Complex numbers as plain { re, im } pairs; only the operations the station model needs.

/** @typedef {{ re: number, im: number }} Complex */

/**
 * @param {Complex} a
 * @param {Complex} b
 * @returns {Complex}
 */
export function add(a, b) {
  return { re: a.re + b.re, im: a.im + b.im };
}

/**
 * @param {Complex} a
 * @param {Complex} b
 * @returns {Complex}
 */
export function multiply(a, b) {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/**
 * @param {Complex} a
 * @param {Complex} b
 * @returns {Complex}
 */
export function divide(a, b) {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

/**
 * @param {Complex} a
 * @param {number} factor
 * @returns {Complex}
 */
export function scale(a, factor) {
  return { re: a.re * factor, im: a.im * factor };
}

/**
 * @param {Complex} a
 * @returns {number}
 */
export function magnitude(a) {
  return Math.hypot(a.re, a.im);
}

/**
 * @param {Complex} a
 * @returns {number} degrees, -180 to 180
 */
export function angleDeg(a) {
  return (Math.atan2(a.im, a.re) * 180) / Math.PI;
}

/**
 * @param {number} size
 * @param {number} angleRad
 * @returns {Complex}
 */
export function polar(size, angleRad) {
  return { re: size * Math.cos(angleRad), im: size * Math.sin(angleRad) };
}
