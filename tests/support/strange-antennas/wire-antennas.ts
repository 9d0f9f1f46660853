/** Antennas that are wires: dipoles and their kin, end-fed and off-centre-fed wires, doublets, a vertical, a terminated wire. */
import {
  capacitor,
  coil,
  type Impedance,
  LIGHT_M_PER_S,
  omega,
  type Response,
  responseOf,
  seriesResonance,
  throughLine,
  throughTransformer,
} from "./circuit.js";
import {
  add,
  type Complex,
  complex,
  divided,
  inverse,
  parallel,
  scaled,
  subtract,
  sum,
  tanh,
  times,
} from "./complex.js";
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
  wire,
} from "./draws.js";
import { lossNepers, quarterWaves, type Wire, wireImpedance } from "./wires.js";

/**
 * Dipole as the sum of the admittances of its odd modes. Each mode is a series circuit whose resistance grows with a power of
 * frequency; the modes lie somewhat above the odd multiples; the gap's capacitance is in parallel. Then a little coax.
 */
export function dipoleModes(random: Random): Response {
  const resonanceHz = nearBand(random);
  const ohms = between(random, 30, 85);
  const power = between(random, 0.8, 2.2);
  const reactance = ohms * between(random, 7, 16);
  const stretch = between(random, 0.005, 0.03);
  const modes = [1, 3, 5, 7, 9].map((order) => ({
    hz: resonanceHz * order * (1 + stretch * (1 - 1 / order)),
    ohms: ohms * (1 + 0.25 * Math.log(order) * between(random, 0.6, 1.6)),
    reactance: reactance * order * between(random, 0.85, 1.1),
  }));
  const gap = capacitor(between(random, 0.5e-12, 6e-12));
  const line = coax(random, 0, 12);
  return responseOf((hz) => {
    const branches = modes.map((mode) =>
      inverse(seriesResonance(mode.ohms * Math.min(4, hz / mode.hz) ** power, mode.reactance, mode.hz, hz)),
    );
    return throughLine(inverse(sum([...branches, inverse(gap(hz))])), line, hz);
  });
}

/** Wire dipole as an open line, cut for a band. */
export function wireDipole(random: Random, targetHz: number): (scale: number) => Impedance {
  const cut = wire(random, quarterWaves(1, targetHz, 0.96), 2);
  return (scale) => (hz) => wireImpedance({ ...cut, legM: cut.legM * scale }, hz);
}

/**
 * End-fed wire of one to four half waves with a 49:1 transformer: open line at its high end, a counterpoise in series (short open
 * wire), leakage, magnetising inductance with core loss, often a capacitor across the primary, and coax.
 */
export function endFed(random: Random): Response {
  const targetHz = nearBand(random);
  const halfWaves = targetHz < 4e6 ? 1 : pick(random, [1, 1, 2, 4]);
  const cut = wire(random, quarterWaves(2 * halfWaves, targetHz, 0.96), 1);
  const lossy = { ...cut, lossOhms: cut.lossOhms + between(random, 0, 40) };
  const iron = transformer(random, pick(random, [49, 49, 56, 64]));
  const counterpoise = {
    ...wire(random, wavelengthM(targetHz) * between(random, 0.02, 0.07), 1),
    lossOhms: between(random, 20, 80),
  };
  const line = coax(random, 0.5, 25);
  return cutFor(targetHz, (scale) =>
    responseOf((hz) => {
      const antenna = add(wireImpedance({ ...lossy, legM: lossy.legM * scale }, hz), wireImpedance(counterpoise, hz));
      return throughLine(throughTransformer(antenna, iron, hz), line, hz);
    }),
  );
}

/** A lossy line of a wire's own loss, ended in a load, from which the wire goes on. */
function alongWire(load: Complex, part: Wire, nepersPerM: number, hz: number): Complex {
  const zc = complex(part.characteristicOhms);
  const t = tanh(complex(nepersPerM * part.legM, (omega(hz) * part.legM) / (LIGHT_M_PER_S * part.velocity)));
  return divided(times(zc, add(load, times(zc, t))), add(zc, times(load, t)));
}

