/**
 * What readers of Touchstone text have stumbled over: option line, reference, file name.
 *
 * Sources: IBIS Open Forum, Touchstone File Format Specification, Version 2.0 (2009), pages as given; issues of public
 * projects by their number.
 */
import { describe, expect, test } from "vitest";
import {
  expectLoad,
  expectRefusal,
  LOAD,
  messageOf,
  notesOf,
  RI_ROWS,
  readOne,
  textOf,
} from "../support/known-load.js";

const withOptionLine = (line: string) => textOf(line, RI_ROWS);

describe("the option line (Spec 6-7; Nubis-Communications/SignalIntegrity#42)", () => {
  test.each([
    "# S MHz RI",
    "# MHz S R 50 RI",
    "# R 50 RI MHz S",
    "# RI S MHz",
    "# mhz s ri r 50",
    "#\tMHZ \t S  Ri   R  5.0E1  ",
    "# MHz S RI R 50 ! what follows",
    "# MHz S RI R",
  ])("%j is read by value, not by place", (line) => {
    const sweep = readOne(withOptionLine(line));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual([]);
  });

  test("a bare # is legal and means GHz, S, MA, R 50", () => {
    const rows = ["0.007 0.5 0", "0.0071 0.25 180"];
    const sweep = readOne(textOf("#", rows));
    expectLoad(sweep, {
      tolerance: 1e-16,
      points: [
        { mhz: "7", frequencyHz: 7_000_000, ohms: [150, 0], reflection: [0.5, 0] },
        { mhz: "7.1", frequencyHz: 7_100_000, ohms: [30, 0], reflection: [-0.25, 0] },
      ],
    });
    expect(notesOf(sweep)).toEqual(["frequency-unit-default@1"]);
  });

  test("later option lines are ignored, and that is said with their line", () => {
    const [first = "", ...rest] = RI_ROWS;
    const sweep = readOne(textOf("# MHz S RI R 50", "# Hz Z MA R 75", first, "# GHz S DB R 1", rest));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["second-option-line@2", "second-option-line@4"]);
  });

  test.each([
    ["# MHz GHz S RI R 50", /"GHz" states the same thing twice; expected each part once/],
    ["# MHz S RI MA R 50", /"MA" states the same thing twice/],
    ["# MHz S Z RI R 50", /"Z" states the same thing twice/],
    ["# MHz S RI R 50 R 75", /"R" states the same thing twice/],
  ])("%j is refused: the same kind of part twice", (line, says) => {
    expectRefusal(withOptionLine(line), { code: "bad-option-line", line: 1, says });
  });
});

describe("a missing blank (transmitterdan/s2spice#18)", () => {
  test("#MHz is MHz and not the default, and is said", () => {
    const sweep = readOne(textOf("! by hand", "#MHz S RI R 50", RI_ROWS));
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["option-line-repaired@2"]);
    expect(messageOf(sweep, "option-line-repaired")).toContain('"#MHz"');
  });

  test("R75 is 75 ohm, and is said", () => {
    const sweep = readOne(withOptionLine("# MHz S RI R75"));
    expectLoad(sweep, { referenceOhms: 75 });
    expect(notesOf(sweep)).toEqual(["option-line-repaired@1"]);
    expect(messageOf(sweep, "option-line-repaired")).toContain('"R75"');
  });

  test.each([
    ["# MHz S RI banana R 50", /"banana" is not known; expected Hz, kHz, MHz or GHz/],
    ["# THz S RI R 50", /"THz" is not known; expected Hz, kHz, MHz or GHz/],
    ["# MHz T RI R 50", /"T" is not known; expected .*S, Y, Z, H or G/],
    ["# MHz S RIR 50", /"RIR" is not known; expected .*RI, MA or DB/],
  ])("%j is refused and not skipped over", (line, says) => {
    expectRefusal(withOptionLine(line), { code: "bad-option-line", line: 1, says });
  });
});

