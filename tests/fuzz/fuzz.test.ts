/** A short run of the fuzzing that `pnpm fuzz` does for long: mutated files are read or refused, and nothing else happens. */
import { expect, test } from "vitest";
import { originals, trial } from "./fuzz-reader.js";

const FILES = 1500;

test(`${FILES} mutated files give sweeps that keep their rules, or a refusal in one line`, () => {
  const files = originals(new URL(import.meta.url));
  const trials = Array.from({ length: FILES }, (_, i) => trial(files, i + 1));
  const faults = trials.filter(({ outcome }) => outcome === "fault");
  expect(faults.map(({ seed, fault }) => `${seed}: ${fault}`)).toEqual([]);
  // Mutations that only ever broke a file, or never did, would test little.
  expect(trials.filter(({ outcome }) => outcome === "read").length).toBeGreaterThan(FILES / 10);
  expect(trials.filter(({ outcome }) => outcome === "refused").length).toBeGreaterThan(FILES / 10);
});
