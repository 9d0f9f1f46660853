/** Files in the writing of strangers, all invented, whose truth is known because they were made. */
import { describe, expect, test } from "vitest";
import { caseOf, GROUP_NAMES } from "./cases.js";
import { judge, type Verdict } from "./judge.js";
import { alternativesIn, refusalWith } from "./remedies.js";
import { faultsOfTruth } from "./textbook.js";

const SEED = Number(process.env.STRANGER_SEED ?? 4711);
const FILES = Number(process.env.STRANGER_FILES ?? 1500);
const TABLES = 300;

let judged: readonly Verdict[] | null = null;

/** Each file is read once, when the first test asks for it. */
function verdicts(): readonly Verdict[] {
  judged ??= Array.from({ length: FILES }, (_, index) => judge(caseOf(SEED, index)));
  return judged;
}

const verdictsOf = (group: string): Verdict[] => verdicts().filter(({ made }) => made.group === group);

/** As much as is needed to find a file and see its trouble. */
const told = ({ made, why }: Verdict): string =>
  `seed ${SEED}, file ${made.index}, ${made.group}, ${made.variant}: ${why}`;

/** The refused of the files that a person reads without doubt, as a share of them. */
function refusedShare(of: readonly Verdict[]): { share: number; refused: string } {
  const clear = of.filter(({ made }) => made.clear);
  const refused = clear.filter(({ refusal }) => refusal !== null);
  return { share: refused.length / Math.max(1, clear.length), refused: refused.map(told).join("\n") };
}

describe("no file is wrong in silence", () => {
  test.each(GROUP_NAMES)("of the group %s", (group) => {
    const silent = verdictsOf(group).filter((verdict) => verdict.class === "wrong in silence");
    expect(silent.map(told)).toEqual([]);
  });
});

describe("of the files that a person reads without doubt", () => {
  test("at most one in twenty is refused", () => {
    const { share, refused } = refusedShare(verdicts());
    expect(share, refused).toBeLessThanOrEqual(0.05);
  });

  test.each(GROUP_NAMES)("at most one in ten is refused of the group %s", (group) => {
    const { share, refused } = refusedShare(verdictsOf(group));
    expect(share, refused).toBeLessThanOrEqual(0.1);
  });

  const refusals = () =>
    verdicts().flatMap(({ made, refusal, ...rest }) =>
      made.clear && refusal !== null
        ? [{ made, remedy: refusal.problem.remedy ?? "", said: told({ made, refusal, ...rest }) }]
        : [],
    );

  test("each that is refused is told a remedy", () => {
    expect(refusals().flatMap(({ remedy, said }) => (remedy === "" ? [said] : []))).toEqual([]);
  });

  test("each that is refused can be read with one of the options that its remedy names", () => {
    const unhelpful = refusals().flatMap(({ made, remedy, said }) => {
      const outcomes = alternativesIn(remedy).map((named) => refusalWith(made, named));
      return outcomes.length === 0 || outcomes.includes(null) ? [] : [`${said}\n  with them: ${outcomes.join("\n  ")}`];
    });
    expect(unhelpful).toEqual([]);
  });
});

describe("the truth", () => {
  test(`is what ${TABLES} ordinary tables say, read by textbook formulas`, () => {
    expect(Array.from({ length: TABLES }, (_, index) => faultsOfTruth(SEED, index)).flat()).toEqual([]);
  });

  test("is the same when a file is made again", () => {
    for (const group of GROUP_NAMES.keys()) {
      const [once, again] = [caseOf(SEED, group), caseOf(SEED, group)];
      expect(again).toEqual(once);
    }
  });
});
