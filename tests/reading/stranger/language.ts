/** What is known of a language: its words for the quantities, its units, its ways to state a reference. */
export interface Units {
  Hz: string;
  kHz: string;
  MHz: string;
  GHz: string;
  ohm: readonly string[];
  decibel: string;
  degree: string;
}

/** Words in full, inflected, abbreviated and without accents, parted by "; ". */
export interface Language {
  frequency: string;
  swr: string;
  returnLoss: string;
  resistance: string;
  reactance: string;
  impedance: string;
  angle: string;
  rho: string;
  reflectedPower: string;
  /** {z} is the number of ohms. */
  reference: string;
  title: string;
  units: Units;
}

export const LATIN: Units = {
  Hz: "Hz",
  kHz: "kHz",
  MHz: "MHz",
  GHz: "GHz",
  ohm: ["ohm", "Ω"],
  decibel: "dB",
  degree: "°",
};

export const CYRILLIC: Units = {
  Hz: "Гц",
  kHz: "кГц",
  MHz: "МГц",
  GHz: "ГГц",
  ohm: ["Ом", "ом"],
  decibel: "дБ",
  degree: "град",
};
