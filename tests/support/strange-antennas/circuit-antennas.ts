/** Antennas that are short and tuned by parts, and such as stand behind something: two-ports, sections of line, stubs, networks. */
import {
  capacitor,
  coil,
  type Impedance,
  type Line,
  omega,
  parallelResonance,
  type Response,
  responseOf,
  seriesResonance,
  shuntAdmittance,
  throughLine,
  throughT,
  throughTransformer,
} from "./circuit.js";
import { add, type Complex, complex, divided, inverse, parallel, scaled, sum } from "./complex.js";
import {
  between,
  coax,
  cutFor,
  ladder,
  logBetween,
  nearBand,
  pick,
  type Random,
  transformer,
  wavelengthM,
} from "./draws.js";
import { wireDipole } from "./wire-antennas.js";

const MU0 = 4e-7 * Math.PI;

/**
 * Sum of resonances in the manner of Foster: an impedance of parallel circuits in series with a coil, a capacitor and a resistor,
 * beside which stand one to three series circuits, of any Q.
 */
export function resonanceSum(random: Random): Response {
  const parallels = Array.from({ length: pick(random, [1, 2, 3]) }, () => ({
    hz: nearBand(random) * between(random, 0.9, 1.1),
    ohms: logBetween(random, 100, 3000),
    q: logBetween(random, 4, 60),
  }));
  const series = Array.from({ length: pick(random, [1, 2, 3]) }, () => {
    const ohms = logBetween(random, 22, 110);
    return { hz: nearBand(random), ohms, reactance: ohms * logBetween(random, 5, 80) };
  });
  const trunk = {
    ohms: between(random, 10, 60),
    coil: coil(between(random, 0, 1e-6), 150),
    capacitor: capacitor(logBetween(random, 60e-12, 2e-9), 800),
  };
  return responseOf((hz) => {
    const chain = sum([
      complex(trunk.ohms),
      trunk.coil(hz),
      trunk.capacitor(hz),
      ...parallels.map((part) => parallelResonance(part.ohms, part.q, part.hz, hz)),
    ]);
    return parallel(chain, ...series.map((part) => seriesResonance(part.ohms, part.reactance, part.hz, hz)));
  });
}

/**
 * Short whip with a loading coil of finite Q and stray capacitance: a short open line (-j Zc cot βh), radiation resistance with the
 * square of height in wavelengths, ground loss; matched at the base by a shunt coil, a shunt capacitor, or not at all.
 */
export function loadedWhip(random: Random): Response {
  const targetHz = nearBand(random, 1.8e6, 29.7e6, 0.4);
  const heightM = Math.min(between(random, 1.2, 6), wavelengthM(targetHz) * 0.16);
  const whipOhms = 60 * (Math.log((2 * heightM) / between(random, 0.001, 0.01)) - 1);
  const lossOhms = logBetween(random, 4, 30);
  const coilQ = logBetween(random, 70, 400);
  const strayFarad = between(random, 0.5e-12, 4e-12);
  const whip: Impedance = (hz) => {
    const angle = (omega(hz) * heightM) / 2.9e8;
    const radiated = 40 * Math.PI ** 2 * (heightM / wavelengthM(hz)) ** 2 * 1.2;
    return complex(radiated + lossOhms * Math.sqrt(hz / targetHz), -whipOhms / Math.tan(angle));
  };
  const reactance = -whip(targetHz).im;
  const farad = strayFarad;
  // A coil with stray capacitance acts larger: Leff = L / (1 - ω²LC).
  const henry = reactance / omega(targetHz) / (1 + omega(targetHz) * farad * reactance);
  const match = pick(random, ["coil", "capacitor", "none", "transformer"] as const);
  const total = whip(targetHz).re + reactance / coilQ;
  const step = Math.sqrt(Math.max(0.02, 50 / Math.min(total, 49) - 1));
  const line = coax(random, 0.5, 20);
  return cutFor(
    targetHz,
    (scale) =>
      responseOf((hz) => {
        const loading = parallel(coil(henry * scale, coilQ)(hz), capacitor(farad)(hz));
        const base = add(whip(hz), loading);
        const shunt =
          match === "coil"
            ? coil(50 / step / omega(targetHz), 200)(hz)
            : capacitor(step / 50 / omega(targetHz), 500)(hz);
        const matched =
          match === "none" ? base : match === "transformer" ? scaled(base, 45 / total) : parallel(base, shunt);
        return throughLine(matched, line, hz);
      }),
    0.08,
    401,
  );
}

