import type { Pair } from "../sweeps.js";
import type { Antenna, AntennaState } from "./antenna.js";
import type { FamilyName } from "./antennas.js";
import { gammaOfImpedance } from "./complex.js";
import { type Element, throughElement } from "./elements.js";
import { type Line, throughLine } from "./lines.js";

/** What an analyser sees: [elements at the plug] [line] [elements at the feed] antenna. */
export interface Station {
  readonly family: FamilyName;
  readonly antenna: AntennaState;
  readonly impedance: Antenna["impedance"];
  readonly line: Line;
  readonly lengthM: number;
  /** From the antenna towards the line. */
  readonly feed: readonly Element[];
  /** From the line towards the analyser. */
  readonly plug: readonly Element[];
  /** The reference that Γ is taken against, ohms. */
  readonly referenceOhms: number;
}

/** Γ at the analyser, without noise, at frequencies in Hz. */
export function reflectionsOf(station: Station, frequencyHz: readonly number[]): Pair[] {
  const antenna = station.impedance(station.antenna);
  return frequencyHz.map((hz) => {
    const through = (z: Pair, element: Element) => throughElement(element, z, hz);
    const feed = station.feed.reduce(through, antenna(hz));
    const line = throughLine(feed, station.line, station.lengthM, hz);
    return gammaOfImpedance(station.plug.reduce(through, line), station.referenceOhms);
  });
}
