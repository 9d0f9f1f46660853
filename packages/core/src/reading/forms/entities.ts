import { lookUp } from "../../input/look-up.js";

/** Names that pages and mails have for a character; others are left as they are written. */
const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: " ",
  Omega: "Ω",
  ohm: "Ω",
  deg: "°",
  Gamma: "Γ",
  minus: "-",
  ang: "∠",
};

/** A text with the characters that names such as "&deg;" stand for. */
export const withoutEntities = (text: string): string =>
  text.replace(/&(\w+);/g, (sign, name: string) => lookUp(ENTITIES, name) ?? sign);