/**
 * Small loop: primary of a few hundred nH, coupled to a loop tuned by a capacitor. Z = R1 + jωL1 + (ωM)² / (R + jωL + 1/jωC).
 * Loop: L = μ0 r (ln 8r/a - 2); radiation resistance 31171 (A/λ²)²; conductor by skin depth, and the capacitor's own loss.
 */
export function smallLoop(random: Random): Response {
  const targetHz = nearBand(random, 3e6, 29.7e6, 0);
  const radiusM = between(random, 0.35, 0.7) * (targetHz < 8e6 ? 1.5 : 1);
  const tubeM = between(random, 0.004, 0.016);
  const henry = MU0 * radiusM * (Math.log((8 * radiusM) / tubeM) - 2);
  const lossFactor = between(random, 1.2, 4);
  const capacitorOhms = logBetween(random, 0.005, 0.08);
  const surroundingsOhms = logBetween(random, 0.005, 0.15);
  const loss = (hz: number): number => {
    const skin = Math.sqrt(Math.PI * hz * MU0 * 1.7e-8) * lossFactor * (radiusM / tubeM);
    const radiated = 31171 * ((Math.PI * radiusM ** 2) / wavelengthM(hz) ** 2) ** 2;
    return skin + radiated + capacitorOhms + surroundingsOhms * (hz / targetHz);
  };
  const primaryHenry = between(random, 0.15, 0.6) * henry * 0.4;
  const mutual = Math.sqrt(between(random, 32, 75) * loss(targetHz)) / omega(targetHz);
  const tuning = capacitor(1 / (omega(targetHz) ** 2 * henry));
  const line = coax(random, 0.3, 12);
  return cutFor(
    targetHz,
    (scale) =>
      responseOf((hz) => {
        const secondary = add(complex(loss(hz), omega(hz) * henry), scaled(tuning(hz), scale));
        const coupled = divided(complex((omega(hz) * mutual) ** 2), secondary);
        return throughLine(add(complex(0.1, omega(hz) * primaryHenry), coupled), line, hz);
      }),
    0.02,
    801,
  );
}

/** A wire dipole, cut, with something between it and the analyser. */
function dipoleBehind(
  random: Random,
  targetHz: number,
  seenThrough: (antenna: Complex, hz: number) => Complex,
): Response {
  const antenna = wireDipole(random, targetHz);
  return cutFor(targetHz, (scale) => {
    const cut = antenna(scale);
    return responseOf((hz) => seenThrough(cut(hz), hz));
  });
}

/** Dipole behind a lossy two-port in T form: a choke, a switch box, a wet joint; series coils and resistors, a leaky capacitor across. */
export function lossyTwoPort(random: Random): Response {
  const first = { ohms: between(random, 0, 6), coil: coil(between(random, 0, 250e-9), 60) };
  const second = { ohms: between(random, 0, 9), coil: coil(between(random, 0, 400e-9), 40) };
  const acrossOhms = logBetween(random, 250, 4000);
  const across = capacitor(logBetween(random, 2e-12, 120e-12), 40);
  const inner = coax(random, 0, 12);
  const outer = coax(random, 0.3, 20);
  return dipoleBehind(random, nearBand(random), (antenna, hz) => {
    const load = throughLine(antenna, inner, hz);
    const shunt = parallel(complex(acrossOhms), across(hz));
    const seen = throughT(
      load,
      add(complex(first.ohms), first.coil(hz)),
      shunt,
      add(complex(second.ohms), second.coil(hz)),
    );
    return throughLine(seen, outer, hz);
  });
}

