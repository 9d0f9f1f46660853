import { type HeardOptions, type HeardResult, heard, type ReceptionReport } from "@feedpoint/core";
import { UsageError } from "../asked/usage-error.js";

/**
 * What reports tell of the deployments of a log.
 *
 * @param whoseIsYours what helps where the reports leave open which station is the own one
 * @throws UsageError for what cannot be asked of them
 */
export function heardBy(reports: readonly ReceptionReport[], options: HeardOptions, whoseIsYours = ""): HeardResult {
  try {
    return heard(reports, options);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const { message } = error;
    const remedy = message.includes("is yours") ? whoseIsYours : "";
    throw new UsageError(`${message.charAt(0).toUpperCase()}${message.slice(1)}.${remedy}`);
  }
}
