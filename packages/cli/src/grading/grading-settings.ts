import type { GradeCriterion } from "@feedpoint/core";
import type { Settings } from "../options/settings.js";

/** What grading a file needs: plain data, which can be handed to a worker. */
export interface GradingSettings
  extends Pick<Settings, "plan" | "licenceClass" | "bands" | "modes" | "limits" | "reading" | "systemOhms"> {
  readonly criteria: readonly GradeCriterion[];
}

export function gradingSettings(settings: Settings, criteria: readonly GradeCriterion[]): GradingSettings {
  const { plan, licenceClass, bands, modes, limits, reading, systemOhms } = settings;
  return {
    plan,
    licenceClass,
    ...(bands === undefined ? {} : { bands }),
    ...(modes === undefined ? {} : { modes }),
    limits,
    reading,
    systemOhms,
    criteria,
  };
}
