import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const CORE = new URL("../packages/core/", import.meta.url);

/** What each name that the library can be imported by is built from, longer names first; its package.json lists them. */
export const LIBRARY_ENTRIES = Object.fromEntries(
  Object.entries(JSON.parse(readFileSync(new URL("package.json", CORE), "utf8")).exports)
    .map(([name, { default: built }]) => [
      `@feedpoint/core${name.slice(1)}`,
      fileURLToPath(new URL(built.replace(/^\.\/dist\/(.*)\.js$/, "src/$1.ts"), CORE)),
    ])
    .toSorted(([one], [other]) => other.length - one.length),
);
