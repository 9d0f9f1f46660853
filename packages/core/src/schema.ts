/** Checks of data from outside, built with zod. Apart from the main entry, so that who needs none of it loads none. */
export { bandPlanSchema, parseBandPlan } from "./band-plan/band-plan-schema.js";