/**
 * Trap dipole: inner wires a quarter wave at the higher band, a parallel circuit of finite Q resonant there, and outer wires cut
 * for the lower band. All of both legs as one line with the loop resistance spread along it.
 */
export function trapDipole(random: Random): Response {
  const [lowerHz, upperHz] = pick<readonly [number, number]>(random, [
    [3.65e6, 7.1e6],
    [1.9e6, 3.65e6],
    [7.1e6, 14.15e6],
    [7.1e6, 10.12e6],
    [14.15e6, 21.2e6],
    [10.12e6, 18.1e6],
    [14.15e6, 28.5e6],
  ]);
  const upper = upperHz * between(random, 0.985, 1.015);
  const inner = wire(random, quarterWaves(1, upper, 0.955), 2);
  const trapHz = upper * between(random, 0.97, 1.02);
  const trapOhms = between(random, 120, 420);
  const trapQ = logBetween(random, 40, 250);
  const trap = (hz: number): Complex =>
    parallel(coil((2 * trapOhms) / omega(trapHz), trapQ)(hz), capacitor(1 / (omega(trapHz) * 2 * trapOhms), 1500)(hz));
  const outerM = quarterWaves(1, lowerHz, 0.95) - inner.legM;
  const line = coax(random, 0, 20);
  return cutFor(
    lowerHz * between(random, 0.985, 1.015),
    (scale) =>
      responseOf((hz) => {
        const outer: Wire = { ...inner, legM: outerM * scale };
        const whole: Wire = { ...inner, legM: inner.legM + outer.legM };
        const nepersPerM = lossNepers(whole, hz) / whole.legM;
        const end = divided(
          complex(inner.characteristicOhms),
          tanh(complex(nepersPerM * outer.legM, (omega(hz) * outer.legM) / (LIGHT_M_PER_S * outer.velocity))),
        );
        return throughLine(alongWire(add(end, trap(hz)), inner, nepersPerM, hz), line, hz);
      }),
    0.6,
    121,
  );
}

/** Two or three wire dipoles side by side at one feed point: admittances add, with a short common lead and a little coupling. */
export function fanDipoles(random: Random): Response {
  const count = pick(random, [2, 2, 3]);
  const centres = [nearBand(random), nearBand(random, 6e6), nearBand(random, 9e6)].slice(0, count);
  const dipoles = centres.map((hz) => wireDipole(random, hz)(between(random, 0.985, 1.015)));
  const lead = coil(between(random, 0, 150e-9), 200);
  const line = coax(random, 0.5, 25);
  const coupling = between(random, 0, 9);
  return responseOf((hz) => {
    const branches = dipoles.map((dipole) => dipole(hz));
    const lone = parallel(...branches);
    // A wire beside another carries a little of its current: as a mutual impedance among parallel branches it stands in series.
    const mutual = scaled(complex(coupling, -coupling / 2), Math.min(1, hz / 10e6));
    return throughLine(add(add(lone, mutual), lead(hz)), line, hz);
  });
}

/**
 * Fed and parasitic element: Z = Z11 - Zm² / Z22, each element a series circuit with resistance growing with frequency squared,
 * the mutual impedance growing with frequency and turning with the spacing in wavelengths. Harmonics of the fed one in parallel.
 */
