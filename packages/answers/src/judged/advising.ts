import { type AdviseOptions, type AdviseResult, advise, type Deployment } from "@feedpoint/core";
import type { Settings } from "../asked/settings.js";
import { type TypedWish, wishesFrom } from "../asked/wishes.js";

/** What is asked about one deployment beside the settings; the station says what is left out. */
export interface AskedAdvice extends Partial<Pick<AdviseOptions, "parts" | "leastArriving">> {
  readonly wishes?: readonly TypedWish[] | undefined;
  /** Swept at the antenna itself */
  readonly isAtAntenna?: boolean;
}

/** What to try next with a deployment. @throws UsageError for a wish that the plan does not know */
export function advisedBy(
  settings: Settings,
  deployment: Deployment,
  { wishes, isAtAntenna = false, parts = settings.station.parts, ...asked }: AskedAdvice,
): AdviseResult {
  return advise(deployment, {
    ...settings,
    isAtAntenna,
    ...(wishes === undefined ? {} : { wishes: wishesFrom(wishes, settings) }),
    ...(parts === undefined ? {} : { parts }),
    ...asked,
  });
}
