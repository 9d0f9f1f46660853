import type { ModeName } from "../mode-names.js";
import { modeOf } from "../modes.js";
import type { Activity, ActivityKind } from "./activity.js";
import type { Dial } from "./dial.js";

/** How one transmits at an activity of a kind; null: one only listens there. */
const MODE_OF: Readonly<Record<ActivityKind, ModeName | null>> = {
  digital: "data",
  "beacon-digital": "data",
  "digital-voice": "ssb",
  "cw-qrp": "cw",
  "cw-slow": "cw",
  "ssb-qrp": "ssb",
  image: "image",
  emergency: "ssb",
  beacon: null,
  am: "am",
  fm: "fm",
};

/**
 * An activity as a dial frequency for {@link check} to judge, in the mode that is common there; without a mode for a beacon, to
 * which one only listens.
 */
export function dialOf({ frequencyHz, kind, label }: Activity): Dial {
  const mode = MODE_OF[kind];
  return { frequencyHz, mode: mode && modeOf(mode), activity: label };
}
