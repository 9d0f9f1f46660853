/** Shows how far a long run has come, on a terminal that can draw it and only after half a second. */
export interface Progress {
  /** By so many files */
  advance(files: number): void;
  stop(): void;
}

const PATIENCE_MS = 500;

/**
 * Whether escape codes may be written: to a terminal that knows them (TERM is not "dumb"), by one who does not refuse them
 * (NO_COLOR). Nothing else that the command writes has any.
 */
export const takesEscapeCodes = (
  { isTTY }: { readonly isTTY?: boolean },
  { TERM, NO_COLOR = "" }: NodeJS.ProcessEnv,
): boolean => isTTY === true && TERM !== "dumb" && NO_COLOR === "";

export function progressOf(total: number): Progress {
  if (!takesEscapeCodes(process.stderr, process.env)) return { advance: () => {}, stop: () => {} };
  const started = Date.now();
  let done = 0;
  let bar: import("cli-progress").SingleBar | null = null;
  const timer = setTimeout(async () => {
    const { Presets, SingleBar } = await import("cli-progress");
    bar = new SingleBar(
      {
        format: "{bar} {percentage} %  {value}/{total} files  {rate} a second  {eta_formatted} left",
        stream: process.stderr,
        clearOnComplete: true,
      },
      Presets.shades_classic,
    );
    bar.start(total, done, { rate: 0 });
  }, PATIENCE_MS);
  return {
    advance(files) {
      done += files;
      bar?.update(done, { rate: Math.round((1000 * done) / (Date.now() - started)) });
    },
    stop() {
      clearTimeout(timer);
      bar?.stop();
    },
  };
}
