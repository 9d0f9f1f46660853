/** What a phase is of where its name does not say, and columns whose phases contradict each other. All invented. */
import { describe, expect, test } from "vitest";
import { expectLoad, LOAD, messageOf, notesOf, ROUNDING, readOne, textOf } from "../support/known-load.js";

const degrees = (radians: number) => (radians * 180) / Math.PI;
const angleOfImpedance = ({ ohms: [r, x] }: (typeof LOAD)[number]) => degrees(Math.atan2(x, r));
const angleOfReflection = ({ reflection: [real, imaginary] }: (typeof LOAD)[number]) =>
  degrees(Math.atan2(imaginary, real));

describe("a phase that does not say of what", () => {
  const rows = (angle: (point: (typeof LOAD)[number]) => number, reactance = (x: number) => x) =>
    LOAD.map((point) => {
      const [real, imaginary] = point.reflection;
      const rho = Math.hypot(real, imaginary);
      const [r, x] = point.ohms;
      return `${point.mhz},${((1 + rho) / (1 - rho)).toFixed(9)},${r},${reactance(x)},${angle(point).toFixed(9)}`;
    });

  test("is that of Z where R and X have it, however finely it is printed", () => {
    expectLoad(readOne(textOf("Freq (MHz),SWR,R,X,Phase", rows(angleOfImpedance))), { tolerance: ROUNDING });
  });

  test("is that of the reflection where that is the one which R and X have", () => {
    const sweep = readOne(textOf("Freq (MHz),SWR,R,X,Phase", rows(angleOfReflection)));
    expectLoad(sweep, { tolerance: 1e-8 });
    expect(notesOf(sweep)).toEqual(["reference-assumed"]);
  });

  test("is that of Z beside R and |X| as well", () => {
    const sweep = readOne(textOf("Freq (MHz),SWR,R,|X|,Phase", rows(angleOfImpedance, Math.abs)));
    expect(sweep.kind).toBe("scalar");
  });

  test("is questioned beside an SWR alone", () => {
    const lines = LOAD.map((point) => `${point.mhz},2,${angleOfReflection(point).toFixed(3)}`);
    expect(notesOf(readOne(textOf("Freq (MHz),SWR,Phase", lines)))).toContain("reflection-assumed");
    expect(
      notesOf(
        readOne(
          textOf(
            "Freq (MHz),S11 (dB),Phase",
            lines.map((row) => row.replace(",2,", ",-6,")),
          ),
        ),
      ),
    ).toEqual(["reference-assumed"]);
  });

  test("belongs to the transmission that stands before it", () => {
    const lines = LOAD.map(({ mhz }, i) => `${mhz},-6,-20,${10 * i}`);
    expect(readOne(textOf("Freq (MHz),S11 (dB),S21 (dB),Phase", lines)).kind).toBe("scalar");
  });

  test("without its sign is left out", () => {
    const lines = LOAD.map((point) => `${point.mhz},-6,${Math.abs(angleOfReflection(point)).toFixed(3)}`);
    const sweep = readOne(textOf("Freq (MHz),S11 (dB),S11 phase", lines));
    expect(sweep.kind).toBe("scalar");
    expect(notesOf(sweep)).toEqual(["reactance-without-sign", "reference-assumed"]);
  });

  test("from 0 to a full turn needs no sign", () => {
    const lines = LOAD.map((point) => `${point.mhz},-6,${((angleOfReflection(point) + 360) % 360).toFixed(3)}`);
    expect(readOne(textOf("Freq (MHz),S11 (dB),S11 phase", lines)).kind).toBe("vector");
  });
});

test("columns that agree in size and not in phase are reported", () => {
  const lines = LOAD.map(({ mhz, ohms: [r, x], reflection }) => `${mhz},${r},${-x},${reflection.join(",")}`);
  const sweep = readOne(textOf("Freq (MHz),R,X,Re S11,Im S11", lines));
  expect(messageOf(sweep, "columns-disagree")).toContain("agree in the size of the reflection, but not in its phase");
});
