import { choosePlan } from "@feedpoint/answers/asked/find-plan";
import { type Settings, settingsOf } from "@feedpoint/answers/asked/settings";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type Grading, graderBy } from "@feedpoint/answers/judged/grading";
import { criteriaWith, type Deployment, type DeploymentLog, type Station, type SweepGrade } from "@feedpoint/core";

/** Settings by what the station states, as the command has them of a station file. @throws UsageError, or Error of core */
export async function settingsBy(station: Station): Promise<Settings> {
  const { licence = {}, bands } = station;
  const chosen = await choosePlan({ ...licence, bands }, async (name) => {
    throw new UsageError(`The page knows the plans that come along, and not the file ${name}. Choose one of those.`);
  });
  return settingsOf(station, chosen, { reading: {} });
}

/** Grades deployments by settings. */
export function gradesBy(
  settings: Settings,
  { log, wishes = [] }: { readonly log: DeploymentLog | null } & Partial<Pick<Grading, "wishes">>,
): (deployment: Deployment) => SweepGrade {
  return graderBy({
    ...settings,
    criteria: criteriaWith(settings.station.criteria ?? {}),
    log,
    wishes,
    withAntennaEnd: false,
  });
}
