import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { delimitedText, touchstoneText } from "@feedpoint/core";
import type { SaveAs, Saved } from "../protocol.js";
import type { Answer } from "./views.js";

/** An answer, or the sweeps behind it, as files to save. @throws UsageError where a sweep has no angle to write */
export function savedAs(as: SaveAs, answer: Answer): readonly Saved[] {
  switch (as) {
    case "report":
      return [{ name: `${plain(answer.label)}.html`, type: "text/html", text: answer.report() }];
    case "csv":
      return [{ name: `${plain(answer.label)}.csv`, type: "text/csv", text: `${answer.csv()}\n` }];
    case "cleaned-csv":
      return sweepsOf(answer).map((sweep) => ({
        name: `${plain(sweep.label)}-cleaned.csv`,
        type: "text/csv",
        text: delimitedText(sweep),
      }));
    case "cleaned-touchstone":
      return sweepsOf(answer).map((sweep) => {
        if (sweep.kind === "scalar")
          throw new UsageError(
            `${sweep.label} knows only the size of the reflection; Touchstone needs its angle. Save it as CSV.`,
          );
        return { name: `${plain(sweep.label)}-cleaned.s1p`, type: "text/plain", text: touchstoneText(sweep) };
      });
  }
}

const sweepsOf = ({ deployments }: Answer) => deployments.flatMap(({ parts }) => parts);

/** A label as the name of a file, without an ending. */
const plain = (label: string): string =>
  label
    .replace(/\.\w{1,4}$/, "")
    .replace(/[^\p{L}\p{N}.-]+/gu, "-")
    .replace(/^[-.]+|-+$/g, "")
    .slice(0, 80) || "sweep";
