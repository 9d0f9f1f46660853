import type { OnAir, ReceptionReport } from "@feedpoint/core";

/** An invented night on the air, with two antennas switched in turn and a difference that is known. */
export interface Campaign {
  readonly reports: readonly ReceptionReport[];
  readonly periods: readonly OnAir[];
}

/** What a night is like. */
export interface Night {
  /** By how much the second antenna is heard better, dB */
  readonly truthDb: number;
  readonly receivers: number;
  /** Switched so often, A B B A */
  readonly rounds: number;
  /** How far the difference varies from receiver to receiver, for the two antennas have unlike patterns, dB */
  readonly patternDb: number;
  readonly fadingDb: number;
}

const START = Date.UTC(2026, 4, 2, 18);
const SLOT = 120_000;
/** Below this a decoder reads fewer and fewer; above that its number no longer grows. */
const FLOOR_DB = -27;
const CEILING_DB = 12;

/** Makes a night, another one for each seed: paths of their own, slow fading, noise, whole dB, a floor and a ceiling. */
export function campaign(night: Night, random: () => number): Campaign {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const order = ["A", "B", "B", "A"];
  const slots = Array.from({ length: night.rounds * 2 }, (_, i) => ({
    antenna: order[i % 4] as string,
    time: START + i * SLOT,
  }));
  const reports: ReceptionReport[] = [];
  for (let r = 0; r < night.receivers; r++) {
    const path = -24 + 26 * random();
    const pattern = night.patternDb * normal();
    // A few hear nearly every transmission, most only some.
    const share = 0.1 + 0.9 * random() ** 2;
    let fade = normal();
    for (const { antenna, time } of slots) {
      fade = 0.8 * fade + 0.6 * normal();
      const gain = antenna === "B" ? night.truthDb + pattern : 0;
      const level = path + night.fadingDb * fade + gain + 1.2 * normal();
      const isDecoded = random() < share && random() < 1 / (1 + Math.exp(-(level - FLOOR_DB) / 0.8));
      if (isDecoded) reports.push(reportOf(r, time, Math.round(Math.min(CEILING_DB, level))));
    }
  }
  const periods = slots.map(({ antenna, time }) => ({
    deployment: antenna,
    up: time,
    down: time + SLOT,
    transmitter: null,
  }));
  return { reports, periods };
}

/** Call signs of a form that is never issued, and invented. */
const reportOf = (receiver: number, time: number, snrDb: number): ReceptionReport => ({
  time,
  transmitter: "Q0AAA",
  receiver: `Q1${String.fromCharCode(65 + Math.floor(receiver / 26), 65 + (receiver % 26))}X`,
  transmitterLocator: "IO91",
  receiverLocator: "JO22",
  band: "40m",
  mode: "WSPR",
  snrDb,
  powerW: 1,
});
