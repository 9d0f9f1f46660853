import type { Settings } from "@feedpoint/answers/asked/settings";
import type { Grading } from "@feedpoint/answers/judged/grading";
import type { Grade } from "@feedpoint/core";

/** What grading a file needs: plain data, which can be handed to a worker. */
export interface GradingSettings extends Pick<Settings, "reading" | "systemOhms">, Grading, Run {}

/** How a run of grading goes about it. */
export interface Run extends Pick<Grading, "criteria" | "log" | "wishes" | "withAntennaEnd"> {
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
