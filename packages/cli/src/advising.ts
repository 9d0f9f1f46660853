import { type AdviseResult, advise, type Deployment } from "@feedpoint/core";
import { OPTIONS, type RawOptions, stated } from "./options/options.js";
import type { Settings } from "./options/settings.js";
import { wishesFrom } from "./options/wishes.js";

/** What the settings and the options of try, or of a report, ask of a deployment. */
export function advisedBy(
  settings: Settings,
  deployment: Deployment,
  raw: Partial<Pick<RawOptions<"try">, "want" | "have" | "arriving" | "fixed" | "feedline">>,
): AdviseResult {
  const parts = stated(OPTIONS.have, raw.have, settings.station);
  return advise(deployment, {
    ...settings,
    isAtAntenna: raw.feedline === false,
    ...(raw.want === undefined ? {} : { wishes: wishesFrom(raw.want, settings) }),
    ...(parts === undefined ? {} : { parts }),
    ...(raw.arriving === undefined ? {} : { leastArriving: raw.arriving }),
    ...(raw.fixed === undefined ? {} : { fixed: raw.fixed }),
  });
}
