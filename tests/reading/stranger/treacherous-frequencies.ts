/** Frequencies without a unit, with a wrong one, from a centre, slipped, or told as something else. */
import { number, UNIT_HZ } from "./layout.js";
import { under } from "./plain-tables.js";
import { tableOf, type Variants } from "./printed-table.js";
import { at } from "./random.js";
import { ask, refuse, rewrite, wide } from "./treachery.js";
import type { Truth } from "./truth.js";

const LIGHT_METRES_PER_SECOND = 299_792_458;
const CENTRE_HZ = 7_100_000;
const UNITS = ["Hz", "kHz", "MHz", "GHz"] as const;

/** Whose unit their size tells. */
const PLAIN_RANGES: readonly (readonly [number, number])[] = [
  [3000, 30000],
  [6900, 7300],
  [14000, 14350],
];

export const TREACHEROUS_FREQUENCIES: Variants = {
  "no unit of frequency": (rng) => {
    const kHz = rng.pick(PLAIN_RANGES);
    const table = tableOf(rng, { kinds: ["swr"], kHz, layout: { unit: rng.pick(["Hz", "kHz", "MHz"]) } });
    table.head[0] = rng.pick(["Frequency", "Freq", "f"]);
    return { table };
  },
  "unit of frequency cannot be": (rng) => {
    const table = tableOf(rng, { kinds: ["swr"], kHz: [6900, 7300], layout: { unit: rng.pick(["Hz", "MHz"]) } });
    table.head[0] = `Frequency (${rng.pick(table.layout.unit === "Hz" ? ["MHz", "GHz"] : ["Hz", "kHz"])})`;
    return ask(table);
  },
  "units of frequency at odds": (rng) => {
    const table = tableOf(rng, { kinds: ["swr"] });
    const { unit } = table.layout;
    table.head[0] = `Frequency (${unit})`;
    const other = rng.pick(UNITS.filter((each) => each !== unit));
    // The header's unit is the likelier, and a word about it is due.
    const truth: Truth = { kind: "sweeps", ways: [[table.truth]], doubt: true };
    return { ...under([`All frequencies in ${other}`], table), clear: false, truth };
  },
  "offset from a centre": (rng) => {
    const table = tableOf(rng, { kinds: ["swr"], kHz: [7000, 7200], points: 41, layout: { down: false } });
    rewrite(table, 0, 0, (row) => (at(table.swept.hz, row) - CENTRE_HZ) / 1000);
    for (const point of table.truth.points) point.hzTol = 501;
    const name = rng.pick([
      "Offset from 7.1 MHz (kHz)",
      "Offset from 7100 kHz (kHz)",
      "kHz from centre 7.1 MHz",
      "df (kHz)",
    ]);
    table.head[0] = name;
    const told = name.startsWith("df") ? ["df = distance from the centre frequency, 7.1 MHz"] : [];
    return { ...under(told, table), clear: false };
  },
  "one frequency slipped by ten": (rng) => {
    const layout = { down: false, unit: rng.pick(["kHz", "MHz"] as const) };
    const table = tableOf(rng, { kinds: ["swr"], layout, points: 31 });
    const row = rng.int(3, table.rows.length - 4);
    const slipped = at(table.swept.hz, row) * rng.pick([0.1, 10]);
    at(table.rows, row)[0] = number(slipped / UNIT_HZ[table.layout.unit], 4, table.layout);
    at(table.truth.points, row).optional = true;
    table.truth.extra = 1;
    return { table, mustCaution: true };
  },
  "angular frequency": (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 0, 0, (row) => 2 * Math.PI * at(table.swept.hz, row));
    table.head[0] = rng.pick(["omega (rad/s)", "ω (1/s)", "Angular frequency (rad/s)"]);
    return { table, clear: false };
  },
  wavelength: (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 0, 4, (row) => LIGHT_METRES_PER_SECOND / at(table.swept.hz, row));
    for (const point of table.truth.points) {
      point.hzTol = (point.hz * point.hz * 0.00006) / LIGHT_METRES_PER_SECOND + 5000 * (point.hz / 3e7);
    }
    table.head[0] = rng.pick(["Wavelength (m)", "lambda (m)"]);
    return { table, clear: false };
  },
  "only time, no frequency": (rng) => {
    const table = wide(rng, "swr");
    rewrite(table, 0, 0, (row) => row * 2);
    table.head[0] = rng.pick(["Time (s)", "seconds", "Minutes"]);
    return refuse(table);
  },
};