/** Dipole behind a section of 75 Ω and one of 50 Ω. */
export function behind75(random: Random): Response {
  const section = coax(random, 2, 32, 75);
  const line = coax(random, 0.3, 20);
  return dipoleBehind(random, nearBand(random), (antenna, hz) =>
    throughLine(throughLine(antenna, section, hz), line, hz),
  );
}

/** Dipole behind ladder line cut to half waves, as is the custom, and a transformer. */
export function behindLadder(random: Random): Response {
  const targetHz = nearBand(random, 3e6);
  const halfM = wavelengthM(targetHz) / 2;
  const feeder = ladder(random, 5, 6);
  const cut: Line = {
    ...feeder,
    lengthM:
      halfM * feeder.velocity * pick(random, targetHz < 8e6 ? [0.5, 1] : [1, 1.5, 2]) * between(random, 0.96, 1.04),
  };
  const iron = { ...transformer(random, pick(random, [1, 1, 4])), magnetisingHenry: logBetween(random, 6e-6, 40e-6) };
  const line = coax(random, 0.5, 15);
  return dipoleBehind(random, targetHz, (antenna, hz) =>
    throughLine(throughTransformer(throughLine(antenna, cut, hz), iron, hz), line, hz),
  );
}

/** Dipole with an open or a shorted stub of coax across the line, at the feed point or some way down. */
export function stubMatched(random: Random): Response {
  const targetHz = nearBand(random);
  const stub = coax(random, 0.5, wavelengthM(targetHz) * 0.3);
  const end = random() < 0.5 ? complex(1e7) : complex(1e-3);
  const above = coax(random, 0, wavelengthM(targetHz) * 0.4);
  const below = coax(random, 0.3, 20);
  return dipoleBehind(random, targetHz, (antenna, hz) => {
    const joint = shuntAdmittance(throughLine(antenna, above, hz), inverse(throughLine(end, stub, hz)));
    return throughLine(joint, below, hz);
  });
}

/** Dipole with its harmonics behind 25 to 110 m of coax that loses much. */
export function longCoax(random: Random): Response {
  const line: Line = {
    ...coax(random, 25, 110),
    conductorDb: logBetween(random, 2.5, 9),
    insulationDb: between(random, 0.1, 1.5),
  };
  return dipoleBehind(random, nearBand(random), (antenna, hz) => throughLine(antenna, line, hz));
}

/**
 * A dipole of another band brought to 50 Ω at one frequency by an L network of finite Q (the textbook's two formulas, for a
 * resistance above and below 50 Ω), as a fixed tuner does it.
 */
export function fixedNetwork(random: Random): Response {
  const targetHz = nearBand(random);
  const antenna = wireDipole(random, targetHz * pick(random, [0.6, 0.75, 1.3, 1.6, 1.9]))(1);
  const feeder = coax(random, 3, 25);
  const load: Impedance = (hz) => throughLine(antenna(hz), feeder, hz);
  const { re: r, im: x } = load(targetHz);
  const sign = pick(random, [1, -1]);
  const coilQ = logBetween(random, 80, 350);
  const part = (reactance: number): Impedance =>
    reactance > 0
      ? coil(reactance / omega(targetHz), coilQ)
      : capacitor(1 / (omega(targetHz) * Math.max(1e-6, -reactance)), 800);
  const detune = between(random, 0.98, 1.02);
  if (r > 50) {
    const b = (x + sign * Math.sqrt(r / 50) * Math.sqrt(r * r + x * x - 50 * r)) / (r * r + x * x);
    const series = part(detune * (1 / b + (x * 50) / r - 50 / (b * r)));
    const shunt = part(-1 / b);
    return responseOf((hz) => add(series(hz), parallel(shunt(hz), load(hz))));
  }
  const q = Math.sqrt(50 / r - 1);
  const series = part(detune * (sign * q * r - x));
  const shunt = part((-sign * 50) / q);
  return responseOf((hz) => parallel(shunt(hz), add(series(hz), load(hz))));
}
