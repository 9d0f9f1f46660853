/**
 * What United States licence classes may transmit, against the rules and the examiners' own answers.
 *
 * Sources: 47 CFR Part 97 as in force since 13 February 2026, sections 97.301, 97.303(h), 97.305, 97.307(f), 97.313 (read in reprints
 * and quotations); 91 FR 1405 (60 m); the NCVEC question pools of Technician (T), General (G) and Extra (E), with the letter of the
 * answer; ARRL bulletin ARLB002 (2026). Each row names its own.
 */
import type { Emission, PowerLimit } from "@feedpoint/core";

export interface Privilege {
  readonly kilohertz: number;
  readonly emission: Emission;
  readonly licenceClass: string;
  readonly allowed: boolean;
  /** null where the source states none */
  readonly maxPower: PowerLimit | null;
  readonly occupied?: { readonly belowHz: number; readonly aboveHz: number };
  readonly source: string;
}

export const PRIVILEGES: readonly Privilege[] = [
  {
    kilohertz: 7200,
    emission: "phone",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 1500, basis: "pep" },
    source: "97.301(d), 97.305(c)(3)(vii)",
  },
  {
    kilohertz: 7150,
    emission: "phone",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "NCVEC G1A05 (A): 7.125-7.175 MHz prohibited to General",
  },
  {
    kilohertz: 7150,
    emission: "cw",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "NCVEC G1A05 (A); 97.301(d)",
  },
  {
    kilohertz: 7150,
    emission: "phone",
    licenceClass: "advanced",
    allowed: true,
    maxPower: null,
    source: "97.301(c), 97.305(c)(3)(vii)",
  },
  {
    kilohertz: 7100,
    emission: "phone",
    licenceClass: "extra",
    allowed: false,
    maxPower: null,
    source: "97.305(c)(3)(vi): 7.100-7.125 is RTTY/data (contiguous US)",
  },
  {
    kilohertz: 14200,
    emission: "phone",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "97.301(d): General phone starts at 14.225",
  },
  {
    kilohertz: 14250,
    emission: "phone",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 1500, basis: "pep" },
    source: "97.301(d), 97.305(c)(3)(x)",
  },
  {
    kilohertz: 10120,
    emission: "phone",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "NCVEC G1A02 (B); 97.305(c)(3)(viii)",
  },
  {
    kilohertz: 10140,
    emission: "data",
    licenceClass: "extra",
    allowed: true,
    maxPower: { watts: 200, basis: "pep" },
    source: "NCVEC G1C01 (A): 200 W PEP on 10.140 MHz; 97.313(c)(1)",
  },
  {
    kilohertz: 21300,
    emission: "phone",
    licenceClass: "general",
    allowed: true,
    maxPower: null,
    source: "NCVEC G1A09 (C): 21300 kHz is in the General portion",
  },
  {
    kilohertz: 28010,
    emission: "cw",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 1500, basis: "pep" },
    source: "NCVEC G1A05 and G1A07 (D): CW on the entire 10 m band",
  },
  {
    kilohertz: 29650,
    emission: "cw",
    licenceClass: "general",
    allowed: true,
    maxPower: null,
    source: "NCVEC G1A07 (D); 97.305(a)",
  },
  {
    kilohertz: 1900,
    emission: "phone",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 1500, basis: "pep" },
    source: "NCVEC G1C06 (D): 1500 W PEP on 1.8 MHz",
  },
  {
    kilohertz: 3750,
    emission: "phone",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "97.301(d): General 75 m starts at 3.800",
  },
  {
    kilohertz: 3750,
    emission: "phone",
    licenceClass: "advanced",
    allowed: true,
    maxPower: null,
    source: "97.301(c): Advanced 75 m starts at 3.700",
  },
  {
    kilohertz: 28400,
    emission: "phone",
    licenceClass: "technician",
    allowed: true,
    maxPower: { watts: 200, basis: "pep" },
    source: "NCVEC T1B01 (C) and T1B11 (A): 28.3-28.5 MHz, 200 W",
  },
  {
    kilohertz: 28550,
    emission: "phone",
    licenceClass: "technician",
    allowed: false,
    maxPower: null,
    source: "NCVEC T1B01: 28.500-28.600 is not available",
  },
  {
    kilohertz: 28100,
    emission: "data",
    licenceClass: "technician",
    allowed: true,
    maxPower: { watts: 200, basis: "pep" },
    source: "NCVEC T1B05 (D): digital modes on 10 m",
  },
  {
    kilohertz: 7050,
    emission: "cw",
    licenceClass: "technician",
    allowed: true,
    maxPower: { watts: 200, basis: "pep" },
    source: "97.301(e), 97.307(f)(9), 97.313(c)(2)",
  },
  {
    kilohertz: 21100,
    emission: "data",
    licenceClass: "technician",
    allowed: false,
    maxPower: null,
    source: "97.307(f)(9): Technician 80/40/15 m is Morse CW only; NCVEC T1B06 (B) for phone",
  },
  {
    kilohertz: 50050,
    emission: "phone",
    licenceClass: "technician",
    allowed: false,
    maxPower: null,
    source: "NCVEC T1B07 (A): 50.0-50.1 MHz is CW only",
  },
  {
    kilohertz: 5360,
    emission: "phone",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 9.15, basis: "erp" },
    source: "97.303(h)(3), 97.313(i) from 13 Feb 2026; 91 FR 1405; ARLB002",
  },
  {
    kilohertz: 5332,
    emission: "cw",
    licenceClass: "general",
    allowed: true,
    maxPower: { watts: 100, basis: "erp" },
    source: "97.303(h)(3), 97.313(i): channel centre, 100 W ERP",
  },
  {
    kilohertz: 5340,
    emission: "phone",
    licenceClass: "general",
    allowed: false,
    maxPower: null,
    source: "97.303(h)(3): only the four channels and 5351.5-5366.5",
  },
  {
    kilohertz: 14348,
    emission: "phone",
    licenceClass: "extra",
    allowed: false,
    maxPower: null,
    occupied: { belowHz: 0, aboveHz: 3000 },
    source: "NCVEC E1A01 (D): 3 kHz USB from 14.348 runs past 14.350",
  },
];
