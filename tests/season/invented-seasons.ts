import { gradeSweep, planById, type SweepGrade, vectorSweep } from "@feedpoint/core";
import { seededNormal, seededUniform } from "../support/seeded-noise.js";
import { present } from "../support/sweeps.js";

/** What the log says of a sweep of an invented season. */
interface Said {
  readonly height: number;
  readonly counterpoise: "deck" | "water";
  readonly mood: "good" | "bad";
}

/** An invented season of weekly sweeps, and what is true of it. */
export interface Season {
  readonly name: string;
  readonly sweeps: number;
  /** How far each sweep's resonance, and its reflection, strays from that of the same rig (standard deviations) */
  readonly wander?: number;
  readonly scatter?: number;
  /** Loss beside that of the line, dB one way at 10 MHz */
  readonly lossDb?: (k: number, said: Said) => number;
  /** Relative change of the resonance */
  readonly dip?: (k: number, said: Said) => number;
  /** The sweep with which the log tells an event */
  readonly event?: number;
}

const plan = present(planById("itu-r1"), "itu-r1");
const DAY_MS = 864e5;
/** 40 m finely, the rest coarsely: where the dip and where the loss shows. */
const FREQUENCIES = Float64Array.from({ length: 100 }, (_, i) => (i < 41 ? 6.5e6 + i * 3e4 : 8e6 + (i - 41) * 2e5));
const LINE_M = 15;

/** A season drawn anew: another wire, line and scatter each time. */
export function drawSeason(season: Season, draw: number): readonly SweepGrade[] {
  const uniform = seededUniform(draw * 7919 + season.name.length * 104_729 + 1);
  const normal = seededNormal(draw * 6151 + season.sweeps * 31 + 7);
  const { wander = 0.006, scatter = 0.008 } = season;
  const wire = { resonanceHz: 7.05e6 * (0.985 + 0.03 * uniform()), ohms: 500 + 300 * uniform(), q: 8 + 6 * uniform() };
  const lineDb = 0.4 + 0.4 * uniform();
  return Array.from({ length: season.sweeps }, (_, k) => {
    const said: Said = {
      height: [4, 6, 8, 10][Math.floor(uniform() * 4)] ?? 4,
      counterpoise: uniform() < 0.5 ? "deck" : "water",
      mood: uniform() < 0.5 ? "good" : "bad",
    };
    const sweep = sweepOf(
      {
        resonanceHz: wire.resonanceHz * (1 + (season.dip?.(k, said) ?? 0) + wander * normal()),
        ohms: wire.ohms * (1 + 0.03 * normal()),
        q: wire.q * (1 + 0.05 * normal()),
      },
      lineDb + (season.lossDb?.(k, said) ?? 0),
      { size: scatter * Math.abs(normal()), angle: 2 * Math.PI * uniform(), turn: 3e-7 * uniform() },
      normal,
    );
    const graded = gradeSweep(sweep, { plan, bands: ["40m", "20m"] });
    const date = new Date(Date.UTC(2026, 2, 1) + 7 * k * DAY_MS).toISOString().slice(0, 10);
    const event = season.event === k ? "something new" : "";
    const log = { date, height: `${said.height} m`, counterpoise: said.counterpoise, mood: said.mood, event };
    return { ...graded, sweep: { ...graded.sweep, label: `week ${k + 1}` }, log };
  });
}

interface Wire {
  readonly resonanceHz: number;
  readonly ohms: number;
  readonly q: number;
}

/** A wire as a lossy open line, through coax, with a slow error of the reflection and noise. */
function sweepOf(
  { resonanceHz, ohms, q }: Wire,
  lossDb: number,
  error: { readonly size: number; readonly angle: number; readonly turn: number },
  normal: () => number,
) {
  const real = new Float64Array(FREQUENCIES.length);
  const imaginary = new Float64Array(FREQUENCIES.length);
  FREQUENCIES.forEach((hz, i) => {
    const length = (Math.PI / 2) * (hz / resonanceHz);
    const attenuation = (0.6 * length) / q;
    const bottom = Math.cosh(2 * attenuation) - Math.cos(2 * length);
    const [r, x] = [(ohms * Math.sinh(2 * attenuation)) / bottom + 2, (-ohms * Math.sin(2 * length)) / bottom];
    const square = (r + 50) ** 2 + x * x;
    const re = (r * r - 2500 + x * x) / square + error.size * Math.cos(error.angle + error.turn * hz);
    const im = (100 * x) / square + error.size * Math.sin(error.angle + error.turn * hz);
    const shrink = 10 ** (-(lossDb * Math.sqrt(hz / 1e7)) / 10);
    const turn = (-4 * Math.PI * hz * LINE_M) / (0.66 * 299_792_458);
    const [cosine, sine] = [shrink * Math.cos(turn), shrink * Math.sin(turn)];
    real[i] = re * cosine - im * sine + 0.002 * normal();
    imaginary[i] = re * sine + im * cosine + 0.002 * normal();
  });
  return vectorSweep(
    {
      label: "invented",
      source: { file: "invented", format: "computed", description: "invented", comments: [] },
      takenAt: null,
      referenceOhms: 50,
      findings: [],
    },
    { frequencyHz: FREQUENCIES, reflectionReal: real, reflectionImaginary: imaginary },
  );
}
