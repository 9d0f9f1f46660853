import { dbAt10MHz, type Line } from "./lines.js";
import type { Station } from "./station.js";
import type { Change, Changed } from "./truth.js";

export const lineShorter: Change = (before, random) => {
  const metres = random.log(0.3, Math.min(10, before.lengthM * 0.8));
  return {
    after: { ...before, lengthM: before.lengthM - metres },
    facts: { addedMetres: -metres, addedDbAt10MHz: -dbAt10MHz(before.line, metres) },
  };
};

export const lineLonger: Change = (before, random) => {
  const metres = random.log(0.3, 10);
  return {
    after: { ...before, lengthM: before.lengthM + metres },
    facts: { addedMetres: metres, addedDbAt10MHz: dbAt10MHz(before.line, metres) },
  };
};

/** A piece of 75 ohm line between the analyser and the line that was there. */
export const line75Added: Change = (before, random) => {
  const line: Line = {
    z0: random.range(73, 77),
    velocity: random.pick([0.66, 0.82]),
    k1: random.range(0.6, 1.3),
    k2: random.range(0.003, 0.02),
  };
  const lengthM = random.log(0.5, 10);
  return {
    after: { ...before, plug: [...before.plug, { kind: "line", line, lengthM }] },
    facts: {
      addedMetres: lengthM,
      addedDbAt10MHz: dbAt10MHz(line, lengthM),
      ohms: line.z0,
      velocity: line.velocity,
    },
  };
};

function withLine(before: Station, line: Line): { readonly after: Station; readonly addedDbAt10MHz: number } {
  const addedDbAt10MHz = dbAt10MHz(line, before.lengthM) - dbAt10MHz(before.line, before.lengthM);
  return { after: { ...before, line }, addedDbAt10MHz };
}

export const lossyLine: Change = (before, random): Changed => {
  const wantedDb = random.log(0.2, Math.min(3.5, 0.15 * before.lengthM));
  const extraK1 = ((wantedDb / before.lengthM) * 100) / Math.sqrt(10);
  const seriesShare = random.range(0.3, 1);
  const { after, addedDbAt10MHz } = withLine(before, { ...before.line, extraK1, seriesShare });
  return { after, facts: { addedDbAt10MHz, law: "sqrt(f)", seriesShare } };
};

export const dielectricLoss: Change = (before, random) => {
  const wantedDb = random.log(0.2, Math.min(2, 0.1 * before.lengthM));
  const { after, addedDbAt10MHz } = withLine(before, { ...before.line, extraK2: (wantedDb / before.lengthM) * 10 });
  return { after, facts: { addedDbAt10MHz, law: "f" } };
};

export const fixedLoss: Change = (before, random) => {
  const db = random.log(0.3, 5);
  return {
    after: { ...before, plug: [...before.plug, { kind: "attenuator", db }] },
    facts: { addedDb: db, addedDbAt10MHz: db, law: "flat" },
  };
};

export const referenceChanged: Change = (before, random) => {
  const ohms = random.pick([75, 25]);
  return { after: { ...before, referenceOhms: ohms }, facts: { ohms } };
};
