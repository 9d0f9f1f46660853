/** A date of year, month and day, with an optional time of day after it, wherever it stands in a text. */
const DATE =
  /(?<!\d)(20\d\d)([-_./]?)(0[1-9]|1[0-2])\2(0[1-9]|[12]\d|3[01])(?:[ T_-]+([01]\d|2[0-3])[:.h-]?([0-5]\d))?(?!\d)/;

/**
 * When a sweep was taken, where the text of its comments or its file's name says so in the order year, month, day.
 *
 * @returns an ISO 8601 date, with the time of day where that is stated; null where there is none
 */
export function takenAtFrom(comments: readonly string[], fileName: string | undefined): string | null {
  // What a file is called says more than the folder that it lies in, and that more than the one above.
  const names = (fileName ?? "").split(/[/\\]/).reverse();
  for (const text of [...comments, ...names]) {
    const match = DATE.exec(text);
    if (match === null) continue;
    const [, year, , month, day, hour, minute] = match;
    const date = `${year}-${month}-${day}`;
    return hour === undefined ? date : `${date}T${hour}:${minute}`;
  }
  return null;
}
