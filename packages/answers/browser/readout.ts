import { frequencyPlane, type Place, smithPlane } from "./plane.js";
import { inWords, nearestRow, type Row, type Values, valuesOf } from "./values.js";

const SVG = "http://www.w3.org/2000/svg";
/** How far each key moves, in rows. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -10,
  PageUp: 10,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** Tables are read when a chart is first touched, so that a page with many opens at once. */
const read = new WeakMap<SVGSVGElement, readonly Values[]>();

/** Makes the charts below an element tell their values: under the pointer, and by the arrow keys. */
export function equipCharts(below: ParentNode): void {
  document.documentElement.classList.add("tells");
  for (const chart of below.querySelectorAll<SVGSVGElement>("svg[data-values]")) equip(chart);
}

function equip(chart: SVGSVGElement): void {
  const readout = chart.parentElement?.querySelector(".readout");
  if (!(readout instanceof HTMLElement)) return;
  const plane = chart.hasAttribute("data-smith") ? smithPlane(chart) : frequencyPlane(chart);
  const cursor = made(chart, "path", "cursor");
  const spots: SVGElement[] = [];
  let index = -1;

  const curves = (): readonly Values[] => {
    const known = read.get(chart);
    if (known !== undefined) return known;
    const all = valuesOf(chart).map(({ name, rows }) => ({ name, rows: rows.filter(plane.holds) }));
    const held = all.filter(({ rows }) => rows.length > 0);
    read.set(chart, held);
    chart.setAttribute("aria-valuemin", String(held[0]?.rows[0]?.megahertz ?? 0));
    chart.setAttribute("aria-valuemax", String(held[0]?.rows.at(-1)?.megahertz ?? 0));
    return held;
  };

  const show = (wanted: number): void => {
    const [first, ...others] = curves();
    if (first === undefined) return;
    index = Math.min(first.rows.length - 1, Math.max(0, wanted));
    const row = first.rows[index] as Row;
    const shown = [
      { values: first, at: index },
      ...others.map((values) => ({ values, at: nearestRow(values.rows, row.megahertz) })),
    ];
    cursor.setAttribute("d", plane.lineAt(row));
    shown.forEach(({ values, at }, curve) => {
      spots[curve] ??= made(chart, "circle", "spot");
      mark(spots[curve], plane.placeOf(values.rows[at] as Row, curve));
    });
    const lines = shown.map(({ values, at }) => inWords(values, at));
    readout.replaceChildren(...lines.flatMap((line, i) => (i === 0 ? [line] : [document.createElement("br"), line])));
    chart.setAttribute("aria-valuenow", String(row.megahertz));
    chart.setAttribute("aria-valuetext", lines.join("; "));
  };

  chart.setAttribute("role", "slider");
  chart.setAttribute("tabindex", "0");
  chart.setAttribute("aria-valuemin", chart.getAttribute("data-low") ?? "0");
  chart.setAttribute("aria-valuemax", chart.getAttribute("data-high") ?? "1");
  chart.setAttribute("aria-valuenow", chart.getAttribute("data-low") ?? "0");
  chart.setAttribute("aria-valuetext", "no frequency chosen yet");
  for (const kind of ["pointermove", "pointerdown"] as const)
    chart.addEventListener(kind, (event) => {
      const [first] = curves();
      if (first !== undefined) show(plane.nearest(first.rows, placeOf(chart, event)));
    });
  chart.addEventListener("focus", () => {
    if (index < 0 && chart.matches(":focus-visible")) show(Math.floor((curves()[0]?.rows.length ?? 1) / 2));
  });
  chart.addEventListener("keydown", (event) => {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    show(index + step);
  });
}

function made(chart: SVGSVGElement, kind: "path" | "circle", name: string): SVGElement {
  const element = document.createElementNS(SVG, kind);
  element.setAttribute("class", name);
  chart.append(element);
  return element;
}

function mark(spot: SVGElement, place: Place | null): void {
  spot.setAttribute("r", place === null ? "0" : "4");
  if (place === null) return;
  spot.setAttribute("cx", place.x.toFixed(1));
  spot.setAttribute("cy", place.y.toFixed(1));
}

/** Where the pointer is, in the units of the picture. */
function placeOf(chart: SVGSVGElement, event: PointerEvent): Place {
  const { left, top, width } = chart.getBoundingClientRect();
  const scale = chart.viewBox.baseVal.width / width;
  return { x: (event.clientX - left) * scale, y: (event.clientY - top) * scale };
}
