/** Why a line or a record is no report that can be used. */
export type ReportLeftOutReason =
  /** No date and time that can be read */
  | "no-time"
  /** One of the two stations is not named */
  | "no-station"
  /** Neither band nor frequency, or one that is in no amateur band */
  | "no-band"
  /** It has fewer cells than the table has columns that count */
  | "too-few-cells";

/** A line of a table, or a record of a log, that is no report. */
export interface LeftOut {
  /** Line of a table, record of a log; from 1 */
  readonly place: number;
  readonly reason: ReportLeftOutReason;
}
