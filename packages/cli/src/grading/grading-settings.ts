import type { DeploymentLog, Grade, GradeCriterion, Wish } from "@feedpoint/core";
import type { Settings } from "../options/settings.js";

/** What grading a file needs: plain data, which can be handed to a worker. */
export interface GradingSettings
  extends Pick<
      Settings,
      | "plan"
      | "licenceClass"
      | "bands"
      | "modes"
      | "limits"
      | "reading"
      | "systemOhms"
      | "radioOhms"
      | "equipment"
      | "feedline"
    >,
    Run {}

/** How a run of grading goes about it. */
export interface Run {
  readonly criteria: readonly GradeCriterion[];
  readonly log: DeploymentLog | null;
  /** What is wanted beside the bands */
  readonly wishes: readonly Wish[];
  /** Whether dips and shares are told at the antenna's end of the line as well */
  readonly withAntennaEnd: boolean;
  /** What every sweep should reach */
  readonly require?: Grade | undefined;
  /** Of those streamed only these are shown */
  readonly minGrade?: Grade | undefined;
  /** Whether each sweep is written as it is done and then forgotten */
  readonly isStreamed: boolean;
}

export function gradingSettings(settings: Settings, run: Run): GradingSettings {
  const { plan, licenceClass, bands, modes, limits, reading, systemOhms, radioOhms, equipment, feedline } = settings;
  return {
    plan,
    licenceClass,
    ...(bands === undefined ? {} : { bands }),
    ...(modes === undefined ? {} : { modes }),
    limits,
    reading,
    systemOhms,
    radioOhms,
    equipment,
    feedline,
    ...run,
  };
}
