import { lookUp } from "../../input/look-up.js";
import type { BandPlan } from "./band-plan.js";
import { commonPlan } from "./common-plan.js";
import au from "./plans/au.json" with { type: "json" };
import br from "./plans/br.json" with { type: "json" };
import ca from "./plans/ca.json" with { type: "json" };
import de from "./plans/de.json" with { type: "json" };
import fr from "./plans/fr.json" with { type: "json" };
import iaruR1 from "./plans/iaru-r1-hf.json" with { type: "json" };
import iaruR2 from "./plans/iaru-r2-hf.json" with { type: "json" };
import iaruR3 from "./plans/iaru-r3-hf.json" with { type: "json" };
import ituR1 from "./plans/itu-r1.json" with { type: "json" };
import ituR2 from "./plans/itu-r2.json" with { type: "json" };
import ituR3 from "./plans/itu-r3.json" with { type: "json" };
import jpMic from "./plans/jp-mic.json" with { type: "json" };
import uk from "./plans/uk.json" with { type: "json" };
import usPart97 from "./plans/us-part97.json" with { type: "json" };

/** The plans that come with the library, by name. The tests hold each against the schema, so it is not checked again at run time. */
const PLANS: Readonly<Record<Exclude<PlanId, typeof COMMON_PLAN_ID>, unknown>> = {
  "us-part97": usPart97,
  "itu-r1": ituR1,
  "itu-r2": ituR2,
  "itu-r3": ituR3,
  "iaru-r1-hf": iaruR1,
  "iaru-r2-hf": iaruR2,
  "iaru-r3-hf": iaruR3,
  uk,
  de,
  fr,
  ca,
  br,
  au,
  "jp-mic": jpMic,
};

/** Used where no plan is chosen: what all three ITU Regions give to amateurs. */
export const COMMON_PLAN_ID = "itu-common";

/** Names of all plans that come with the library, the common one first. */
export const planIds = (): readonly string[] => [COMMON_PLAN_ID, ...Object.keys(PLANS)];

/** Names of the plans that come with the library. */
export type PlanId =
  | typeof COMMON_PLAN_ID
  | "us-part97"
  | "itu-r1"
  | "itu-r2"
  | "itu-r3"
  | "iaru-r1-hf"
  | "iaru-r2-hf"
  | "iaru-r3-hf"
  | "uk"
  | "de"
  | "fr"
  | "ca"
  | "br"
  | "au"
  | "jp-mic";

/** What else plans are called, in lower case: the countries that they are for. */
const OTHER_NAMES: Readonly<Record<string, PlanId>> = {
  us: "us-part97",
  usa: "us-part97",
  "united states": "us-part97",
  gb: "uk",
  "great britain": "uk",
  "united kingdom": "uk",
  germany: "de",
  deutschland: "de",
  france: "fr",
  canada: "ca",
  brazil: "br",
  brasil: "br",
  australia: "au",
  japan: "jp-mic",
  jp: "jp-mic",
};

/**
 * The name under which a plan comes with the library, for what a user may call it: "Germany", "us", "UK".
 *
 * @returns null where none is called so
 */
export function planIdNamed(name: string): string | null {
  const plain = name.trim().toLowerCase();
  return planIds().find((id) => id === plain) ?? lookUp(OTHER_NAMES, plain) ?? null;
}

/**
 * A plan that comes with the library, by its name.
 *
 * @param id one of {@link planIds}
 * @returns null where there is none of that name
 * @example
 * ```ts
 * import { planById } from "@feedpoint/core";
 *
 * planById("us-part97").classes; // → ["extra", "advanced", "general", "technician", "novice"]
 * planById("none"); // → null
 * ```
 */
export function planById(id: PlanId): BandPlan;
export function planById(id: string): BandPlan | null;
export function planById(id: string): BandPlan | null {
  if (id === COMMON_PLAN_ID) return ituCommon();
  return (lookUp(PLANS, id) as BandPlan | undefined) ?? null;
}

function ituCommon(): BandPlan {
  const regions = [planById("itu-r1"), planById("itu-r2"), planById("itu-r3")];
  return commonPlan(regions, {
    id: COMMON_PLAN_ID,
    title: "Amateur allocations that all three ITU Regions have in common",
    edition: regions[0]?.edition ?? "",
  });
}
