/** Absurd or treacherous files. Truth says what a careful person does: read right, read with a caution, or ask. */
import { swrOf } from "./antenna.js";
import { draftOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";
import { TREACHEROUS_FREQUENCIES } from "./treacherous-frequencies.js";
import { TREACHEROUS_HEADERS } from "./treacherous-headers.js";
import { TREACHEROUS_IMPEDANCES } from "./treacherous-impedances.js";
import { angleOfRow, ask, rewrite, rhoOfRow, wide } from "./treachery.js";
import type { Draft } from "./truth.js";

const decibels = (ratio: number): number => 20 * Math.log10(ratio);

const TREACHEROUS_REFLECTIONS: Variants = {
  "SWR minus one": (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 1, 3, (row) => swrOf(rhoOfRow(table, row)) - 1, 0.002);
    table.head[1] = rng.pick(["SWR-1", "SWR minus 1", "SWR - 1", "SWR less one"]);
    return { table, clear: false };
  },
  "one over SWR under SWR": (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 1, 3, (row) => 1 / swrOf(rhoOfRow(table, row)));
    table.head[1] = "SWR";
    return ask(table);
  },
  "SWR in dB": (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 1, 3, (row) => decibels(swrOf(rhoOfRow(table, row))), 0.001);
    table.head[1] = rng.pick(["SWR (dB)", "VSWR [dB]", "SWR dB"]);
    return { table, clear: false };
  },
  gradians: (rng) => {
    const table = wide(rng, "gamma-angle");
    rewrite(table, 2, 2, (row) => (angleOfRow(table, row) * 200) / Math.PI);
    for (const point of table.truth.points) point.tol = Math.max(point.tol, 1e-4);
    const name = rng.pick(["phase (gon)", "phase (grad)", "angle [gradians]"]);
    table.head[2] = name;
    if (name !== "phase (grad)") return { table, clear: false };
    // So some write degrees too: two ways.
    const either = { ...table.truth, vector: "either" as const };
    return { table, clear: false, truth: { kind: "sweeps", ways: [[either]], doubt: true } };
  },
  "radians and no word of it": (rng) => {
    const table = wide(rng, "gamma-angle");
    rewrite(table, 2, 4, (row) => angleOfRow(table, row));
    table.head[2] = rng.pick(["phase", "angle"]);
    return ask(table);
  },
  "return loss against SWR at odds": (rng) => {
    const table = wide(rng, "swr", "return-loss");
    rewrite(table, 2, 2, (row) => -decibels(rhoOfRow(table, row)) / 2);
    return ask(table);
  },
  "return loss of mixed signs": (rng) => {
    const table = wide(rng, "return-loss");
    table.rows.forEach((row, i) => {
      if (i % 3 === 0) row[1] = `-${at(row, 1)}`;
    });
    return ask(table);
  },
  "power in dBm, forward and reflected": (rng) => {
    const table = wide(rng, "forward-reflected");
    rewrite(table, 1, 2, () => 30);
    rewrite(table, 2, 2, (row) => 30 + decibels(rhoOfRow(table, row)), 0.003);
    table.head.splice(1, 2, "Forward (dBm)", "Reflected (dBm)");
    return { table, clear: false };
  },
  "magnitudes beyond one": (rng) => {
    const table = wide(rng, "rho");
    rewrite(table, 1, 3, (row) => swrOf(rhoOfRow(table, row)));
    table.head[1] = "|Γ|";
    return ask(table);
  },
};

/** A file that misleads whoever is not careful. */
export function treacherous(rng: Rng): Draft {
  return draftOf(rng, {
    ...TREACHEROUS_FREQUENCIES,
    ...TREACHEROUS_HEADERS,
    ...TREACHEROUS_IMPEDANCES,
    ...TREACHEROUS_REFLECTIONS,
  });
}
