/** The quantities in which a reflection is told, with their English names; names and habits from memory. */
import { abs, type Complex, gammaOf, inverse, polar, rhoOf, swrOf } from "./antenna.js";
import {
  column,
  DB_ONLY,
  DECIBEL,
  DEGREE,
  degrees,
  type Kind,
  NO_UNIT,
  OHM,
  PERCENT,
  rhoAt,
  SIEMENS,
  scalar,
  unitColumn,
  vector,
  WATT,
} from "./quantity.js";

const turned = (magnitude: number, angle: number): Complex => polar(magnitude, (angle * Math.PI) / 180);
const decibels = (rho: number): number => 20 * Math.log10(rho);
const fromDecibels = (value: number): number => 10 ** (value / 20);
const root = (square: number): number => Math.sqrt(Math.max(0, square));

const MAGNITUDE =
  "|Γ|; |Gamma|; rho; ρ; Reflection coefficient magnitude; mag(Gamma); |S11|; Magnitude of reflection coefficient; Gamma magnitude";
const SWR =
  "SWR; VSWR; swr; Standing wave ratio; s.w.r.; Standing-wave ratio; SWR ratio; SWR (x:1); SWR:1; Voltage standing wave ratio";
const S11 = "S11; |S11|; S11 log mag; S11 magnitude; Reflection; |Γ|; Reflection coefficient; mag S11";
const REAL =
  "Re(Γ); Re Gamma; Gamma real; Γ re; Real part of Γ; S11 real; Re(S11); s11_re; Reflection coefficient real";
const IMAGINARY =
  "Im(Γ); Im Gamma; Gamma imag; Γ im; Imaginary part of Γ; S11 imaginary; Im(S11); s11_im; Reflection coefficient imaginary";
const ANGLE = "angle of Γ; Gamma angle; arg(Γ); S11 phase; Reflection angle; Phase of reflection; phase; ∠Γ";

const REFLECTIONS: readonly Kind[] = [
  scalar(
    "swr",
    [column(SWR, NO_UNIT, [2, 3])],
    (rho) => [swrOf(rho)],
    (swr) => rhoOf(Math.max(1, swr)),
  ),
  scalar(
    "return-loss",
    [column("Return loss; RL; Return Loss; return_loss; Ret. loss; RETURN LOSS", DECIBEL, [1, 3])],
    (rho) => [-decibels(rho)],
    (loss) => fromDecibels(-loss),
  ),
  scalar(
    "return-loss-negative",
    [column("Return loss; RL; Return Loss", DECIBEL, [1, 3])],
    (rho) => [decibels(rho)],
    fromDecibels,
  ),
  scalar("s11-db", [unitColumn(S11, DB_ONLY, [1, 3])], (rho) => [decibels(rho)], fromDecibels),
  scalar(
    "rho",
    [column(`${MAGNITUDE}; Reflection coefficient; refl. coeff.; Reflection factor`, NO_UNIT, [3, 5])],
    (rho) => [rho],
    (rho) => rho,
  ),
  scalar(
    "rho-percent",
    [unitColumn("Reflection coefficient; |Γ|; Reflected voltage; rho", PERCENT, [3, 4])],
    (rho) => [rho],
    (rho) => rho,
  ),
  vector(
    "gamma-re-im",
    [column(REAL, NO_UNIT, [3, 6]), column(IMAGINARY, NO_UNIT, [3, 6])],
    (gamma) => [gamma.re, gamma.im],
    (re, im) => ({ re, im }),
  ),
  vector(
    "gamma-angle",
    [column(MAGNITUDE, NO_UNIT, [3, 5]), unitColumn(ANGLE, DEGREE, [1, 3])],
    (gamma) => [abs(gamma), degrees(gamma)],
    turned,
  ),
  vector(
    "db-angle",
    [
      unitColumn("S11; |S11|; S11 magnitude; Γ", DB_ONLY, [2, 3]),
      unitColumn("S11 phase; Phase; S11 angle; angle; ∠S11", DEGREE, [1, 3]),
    ],
    (gamma) => [decibels(abs(gamma)), degrees(gamma)],
    (value, angle) => turned(fromDecibels(value), angle),
  ),
  vector(
    "return-loss-angle",
    [
      column("Return loss; RL", DB_ONLY, [2, 3]),
      unitColumn("Phase; Reflection phase; Phase angle of reflection coefficient", DEGREE, [1, 3]),
    ],
    (gamma) => [-decibels(abs(gamma)), degrees(gamma)],
    (loss, angle) => turned(fromDecibels(-loss), angle),
  ),
];

const RESISTANCE = "R; Resistance; R series; Rs; Re(Z); Z real; Re Z; Series resistance; Real part of Z";
const REACTANCE = "X; Reactance; X series; Xs; Im(Z); Z imag; Im Z; Series reactance; Imaginary part of Z";

