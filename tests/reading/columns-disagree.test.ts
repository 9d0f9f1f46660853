/** Columns that should say the same and do not: what is said of it, and what is not worth a word. The load is invented. */
import { describe, expect, test } from "vitest";
import { LOAD, messageOf, notesOf, readOne, textOf } from "../support/known-load.js";
import type { Pair } from "../support/sweeps.js";

/** SWR of an impedance against a reference, by hand: ρ = |Z - Z0| / |Z + Z0|. */
function swrAgainst([r, x]: Pair, z0: number): number {
  const rho = Math.hypot(r - z0, x) / Math.hypot(r + z0, x);
  return (1 + rho) / (1 - rho);
}

const rows = (cells: (ohms: Pair) => readonly (number | string)[]) =>
  LOAD.map(({ mhz, ohms }) => [mhz, ...cells(ohms)].join(","));
const reading = (header: string, lines: readonly string[]) => readOne(textOf(`Frequency (MHz),${header}`, lines));

describe("R, X and SWR", () => {
  test("that agree are not spoken of, though the SWR is cut to one digit", () => {
    const cut = rows(([r, x]) => [r, x, Math.floor(10 * swrAgainst([r, x], 50)) / 10]);
    expect(notesOf(reading("R,X,SWR", cut))).not.toContain("columns-disagree");
  });

  test.each([25, 75, 300])("that agree at %d Ω say which reference the file seems to have", (ohms) => {
    const sweep = reading(
      "R,X,SWR",
      rows((z) => [...z, swrAgainst(z, ohms).toFixed(4)]),
    );
    expect(messageOf(sweep, "columns-disagree")).toContain(`They agree at ${ohms} Ω`);
    expect(messageOf(sweep, "columns-disagree")).toContain("R and X was used");
  });

  test("that agree with R and X exchanged say so", () => {
    const turned = LOAD.filter(({ ohms: [, x] }) => x > 0).concat(LOAD.filter(({ ohms: [, x] }) => x > 0));
    const lines = turned.map(({ ohms: [r, x] }, i) =>
      [7 + i / 100, x + 5, r, swrAgainst([r, x + 5], 50).toFixed(4)].join(","),
    );
    expect(messageOf(reading("R,X,SWR", [...lines, "7.2,-20,60,1.7"]), "columns-disagree")).toContain(
      "the columns seem to be swapped",
    );
  });

  test("that agree in no way leave the reason open", () => {
    const sweep = reading(
      "R,X,SWR",
      rows((z) => [...z, 17]),
    );
    expect(messageOf(sweep, "columns-disagree")).toContain("A column may have a wrong unit or another meaning");
  });
});