describe("the default unit", () => {
  test("# S RI is GHz by the rule, and is said", () => {
    const sweep = readOne(withOptionLine("# S RI"));
    expectLoad(sweep, { points: LOAD.map((point) => ({ ...point, frequencyHz: point.frequencyHz * 1000 })) });
    expect(notesOf(sweep)).toEqual(["frequency-unit-default@1"]);
    expect(messageOf(sweep, "frequency-unit-default")).toContain("GHz");
  });

  test.each(["# s S RI R 50", "# S RI s R 50", "# sec S RI R 50", "# S s RI"])(
    "%j, a sweep over time, is refused by name (scikit-rf/scikit-rf#432)",
    (line) => {
      expectRefusal(withOptionLine(line), {
        code: "bad-option-line",
        line: 1,
        says: /"s(ec)?"( \(seconds\))? is no unit of frequency; expected Hz, kHz, MHz or GHz/,
      });
    },
  );

  test("a sweep over power is refused by name", () => {
    expectRefusal(withOptionLine("# dBm S RI R 50"), {
      code: "bad-option-line",
      line: 1,
      says: /"dBm" is no unit of frequency; expected Hz, kHz, MHz or GHz/,
    });
  });
});

describe("the reference resistance (TSIRD 5.1; scikit-rf/scikit-rf#652, #724)", () => {
  const twoPorts = (line: string) =>
    textOf(
      line,
      LOAD.map(({ mhz, reflection }) => `${mhz} ${reflection.join(" ")} 0.9 0 0.9 0 ${reflection.join(" ")}`),
    );

  test.each([
    [1, 50],
    [2, 75],
  ])("port %i of a file with R 50 75 has %i ohm", (port, referenceOhms) => {
    const sweep = readOne(twoPorts("# MHz S RI R 50 75"), { port });
    expectLoad(sweep, { referenceOhms });
    expect(notesOf(sweep)).toEqual(["one-port-of-many@1"]);
  });

  test.each(["(75+0j)", "(75-0j)", "(75+0i)", "(75.0+0.0j)"])(
    "R %s has no imaginary part and is 75 ohm",
    (reference) => {
      const sweep = readOne(withOptionLine(`# MHz S RI R ${reference}`));
      expectLoad(sweep, { referenceOhms: 75 });
      expect(notesOf(sweep)).toEqual([]);
    },
  );

  test.each(["(50+50j)", "(10+10j)", "0", "-50", "1e999"])("R %s is refused with the reason", (reference) => {
    expectRefusal(withOptionLine(`# MHz S RI R ${reference}`), {
      code: "bad-option-line",
      line: 1,
      says: /the reference ".*" is not usable; expected a positive real number of ohms after R/,
    });
  });

  test("more references than ports are refused", () => {
    expectRefusal(withOptionLine("# MHz S RI R 50 75"), {
      code: "bad-option-line",
      line: 1,
      says: /2 reference impedances for 1 port.*expected one for all ports, or one per port/,
    });
  });
});

test("a port impedance in a comment is mentioned and not used (scikit-rf/scikit-rf#354, #369, #394)", () => {
  const rows = RI_ROWS.flatMap((row) => [row, "! Gamma 0 0", "! Port Impedance 75 0"]);
  const sweep = readOne(textOf("# MHz S RI R 50", rows));
  expectLoad(sweep);
  expect(sweep.findings.map(({ code }) => code)).toEqual(["reference-mentioned"]);
  expect(messageOf(sweep, "reference-mentioned")).toContain("Port Impedance 75 0");
});

test("blanks before #, before numbers and before comments do not matter (scikit-rf/scikit-rf#1339)", () => {
  const sweep = readOne(
    textOf(
      "   ! first",
      " \t# MHz S RI R 50",
      RI_ROWS.map((row) => `\t  ${row}   `),
    ),
  );
  expectLoad(sweep);
  expect(notesOf(sweep)).toEqual([]);
});

describe("the file's name (scikit-rf/scikit-rf#402, #594; PR #1304; Spec 4)", () => {
  const onePort = withOptionLine("# MHz S RI R 50");

  test.each([undefined, "mooring.txt", "mooring", "mooring.csv", "mooring.S1P", "mooring.ts"])(
    "%s: the content decides",
    (fileName) => {
      const sweep = readOne(onePort, fileName === undefined ? {} : { fileName });
      expectLoad(sweep);
      expect(notesOf(sweep)).toEqual([]);
    },
  );

  test("a name that contradicts the rows is said", () => {
    const sweep = readOne(onePort, { fileName: "mooring.s2p" });
    expectLoad(sweep);
    expect(notesOf(sweep)).toEqual(["name-contradicts-ports@1"]);
    expect(messageOf(sweep, "name-contradicts-ports")).toMatch(/2 ports.*rows hold 1/);
  });
});
