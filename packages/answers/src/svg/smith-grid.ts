import { reflectionFromImpedance } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { tenths } from "./frequency-chart.js";
import type { Place } from "./line-path.js";

/** Where the unit circle of Γ lies in the picture. */
export interface UnitCircle {
  readonly centreX: number;
  readonly centreY: number;
  readonly radius: number;
}

/** Where a reflection coefficient lies: Γ = 0 in the centre, a short at the left, an open end at the right. */
export const smithPlace = (
  { centreX, centreY, radius }: UnitCircle,
  { real, imaginary }: { readonly real: number; readonly imaginary: number },
): Place => ({ x: centreX + radius * real, y: centreY - radius * imaginary });

/** Resistances and reactances that have a line, as multiples of the reference impedance. */
const MULTIPLES = [0.2, 0.5, 1, 2, 5];
const SIGNED_MULTIPLES = MULTIPLES.flatMap((multiple) => [multiple, -multiple]);
/** From the rim to a label. */
const LABEL_DISTANCE = 9;

/**
 * Circles of constant resistance and arcs of constant reactance.
 *
 * With r = R/Z0 and x = X/Z0, the circle has its centre at Γ = r/(1+r) and the radius 1/(1+r); the arc its centre at
 * Γ = 1 + j/x and the radius 1/|x| (D. M. Pozar, Microwave Engineering, 4th ed., section 2.4; the number from memory).
 */
export function smithGrid({ centreX, centreY, radius }: UnitCircle, referenceOhms: number): Markup {
  const circle = { centreX, centreY, radius };
  const resistances = MULTIPLES.map((multiple) => {
    const [centre, size] = [multiple / (1 + multiple), 1 / (1 + multiple)];
    return html`<circle class="rule" cx="${tenths(centreX + radius * centre)}" cy="${centreY}" r="${tenths(radius * size)}"/>`;
  });
  const reactances = SIGNED_MULTIPLES.map((multiple) => {
    const open = smithPlace(circle, { real: 1, imaginary: 0 });
    const rim = smithPlace(circle, reflectionOfReactance(multiple, referenceOhms));
    const size = tenths(radius / Math.abs(multiple));
    const turn = multiple > 0 ? 1 : 0;
    return html`<path class="rule" d="M${open.x},${open.y}A${size},${size},0,0,${turn},${tenths(rim.x)},${tenths(rim.y)}"/>`;
  });
  return html`${resistances}${reactances}<path class="rule" d="M${centreX - radius},${centreY}H${centreX + radius}"/><circle class="frame" cx="${centreX}" cy="${centreY}" r="${radius}"/>`;
}

/** What the lines stand for, in ohms: resistances along the axis, reactances around the rim. */
export function smithLabels(circle: UnitCircle, referenceOhms: number): Markup {
  const { centreX, centreY, radius } = circle;
  const resistances = MULTIPLES.map((multiple) => {
    const { x } = smithPlace(circle, { real: (multiple - 1) / (multiple + 1), imaginary: 0 });
    return html`<text class="t halo" x="${tenths(x + 3)}" y="${centreY - 5}">${ohms(multiple * referenceOhms)}</text>`;
  });
  const reactances = SIGNED_MULTIPLES.map((multiple) => {
    const beyondRim = { ...circle, radius: radius + LABEL_DISTANCE };
    const reflection = reflectionOfReactance(multiple, referenceOhms);
    const { x, y } = smithPlace(beyondRim, reflection);
    // A label grows away from the circle; above and below it, to both sides.
    const anchor = Math.abs(reflection.real) < 0.1 ? "middle" : reflection.real > 0 ? "start" : "end";
    const baseline = y + 5 - 4 * reflection.imaginary;
    return html`<text class="t" x="${tenths(x)}" y="${tenths(baseline)}" text-anchor="${anchor}">${multiple > 0 ? "+" : "−"}j${ohms(Math.abs(multiple * referenceOhms))}</text>`;
  });
  return html`${resistances}${reactances}<text class="t" x="${centreX - radius - 8}" y="${centreY + 4}" text-anchor="end">0</text><text class="t" x="${centreX + radius + 8}" y="${centreY + 4}">∞</text>`;
}

const reflectionOfReactance = (multiple: number, referenceOhms: number) =>
  reflectionFromImpedance({ real: 0, imaginary: multiple * referenceOhms }, referenceOhms);

const ohms = (value: number): string => String(Number(value.toPrecision(3)));
