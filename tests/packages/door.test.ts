/** What a job says to a call that is wrong: which argument, what it takes and what was given. */
import {
  type BandPlan,
  type CheckOptions,
  check,
  delimitedText,
  diff,
  feedlineFrom,
  feedlineKindById,
  gradeSweep,
  type Limits,
  type LineOptions,
  type Mode,
  measureLine,
  modeOf,
  onSameTerms,
  planById,
  planIds,
  type Sweep,
  touchstoneText,
  trim,
  type VectorSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

/** What a caller without types may pass where another type is asked for. */
const wrong = <Type>(value: unknown): Type => value as Type;

const plan = planById("us-part97");
const frequencies = evenly(6.9e6, 7.4e6, 10e3);
const sweep = sweepOfReflections(
  frequencies,
  frequencies.map((frequencyHz) => [0, (frequencyHz - 7.1e6) / 0.5e6]),
);

/** Everything that judges a sweep by a plan. */
const JOBS: readonly (readonly [string, (sweep: Sweep, options: CheckOptions) => { readonly limits?: Limits }])[] = [
  ["check", check],
  [
    "gradeSweep",
    (given, options) => {
      gradeSweep(given, options);
      return {};
    },
  ],
  ["trim", (given, options) => trim(given, { ...options, band: "40m" })],
  ["diff", (given, options) => diff(given, sweep, options)],
];

describe.each(JOBS)("%s", (_, job) => {
  const withOptions = (options: object) => () => job(sweep, { plan, ...options });

  test.each<[unknown, string]>([
    [undefined, "undefined"],
    [null, "null"],
    ["itu-r1", '"itu-r1"'],
    [{ id: "itu-r1" }, "another object"],
  ])("asks for a plan where it gets %j", (given, said) => {
    const message = `plan must be a band plan, such as planById("itu-r1") gives, got ${said}`;
    expect(withOptions({ plan: given })).toThrow(new TypeError(message));
  });

  test("names a class that the plan does not know, and those that it does", () => {
    expect(withOptions({ licenceClass: "expert" })).toThrow(RangeError);
    expect(withOptions({ licenceClass: "expert" })).toThrow(
      'licenceClass: there is no class "expert" in us-part97; its classes are extra, advanced, general, technician, novice',
    );
    expect(() => job(sweep, { plan: planById("itu-r1"), licenceClass: "extra" })).toThrow(/it knows none$/);
    expect(withOptions({ licenceClass: 3 })).toThrow("licenceClass must be the name of a class, or null, got 3");
    expect(withOptions({ licenceClass: null })).not.toThrow();
  });

  test("asks for a list of bands, and names one that the plan does not know", () => {
    expect(withOptions({ bands: "40m" })).toThrow(
      new TypeError('bands must be a list of names such as ["40m", "20m"], got "40m"'),
    );
    expect(withOptions({ bands: ["40m", 20] })).toThrow(
      new TypeError('bands[1] must be the name of a band such as "40m", got 20'),
    );
    expect(withOptions({ bands: ["40m", "40"] })).toThrow(RangeError);
    expect(withOptions({ bands: ["40m", "40"] })).toThrow(
      /^bands\[1\]: there is no band "40" in us-part97; its bands are .*60m, 40m, 30m/,
    );
    expect(withOptions({ bands: ["40m"] })).not.toThrow();
  });

  test.each([["cw"], [{ name: "cw" }], [null]])("asks for modes where it gets %j", (mode) => {
    expect(withOptions({ modes: [modeOf("ssb"), wrong<Mode>(mode)] })).toThrow(
      /^modes\[1\] must be a mode, such as modeOf\("cw"\) gives, got /,
    );
  });

  test("asks for a list of modes", () => {
    expect(withOptions({ modes: modeOf("cw") })).toThrow(
      new TypeError('modes must be a list of modes such as [modeOf("cw")], got another object'),
    );
  });

  test.each<[object | string, string]>([
    [{ swr: 0.5 }, "limits.swr must be an SWR, a number of 1 or more, got 0.5"],
    [{ swr: "2:1" }, 'limits.swr must be an SWR, a number of 1 or more, got "2:1"'],
    [{ wideRangeTunerSwr: Number.NaN }, "limits.wideRangeTunerSwr must be an SWR, a number of 1 or more, got NaN"],
    [{ swr: 4, builtInTunerSwr: 3 }, "limits.builtInTunerSwr must be no less than the limit before it, 4, got 3"],
    [{ wideRangeTunerSwr: 2.5 }, "limits.wideRangeTunerSwr must be no less than the limit before it, 3, got 2.5"],
    ["2", 'limits must be an object such as { swr: 1.5 }, got "2"'],
  ])("refuses the limits %j", (limits, message) => {
    expect(withOptions({ limits })).toThrow(new TypeError(message));
  });

  test.each<[unknown, string]>([
    [undefined, "undefined"],
    [{}, "another object"],
    [{ ...sweep, reflectionReal: sweep.reflectionReal.subarray(1) }, "another object"],
    ["garden.s1p", '"garden.s1p"'],
    [Promise.resolve(sweep), "a promise, which must be awaited first"],
  ])("asks for a sweep where it gets %s", (given, said) => {
    const message = `must be a sweep, as readSweeps, vectorSweep or scalarSweep gives one, got ${said}`;
    expect(() => job(wrong<Sweep>(given), { plan })).toThrow(TypeError);
    expect(() => job(wrong<Sweep>(given), { plan })).toThrow(message);
  });

  test("asks for options", () => {
    expect(() => job(sweep, wrong<CheckOptions>(undefined))).toThrow(TypeError);
  });
});

describe.each(JOBS.filter(([name]) => name !== "gradeSweep"))("limits that are given in part, in %s", (_, job) => {
  test.each<[Partial<Limits>, Limits]>([
    [{}, { swr: 2, builtInTunerSwr: 3, wideRangeTunerSwr: 10 }],
    [{ swr: 1.5 }, { swr: 1.5, builtInTunerSwr: 3, wideRangeTunerSwr: 10 }],
    // A tuner takes away nothing of what is within reach without one.
    [{ swr: 5 }, { swr: 5, builtInTunerSwr: 5, wideRangeTunerSwr: 10 }],
    [{ builtInTunerSwr: 12 }, { swr: 2, builtInTunerSwr: 12, wideRangeTunerSwr: 12 }],
  ])("%j are filled up", (limits, filled) => {
    expect(job(sweep, { plan, limits }).limits).toEqual(filled);
  });
});

test("a grade follows limits that are given in part", () => {
  const flat = sweepOfMagnitudes(
    frequencies,
    frequencies.map(() => 0.4),
  );
  const gradeWith = (limits: Partial<Limits>) => gradeSweep(flat, { plan, bands: ["40m"], limits }).grade;
  expect([gradeWith({}), gradeWith({ swr: 2.5 })]).toEqual(["C", "A"]);
});

test("a list of sweeps is no sweep but for a comparison", () => {
  const message = "sweep must be one sweep (readSweeps gives a list of them), got a list";
  expect(() => check(wrong<Sweep>([sweep]), { plan })).toThrow(new TypeError(message));
  expect(() => diff([sweep], [sweep, wrong<Sweep>(null)], { plan })).toThrow(
    /^after\[1\] must be a sweep, .*, got null$/,
  );
  expect(() => onSameTerms(wrong<Sweep>("a"), sweep, { plan })).toThrow(/^before must be a sweep, /);
});

test.each<[object, string]>([
  [{ feedline: { kind: "rg-58", lengthM: 20 } }, "feedline must be a feedline, as feedlineFrom gives one, or null"],
  [{ instrument: 35 }, "instrument must be an object with its directivity: { directivityDb: 35 }, or null, got 35"],
  [{ dials: 7.1e6 }, "dials must be a list of dial frequencies"],
  [{ dials: [7.1e6] }, "dials[0] must be a dial frequency"],
  [{ dials: [{ frequencyHz: 7.1e6, mode: "cw", activity: null }] }, "dials[0].mode must be a mode"],
])("check refuses %j", (options, message) => {
  expect(() => check(sweep, { plan, ...options })).toThrow(TypeError);
  expect(() => check(sweep, { plan, ...options })).toThrow(message);
});

test.each<[object, string]>([
  [{ thresholds: { fraction: -1 } }, "thresholds.fraction must be a number of 0 or more, got -1"],
  [{ thresholds: 0.05 }, "thresholds must be an object such as DEFAULT_THRESHOLDS, got 0.05"],
])("diff refuses %j", (options, message) => {
  expect(() => diff(sweep, sweep, { plan, ...options })).toThrow(new TypeError(message));
});

test.each<[object, string]>([
  [{ band: undefined }, 'band must be the name of a band such as "40m", got undefined'],
  [{ wantedHz: "7.1 MHz" }, 'wantedHz must be a frequency in Hz above 0, got "7.1 MHz"'],
  [{ wireLengthM: -20 }, "wireLengthM must be a length in m above 0, got -20"],
])("trim refuses %j", (options, message) => {
  expect(() => trim(sweep, { plan, band: "40m", ...options })).toThrow(new TypeError(message));
});

test("trim names a band that the plan does not know; one that the class may not use is another matter", () => {
  expect(() => trim(sweep, { plan, band: "41m" })).toThrow(
    /^band: there is no band "41m" in us-part97; its bands are /,
  );
  expect(() => trim(sweep, { plan, band: "30m", licenceClass: "technician" })).toThrow(/has no privileges/);
});

test("gradeSweep refuses criteria by grade, of which criteriaWith makes a list", () => {
  const criteria = wrong<[]>({ A: { withoutTuner: 0.9 } });
  expect(() => gradeSweep(sweep, { plan, criteria })).toThrow(/^criteria must be a list of criteria/);
});

test.each<[unknown, string]>([
  [undefined, "options must be an object with the far end at least: { endOhms: 0 }, got undefined"],
  [{}, "endOhms must be a number of ohms: 0 for a short, Infinity for an open end, got undefined"],
  [{ endOhms: "open" }, 'endOhms must be a number of ohms: 0 for a short, Infinity for an open end, got "open"'],
  [{ endOhms: 0, kind: "rg-58" }, 'kind must be a kind of feedline, such as feedlineKindById("rg-58") gives, or null'],
  [{ endOhms: 0, lengthM: 0 }, "lengthM must be a length in m above 0, got 0"],
  [{ endOhms: 0, characteristicOhms: Number.NaN }, "characteristicOhms must be a number of ohms above 0, got NaN"],
])("measureLine refuses %j", (options, message) => {
  expect(() => measureLine(sweep, wrong<LineOptions>(options))).toThrow(TypeError);
  expect(() => measureLine(sweep, wrong<LineOptions>(options))).toThrow(message);
});

test("what is known of the station and the line is taken as the library makes it", () => {
  const feedline = feedlineFrom({ kind: "rg-58", lengthM: 20 });
  const dials = [{ frequencyHz: 7.1e6, mode: modeOf("ssb"), activity: null }];
  expect(check(sweep, { plan, feedline, dials, instrument: { directivityDb: 35 } }).feedline).toBe(feedline);
  expect(() => measureLine(sweep, { endOhms: 0, kind: feedlineKindById("rg-58") })).not.toThrow();
});

test("a sweep without phase is no Touchstone file", () => {
  const scalar = sweepOfMagnitudes([7e6, 7.1e6], [0.2, 0.1]);
  expect(() => touchstoneText(wrong<VectorSweep>(scalar))).toThrow(
    new TypeError('sweep.kind must be "vector", a sweep with phase, got "scalar"'),
  );
  expect(() => delimitedText(wrong<Sweep>([scalar]))).toThrow(/^sweep must be one sweep/);
});

test("the type of plan names is that of the plans", () => {
  const known: BandPlan[] = [
    planById("itu-common"),
    planById("us-part97"),
    planById("itu-r1"),
    planById("itu-r2"),
    planById("itu-r3"),
    planById("iaru-r1-hf"),
    planById("iaru-r2-hf"),
    planById("iaru-r3-hf"),
    planById("uk"),
    planById("de"),
    planById("fr"),
    planById("ca"),
    planById("br"),
    planById("au"),
    planById("jp-mic"),
  ];
  expect(known.map(({ id }) => id)).toEqual(planIds());
  expect(planById("none")).toBeNull();
});
