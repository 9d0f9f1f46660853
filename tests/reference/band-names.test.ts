/** The names of bands against what the three Regions' allocations have in common (ITU Radio Regulations, Article 5). */
import { COMMON_PLAN_ID, planById } from "@feedpoint/core";
import { expect, test } from "vitest";
import { NAMED_BANDS } from "../../packages/core/src/facts/band-names.js";

test("each name stands for what all three Regions give to amateurs", () => {
  const common = planById(COMMON_PLAN_ID)?.bands.map(({ band, lowHz, highHz }) => ({ band, lowHz, highHz }));
  expect(NAMED_BANDS).toEqual(common);
});
