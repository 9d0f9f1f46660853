import type { Station } from "@feedpoint/core";
import type { Choices, Listing, Look, Source, Together } from "../protocol.js";

/** All that the page knows; what is shown is made of it and of nothing else. */
export interface State {
  readonly choices: Choices;
  readonly sources: readonly Source[];
  /** Files too large to be read, in words */
  readonly refused: readonly string[];
  readonly together: Together;
  readonly station: Station;
  readonly wanted: string;
  /** Whether the station stays on this device */
  readonly isKept: boolean;
  readonly isTyping: boolean;
  readonly listing: Listing | null;
  /** Deployments that are ticked, in the order of the list */
  readonly ticked: readonly number[];
  /** What was asked for last */
  readonly look: Look | null;
  /** What the answer answers: the same, as soon as that is known */
  readonly shown: Look | null;
  /** The answer as markup */
  readonly answer: string;
  /** What is going on; empty where nothing is */
  readonly busy: string;
  /** What could not be done, or was */
  readonly told: string;
}

export const EMPTY: State = {
  choices: { plans: [], activities: [] },
  sources: [],
  refused: [],
  together: "found",
  station: {},
  wanted: "",
  isKept: false,
  isTyping: false,
  listing: null,
  ticked: [],
  look: null,
  shown: null,
  answer: "",
  busy: "",
  told: "",
};

const KEY = "feedpoint station";

/** The station that the user told this device to keep; null where none is, or the device keeps nothing. */
export function keptStation(): unknown {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "null");
  } catch {
    return null;
  }
}

/** Keeps the station on this device, or forgets it. */
export function keepStation({ isKept, station }: State): void {
  try {
    if (isKept) localStorage.setItem(KEY, JSON.stringify(station));
    else localStorage.removeItem(KEY);
  } catch {
    // A device that keeps nothing has nothing to forget.
  }
}