export function coupledElements(random: Random): Response {
  const targetHz = nearBand(random, 6.9e6);
  const fed = { hz: targetHz, ohms: between(random, 55, 75), reactance: between(random, 550, 1000) };
  const parasitic = {
    hz: targetHz * (random() < 0.5 ? between(random, 0.93, 0.99) : between(random, 1.01, 1.06)),
    ohms: between(random, 55, 80),
    reactance: between(random, 550, 1100),
  };
  const mutualOhms = between(random, 25, 58);
  const turn = between(random, -1.2, 0.2);
  const line = coax(random, 1, 30);
  const stepUp = pick(random, [1, 1, 0.5]);
  return responseOf((hz) => {
    const of = (element: typeof fed): Complex => {
      const square = (hz / element.hz) ** 2;
      const modes = [1, 3].map((order) =>
        inverse(
          seriesResonance(
            element.ohms * Math.min(square, 3) * order ** 0.3,
            element.reactance * order,
            element.hz * order * 1.01 ** (order - 1),
            hz,
          ),
        ),
      );
      return inverse(sum(modes));
    };
    const near = Math.min(1.6, hz / targetHz);
    const angle = turn * near;
    const mutual = scaled(complex(Math.cos(angle), Math.sin(angle)), mutualOhms * near);
    const seen = subtract(of(fed), divided(times(mutual, mutual), of(parasitic)));
    return throughLine(scaled(seen, 1 / stepUp), line, hz);
  });
}

/** Doublet of any length behind open line and a 1:1 or 4:1 balun; the length of line is the one of many that suits a band best. */
export function doublet(random: Random): Response {
  const targetHz = nearBand(random, 3e6);
  const legM = between(random, 6, 26);
  const antenna = wire(random, legM, 2);
  const feeder = ladder(random, 8, 24);
  const balun = transformer(random, pick(random, [1, 1, 4]));
  const line = coax(random, 0.3, 6);
  return cutFor(
    targetHz,
    (scale) =>
      responseOf((hz) => {
        const seen = throughLine(wireImpedance(antenna, hz), { ...feeder, lengthM: feeder.lengthM * scale }, hz);
        return throughLine(
          throughTransformer(
            seen,
            { ...balun, compensationFarad: 0, magnetisingHenry: balun.magnetisingHenry * 2 },
            hz,
          ),
          line,
          hz,
        );
      }),
    0.6,
    241,
  );
}

/** Vertical of a quarter or five eighths wave: half a dipole, base capacitance, ground loss, and a radial that resonates by itself. */
export function verticalOverGround(random: Random): Response {
  const targetHz = nearBand(random);
  const tall = wire(random, quarterWaves(pick(random, [1, 1, 1, 3]), targetHz, 0.96), 2);
  const mast: Wire = {
    ...tall,
    characteristicOhms: tall.characteristicOhms / 2,
    resistanceFactor: 0.5,
    groundReflection: 0,
    lossOhms: between(random, 0, 2),
  };
  const groundOhms = logBetween(random, 3, 40);
  const groundPower = between(random, -0.3, 0.7);
  const radial = {
    hz: targetHz * between(random, 0.8, 1.3),
    ohms: between(random, 10, 60),
    reactance: between(random, 150, 500),
  };
  const radialShare = between(random, 0, 0.5);
  const base = capacitor(between(random, 2e-12, 25e-12), 300);
  const line = coax(random, 1, 30);
  return cutFor(targetHz, (scale) =>
    responseOf((hz) => {
      const earth = complex(groundOhms * (hz / targetHz) ** groundPower);
      const resonant = seriesResonance(radial.ohms, radial.reactance, radial.hz, hz);
      const ground = add(scaled(earth, 1 - radialShare), scaled(parallel(earth, resonant), radialShare));
      return throughLine(
        parallel(add(wireImpedance({ ...mast, legM: mast.legM * scale }, hz), ground), base(hz)),
        line,
        hz,
      );
    }),
  );
}

