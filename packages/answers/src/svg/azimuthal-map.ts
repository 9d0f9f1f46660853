import { type HeardWhere, type Listener, SECTORS } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";

/** Listeners of several deployments on one band, each by its name. */
export interface MapSide {
  readonly name: string;
  readonly role: "only" | "before" | "after";
  readonly where: HeardWhere;
}

const SIZE = 480;
const CENTRE = SIZE / 2;
const RADIUS = 190;
/** Rings at which distances are named, km, as many of them as are needed. */
const RINGS_KM = [500, 1000, 2000, 5000, 10_000, 20_000];
const DEGREE = Math.PI / 180;

/**
 * Who heard the own station, by bearing and distance: the own station in the middle, north above, distance from the middle by its
 * root, so that near and far both have room. No coast is drawn and none is needed.
 */
export function azimuthalMap(band: string, sides: readonly MapSide[]): Markup | null {
  const all = sides.flatMap(({ where }) => where.listeners);
  if (all.length === 0) return null;
  const farthest = Math.max(...all.map(({ distanceKm }) => distanceKm));
  const edgeKm = RINGS_KM.find((ring) => ring >= farthest) ?? farthest;
  const out = (km: number) => RADIUS * Math.sqrt(Math.min(1, km / edgeKm));
  const rings = RINGS_KM.filter((ring) => ring <= edgeKm).slice(-3);
  const names = sides.map(({ name }) => name).join(" and ");
  return html`<svg class="chart map" xmlns="http://www.w3.org/2000/svg" style="max-width:${SIZE}px" viewBox="0 0 ${SIZE} ${SIZE}" role="img" aria-label="Receivers that heard ${names} on ${band}, by bearing and distance">${rings.map(
    (ring) =>
      html`<circle class="rule" cx="${CENTRE}" cy="${CENTRE}" r="${tenths(out(ring))}"/><text class="t halo" x="${CENTRE + 4}" y="${tenths(CENTRE - out(ring) + 14)}">${ring} km</text>`,
  )}${SECTORS.map((sector, i) => direction(sector, i))}${sides.map(({ role, where }) =>
    where.listeners.map((listener) => sign(listener, role, out)),
  )}${legend(sides)}</svg>`;
}

const tenths = (value: number): string => value.toFixed(1);

function direction(sector: string, index: number): Markup {
  const angle = (index * 360 * DEGREE) / SECTORS.length;
  const [east, north] = [Math.sin(angle), Math.cos(angle)];
  const at = (r: number) => `${tenths(CENTRE + r * east)},${tenths(CENTRE - r * north)}`;
  return html`<path class="rule" d="M${CENTRE},${CENTRE}L${at(RADIUS)}"/><text class="strong" x="${tenths(CENTRE + (RADIUS + 16) * east)}" y="${tenths(CENTRE - (RADIUS + 16) * north + 5)}" text-anchor="middle">${sector}</text>`;
}

/** A ring; of the deployment before a change a square around it, so that both are seen where both were heard. */
function sign({ bearingDeg, distanceKm }: Listener, role: MapSide["role"], out: (km: number) => number): Markup {
  const r = out(distanceKm);
  const [x, y] = [CENTRE + r * Math.sin(bearingDeg * DEGREE), CENTRE - r * Math.cos(bearingDeg * DEGREE)];
  return role === "before"
    ? html`<rect class="dip before" x="${tenths(x - 6)}" y="${tenths(y - 6)}" width="12" height="12"/>`
    : html`<circle class="dip ${role}" cx="${tenths(x)}" cy="${tenths(y)}" r="4"/>`;
}

const legend = (sides: readonly MapSide[]): Markup | null =>
  sides.length < 2
    ? null
    : html`${sides.map(({ name, role }, i) => html`<text x="24" y="${18 + 18 * i}">${name}</text>${role === "before" ? html`<rect class="dip before" x="6" y="${8 + 18 * i}" width="10" height="10"/>` : html`<circle class="dip ${role}" cx="11" cy="${13 + 18 * i}" r="4"/>`}`)}`;
