/** What a file is read as, in a line that a test can compare. */
import { ReadError, readSweeps, type Sweep, swrFromReflectionMagnitude } from "@feedpoint/core";

const short = (value: number) => String(Number(value.toFixed(2)));

function told(sweep: Sweep): string {
  const reference = sweep.referenceOhms === 50 ? "" : `(${sweep.referenceOhms}) `;
  const noted = (sweep.kind === "scalar" ? (sweep.readings ?? []) : []).map(({ band, lowHz, swrLow, swrHigh }) => {
    const range = swrLow === swrHigh ? short(swrLow) : `${short(swrLow)}-${short(swrHigh)}`;
    return `${band ?? short(lowHz / 1e6)}=${range}`;
  });
  const swept = Array.from(
    sweep.frequencyHz,
    (hz, i) => `${short(hz / 1e6)}:${short(swrFromReflectionMagnitude(sweep.reflectionMagnitude[i] ?? Number.NaN))}`,
  );
  return reference + (noted.length > 0 ? noted : swept).join(" ");
}

/**
 * What a file is read as, or "refused": `7.05:1.62` is an SWR at MHz, `40m=1.5-2` one noted for a band; series stand apart by bars; findings
 * that are no info stand behind.
 */
export function readInShort(content: string): string {
  try {
    const sweeps = readSweeps(content);
    const codes = sweeps[0].findings.filter(({ severity }) => severity !== "info").map(({ code }) => code);
    return [sweeps.map(told).join(" | "), ...codes].join("; ");
  } catch (error) {
    if (error instanceof ReadError) return "refused";
    throw error;
  }
}
