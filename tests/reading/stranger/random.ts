/** Numbers by chance that depend on a seed and a file's number only, so that any file can be made again by itself. */
import { present } from "../../support/sweeps.js";

/** Source of the method: the mulberry32 generator, public domain; from memory. */
export class Rng {
  private state: number;

  constructor(seed: number, index: number) {
    this.state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(index + 0x7f4a7c15, 0xc2b2ae35)) >>> 0;
    // Neighbouring seeds begin alike.
    for (let i = 0; i < 8; i++) this.next();
  }

  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** A whole number, both ends included. */
  int(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  pick<Item>(items: readonly Item[]): Item {
    return at(items, Math.floor(this.next() * items.length));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  /** The item or none, as likely the one as the other. */
  maybe<Item>(item: Item): Item[] {
    return this.chance(0.5) ? [item] : [];
  }

  /** Several of them, none twice. */
  some<Item>(items: readonly Item[], count: number): Item[] {
    const rest = [...items];
    const chosen: Item[] = [];
    while (chosen.length < count && rest.length > 0) chosen.push(...rest.splice(this.int(0, rest.length - 1), 1));
    return chosen;
  }
}

/** An item that is there for certain, or a failure: what is made must not have holes. */
export function at<Item>(items: ArrayLike<Item>, index: number): Item {
  return present(items[index], `item ${index}`);
}

/** A list of names written as one text, for long lists of them. */
export function words(text: string): string[] {
  return text.split("; ");
}