/** Off-centre-fed half wave: two legs of unlike length in series, a transformer of 4:1 or 6:1, coax. */
export function offCentreFed(random: Random): Response {
  const targetHz = nearBand(random, 1.8e6, 8e6);
  const wholeM = quarterWaves(2, targetHz, 0.96);
  const share = between(random, 0.18, 0.4);
  const base = wire(random, wholeM / 2, 2);
  const balun = transformer(random, pick(random, [4, 4, 6]));
  const line = coax(random, 1, 25);
  const imbalanceFarad = between(random, 0, 8e-12);
  return cutFor(targetHz, (scale) =>
    responseOf((hz) => {
      const whole: Wire = { ...base, legM: (wholeM * scale) / 2 };
      const nepers = (2 * lossNepers(whole, hz)) / (wholeM * scale);
      const leg = (part: number): Complex => {
        const m = wholeM * scale * part;
        return divided(
          complex(base.characteristicOhms / 2),
          tanh(complex(nepers * m, (omega(hz) * m) / (LIGHT_M_PER_S * base.velocity))),
        );
      };
      const seen = parallel(add(leg(share), leg(1 - share)), capacitor(Math.max(1e-15, imbalanceFarad))(hz));
      return throughLine(throughTransformer(seen, balun, hz), line, hz);
    }),
  );
}

/** Long wire or folded dipole ended in a resistor: a lossy line that is nearly matched, a transformer, coax. */
export function terminatedWire(random: Random): Response {
  const heightM = between(random, 2, 12);
  const ohms = between(random, 380, 700);
  const span: Wire = { ...wire(random, between(random, 15, 70), 1), characteristicOhms: ohms, heightM };
  const end = add(complex(ohms * between(random, 0.6, 1.5)), complex(0));
  const endCoil = coil(between(random, 0, 3e-6), 100);
  const iron = transformer(random, pick(random, [9, 9, 12, 16]));
  const line = coax(random, 1, 40);
  const factor = between(random, 0.6, 1.6);
  return responseOf((hz) => {
    const nepersPerM = (factor * lossNepers(span, hz)) / span.legM;
    const seen = alongWire(add(end, endCoil(hz)), span, nepersPerM, hz);
    return throughLine(throughTransformer(seen, iron, hz), line, hz);
  });
}

/** Wire of any length against a counterpoise with a 9:1 transformer: never tuned to a band, where its dips fall they fall. */
export function randomWire(random: Random): Response {
  const span = wire(random, between(random, 7, 45), 1);
  const radiator: Wire = { ...span, lossOhms: span.lossOhms + between(random, 5, 60) };
  const counterpoise = { ...wire(random, between(random, 2, 14), 1), lossOhms: between(random, 20, 120) };
  const iron = transformer(random, pick(random, [9, 9, 16]));
  const line = coax(random, 3, 35);
  return responseOf((hz) =>
    throughLine(
      throughTransformer(add(wireImpedance(radiator, hz), wireImpedance(counterpoise, hz)), iron, hz),
      line,
      hz,
    ),
  );
}

/**
 * Full-wave loop: from its feed point two equal halves of a two-wire line, shorted where they meet; loop resistance spread as for a
 * wire twice as long. Z = 2 Zc tanh γ(perimeter / 2). Fed by coax straight, or by a quarter wave of 75 Ω as is the custom.
 */
export function fullWaveLoop(random: Random): Response {
  const targetHz = nearBand(random);
  const half = wire(random, quarterWaves(2, targetHz, 1.02), 1);
  const shorted: Wire = {
    ...half,
    characteristicOhms: between(random, 320, 520),
    velocity: between(random, 0.96, 1.0),
  };
  const section = { ...coax(random, 1, 2, 75), lengthM: quarterWaves(1, targetHz, 0.66), velocity: 0.66 };
  const isMatched = random() < 0.6;
  const line = coax(random, 1, 25);
  const loopOhms = between(random, 95, 140);
  return cutFor(targetHz, (scale) =>
    responseOf((hz) => {
      const waves = hz / targetHz;
      const nepers = (loopOhms * (0.4 + 0.6 * Math.sqrt(waves))) / (2 * shorted.characteristicOhms);
      const angle = (omega(hz) * shorted.legM * scale) / (LIGHT_M_PER_S * shorted.velocity);
      const antenna = scaled(tanh(complex(nepers, angle)), 2 * shorted.characteristicOhms);
      return throughLine(isMatched ? throughLine(antenna, section, hz) : antenna, line, hz);
    }),
  );
}
