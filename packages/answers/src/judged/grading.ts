import {
  type Deployment,
  type DeploymentLog,
  type GradeCriterion,
  gradeSweep,
  type SweepGrade,
  type Wish,
} from "@feedpoint/core";
import { deploymentRowFinder } from "../asked/deployments.js";
import { deploymentLine } from "../asked/known-lines.js";
import type { Settings } from "../asked/settings.js";

/** What grading goes by: plain data, which can be handed to a worker. */
export interface Grading
  extends Pick<
    Settings,
    "plan" | "licenceClass" | "bands" | "modes" | "limits" | "radioOhms" | "equipment" | "feedline"
  > {
  readonly criteria: readonly GradeCriterion[];
  readonly log: DeploymentLog | null;
  /** What is wanted beside the bands */
  readonly wishes: readonly Wish[];
  /** Whether dips and shares are told at the antenna's end of the line as well */
  readonly withAntennaEnd: boolean;
}

/** Prepares to grade deployments: each with its row of the log, and by its own line where that tells one. */
export function graderBy(grading: Grading): (deployment: Deployment) => SweepGrade {
  const rowOf = deploymentRowFinder(grading.log);
  return (deployment) => {
    const log = rowOf(deployment);
    const feedline = deploymentLine(grading.log, log, grading.feedline);
    return { ...gradeSweep(deployment, { ...grading, feedline }), log };
  };
}
