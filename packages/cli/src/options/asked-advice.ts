import type { AskedAdvice } from "@feedpoint/answers/judged/advising";
import type { RawOptions } from "./options.js";

/** What try, and a report, ask about one deployment. */
export const askedAdvice = (
  raw: Partial<Pick<RawOptions<"try">, "want" | "have" | "arriving" | "feedline">>,
): AskedAdvice => ({
  wishes: raw.want,
  isAtAntenna: raw.feedline === false,
  ...(raw.have === undefined ? {} : { parts: raw.have }),
  ...(raw.arriving === undefined ? {} : { leastArriving: raw.arriving }),
});
