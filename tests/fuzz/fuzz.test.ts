/** A short run of the fuzzing that `pnpm fuzz` does for long: mutated files are read or refused, and nothing else happens. */
import { check, planById, readSweeps } from "@feedpoint/core";
import { expect, test } from "vitest";
import { present } from "../support/sweeps.js";
import { originals, trial } from "./fuzz-reader.js";

const FILES = 300;

test(`${FILES} mutated files give sweeps that keep their rules, or a refusal in one line`, () => {
  const files = originals(new URL(import.meta.url));
  const trials = Array.from({ length: FILES }, (_, i) => trial(files, i + 1));
  const faults = trials.filter(({ outcome }) => outcome === "fault");
  expect(faults.map(({ seed, fault }) => `${seed}: ${fault}`)).toEqual([]);
  // Mutations that only ever broke a file, or never did, would test little.
  expect(trials.filter(({ outcome }) => outcome === "read").length).toBeGreaterThan(FILES / 10);
  expect(trials.filter(({ outcome }) => outcome === "refused").length).toBeGreaterThan(FILES / 10);
});

test("frequencies beyond all sense are judged and end (numbers of that size are more than half a hertz apart)", () => {
  const rows = [11.1, 13.5, 16.6, 19.8, 19.8, 16.6, 13.6, 11.3].map(
    (lossDb, i) => `${13_800_000 + i * 100_000} -${lossDb} 90`,
  );
  const bytes = new TextEncoder().encode(["# DB R 75", ...rows].join("\n"));
  const [sweep] = readSweeps(bytes, { fileName: "invented.s1p" });
  const result = check(present(sweep, "sweep"), { plan: present(planById("us-part97"), "plan") });
  expect(result.sweep.startHz).toBe(13_800_000e9);
  expect(result.bands.every(({ verdict }) => verdict === "not-swept")).toBe(true);
});
