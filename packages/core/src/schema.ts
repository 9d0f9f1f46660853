/** Checks of data from outside, built with zod. Apart from the main entry, so that who needs none of it loads none. */
export { activitySchema } from "./facts/activity/activity-schema.js";
export { bandPlanSchema, parseBandPlan } from "./facts/band-plan/band-plan-schema.js";

import * as z from "zod";
import { bandPlanSchema } from "./facts/band-plan/band-plan-schema.js";
import { stationSchema } from "./facts/station/station-schema.js";

export { parseStation, stationSchema } from "./facts/station/station-schema.js";

const SCHEMAS = { plan: bandPlanSchema, station: stationSchema };

/**
 * The JSON Schema (draft 2020-12) of a file that a user can write, for an editor that completes and checks it.
 *
 * @param what "plan": a band plan; "station": a station file
 */
export const jsonSchemaOf = (what: keyof typeof SCHEMAS): object => z.toJSONSchema(SCHEMAS[what], { io: "input" });
