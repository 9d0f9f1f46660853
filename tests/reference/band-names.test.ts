/** The names of bands against what the three Regions' allocations have in common (ITU Radio Regulations, Article 5). */
import { COMMON_PLAN_ID, planById } from "@feedpoint/core";
import { expect, test } from "vitest";
import { NAMED_BANDS } from "../../packages/core/src/facts/band-names.js";

test("each name stands for what all three Regions give to amateurs", () => {
  const common = planById(COMMON_PLAN_ID)?.bands.map(({ band, lowHz, highHz }) => ({ band, lowHz, highHz }));
  expect(NAMED_BANDS.filter(({ band }) => !["4m", "1.25m"].includes(band))).toEqual(common);
});

test("4 m and 1.25 m are as plans of countries have them", () => {
  const edges = (name: string) => NAMED_BANDS.find(({ band }) => band === name);
  const segments = (id: string, name: string) => planById(id)?.bands.find(({ band }) => band === name)?.segments;
  expect(segments("uk", "4m")).toMatchObject([{ lowHz: edges("4m")?.lowHz, highHz: edges("4m")?.highHz }]);
  expect(segments("us-part97", "1.25m")?.at(-1)).toMatchObject({
    lowHz: edges("1.25m")?.lowHz,
    highHz: edges("1.25m")?.highHz,
  });
});