const IMPEDANCES: readonly Kind[] = [
  vector(
    "r-x",
    [column(RESISTANCE, OHM, [1, 3]), column(REACTANCE, OHM, [1, 3])],
    (_, z) => [z.re, z.im],
    (re, im, reference) => gammaOf({ re, im }, reference),
  ),
  vector(
    "z-angle",
    [
      column("|Z|; Impedance magnitude; Z magnitude; mag Z; Impedance; Z", OHM, [1, 3]),
      unitColumn("angle of Z; Impedance angle; Z phase; arg Z; Phase; theta; Impedance phase", DEGREE, [1, 3]),
    ],
    (_, z) => [abs(z), degrees(z)],
    (size, angle, reference) => gammaOf(turned(size, angle), reference),
  ),
  scalar(
    "z-and-r",
    [column("|Z|; Impedance magnitude; Magnitude of Z", OHM, [2, 3]), column("R; Resistance; Re(Z)", OHM, [2, 3])],
    (_, z) => [abs(z), z.re],
    (size, re, reference) => rhoAt({ re, im: root(size ** 2 - re ** 2) }, reference),
  ),
  scalar(
    "r-and-size-of-x",
    [
      column("R; Resistance", OHM, [1, 3]),
      column("|X|; abs X; Reactance (unsigned); X without sign; Magnitude of X", OHM, [1, 3]),
    ],
    (_, z) => [z.re, Math.abs(z.im)],
    (re, im, reference) => rhoAt({ re, im }, reference),
  ),
  vector(
    "g-b",
    [
      unitColumn("G; Conductance; Re(Y); Y real", SIEMENS, [5, 7]),
      unitColumn("B; Susceptance; Im(Y); Y imag", SIEMENS, [5, 7]),
    ],
    (_, z) => [inverse(z).re, inverse(z).im],
    (re, im, reference) => gammaOf(inverse({ re, im }), reference),
  ),
  vector(
    "y-angle",
    [
      unitColumn("|Y|; Admittance magnitude; Admittance", SIEMENS, [5, 7]),
      unitColumn("angle of Y; Admittance angle; Y phase", DEGREE, [1, 3]),
    ],
    (_, z) => [abs(inverse(z)), degrees(inverse(z))],
    (size, angle, reference) => gammaOf(inverse(turned(size, angle)), reference),
  ),
  vector(
    "parallel",
    [
      column("Rp; Parallel resistance; R parallel; R par.", OHM, [1, 3]),
      column("Xp; Parallel reactance; X parallel; X par.", OHM, [1, 3]),
    ],
    (_, z) => [1 / inverse(z).re, -1 / inverse(z).im],
    (resistance, reactance, reference) => gammaOf(inverse({ re: 1 / resistance, im: -1 / reactance }), reference),
  ),
];

const REFLECTED = "Reflected power; Power reflected; Reflected share of power; Power coming back";
const FRACTION =
  "Reflected power fraction; Share of power reflected; Fraction of power reflected; |Γ|²; |Γ|^2; rho squared";
const ACCEPTED = "Power accepted; Power into the antenna; Accepted power; Power delivered; Forward power delivered";

const POWERS: readonly Kind[] = [
  scalar("reflected-share", [unitColumn(REFLECTED, PERCENT, [4, 5])], (rho) => [rho * rho], root),
  scalar("reflected-fraction", [column(FRACTION, NO_UNIT, [4, 6])], (rho) => [rho * rho], root),
  scalar(
    "accepted-share",
    [unitColumn(ACCEPTED, PERCENT, [4, 5])],
    (rho) => [1 - rho * rho],
    (share) => root(1 - share),
  ),
  scalar(
    "mismatch-loss",
    [column("Mismatch loss; Loss by mismatch; ML", DB_ONLY, [3, 4])],
    (rho) => [-10 * Math.log10(1 - rho * rho)],
    (loss) => root(1 - 10 ** (-loss / 10)),
  ),
  scalar(
    "forward-reflected",
    [
      column("Forward power; Forward; P fwd; Power forward; Pf", WATT, [3, 4]),
      column("Reflected power; Reflected; P refl; Power reflected; Pr", WATT, [3, 4]),
    ],
    (rho) => [5, 5 * rho * rho],
    (forward, reflected) => Math.sqrt(Math.max(0, reflected) / forward),
  ),
];

/** Every quantity by its name. */
export const KINDS: ReadonlyMap<string, Kind> = new Map(
  [...REFLECTIONS, ...IMPEDANCES, ...POWERS].map((kind) => [kind.id, kind]),
);

/** Kinds that mean nothing without a reference impedance (others are impedances or admittances). */
export const RELATIVE = ["swr", "return-loss", "s11-db", "rho", "gamma-re-im", "gamma-angle", "db-angle"] as const;
