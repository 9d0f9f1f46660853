import type { Choke, Element } from "./elements.js";
import type { Random } from "./random.js";
import type { Station } from "./station.js";
import type { Change } from "./truth.js";

const plugged = (before: Station, element: Element): Station => ({ ...before, plug: [...before.plug, element] });
const fed = (before: Station, element: Element): Station => ({ ...before, feed: [...before.feed, element] });

export const coilSeriesPlug: Change = (before, random) => {
  const henry = random.log(5e-8, 2e-6);
  const q = random.range(60, 200);
  return { after: plugged(before, { kind: "series-coil", henry, q }), facts: { henry, q, at: "plug" } };
};

export const capacitorSeriesPlug: Change = (before, random) => {
  const farad = random.log(5e-11, 2e-9);
  const q = random.range(300, 1500);
  return { after: plugged(before, { kind: "series-capacitor", farad, q }), facts: { farad, q, at: "plug" } };
};

export const capacitorAcrossPlug: Change = (before, random) => {
  const farad = random.log(1e-11, 4e-10);
  const q = random.range(300, 1500);
  return { after: plugged(before, { kind: "parallel-capacitor", farad, q }), facts: { farad, q, at: "plug" } };
};

export const resistanceSeriesPlug: Change = (before, random) => {
  const ohms = random.log(2, 30);
  return { after: plugged(before, { kind: "series-resistance", ohms }), facts: { ohms, at: "plug" } };
};

export const resistanceSeriesFeed: Change = (before, random) => {
  const ohms = random.log(2, 30);
  return { after: fed(before, { kind: "series-resistance", ohms }), facts: { ohms, at: "feed" } };
};

export const resistanceParallel: Change = (before, random) => {
  const ohms = random.log(50, 1000);
  const at = random.pick(["plug", "feed"] as const);
  const element: Element = { kind: "parallel-resistance", ohms };
  return { after: at === "plug" ? plugged(before, element) : fed(before, element), facts: { ohms, at } };
};

export const chokeFeed: Change = (before, random) => {
  const choke: Choke = {
    ohms: random.log(300, 3000),
    henry: random.log(2e-6, 2e-5),
    farad: random.log(3e-12, 1.5e-11),
  };
  return { after: fed(before, { kind: "choke", choke }), facts: { ...choke, at: "feed" } };
};

/** The braid of a line of `lengthM` metres that carries current on its outside. */
export function drawBraid(random: Random, lengthM: number): Element {
  return {
    kind: "braid",
    lengthM: lengthM * random.range(0.8, 1) + random.range(1, 4),
    waveOhms: random.range(300, 500),
    nepers: random.range(0.05, 0.25),
    earthOhms: random.log(10, 150),
    choke: null,
  };
}

/** The braid carried current before; a choke at the feed stops it. */
export const braidChoked: Change = (before, random) => {
  const choke: Choke = {
    ohms: random.log(800, 5000),
    henry: random.log(5e-6, 4e-5),
    farad: random.log(2e-12, 1e-11),
  };
  const feed = before.feed.map((element) => (element.kind === "braid" ? { ...element, choke } : element));
  return { after: { ...before, feed }, facts: { ...choke, at: "feed" } };
};
