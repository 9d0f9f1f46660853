/** What the page and its worker say to each other: plain data, which is copied from one to the other. */
import type { Station } from "@feedpoint/core";

/** What the user says about one file, as the options of reading have it; a text that is empty says nothing. */
export interface ReadAs {
  readonly unit?: string;
  /** Roles from the left, "frequency:MHz,swr" */
  readonly columns?: string;
  readonly reference?: string;
  readonly decimal?: string;
  readonly delimiter?: string;
  readonly sign?: string;
  readonly port?: string;
}

/** What can be asked about a file. */
export type Question = keyof ReadAs;

/** Something to read: a file, or what was typed. */
export interface Source {
  readonly id: number;
  /** As the command would name it: folder and name */
  readonly path: string;
  readonly content: Blob;
  readonly readAs: ReadAs;
}

/** How files belong together: as folders and ranges tell, all as one deployment, or each by itself. */
export type Together = "found" | "one" | "each";

/** All that was chosen and stated. */
export interface Session {
  readonly sources: readonly Source[];
  readonly together: Together;
  readonly station: Station;
}

/** A source that could not be read, and what may be asked about it. */
export interface Unread {
  readonly source: number;
  readonly reason: string;
  readonly questions: readonly Question[];
  /** What may be answered, such as columns that look likely */
  readonly proposed: ReadAs;
}

/** A deployment in the list. */
export interface Listed {
  readonly label: string;
  readonly date: string | null;
  /** Grades by band, "40m A, 20m C" */
  readonly grades: string;
  readonly sources: readonly number[];
  /** A problem of it makes the grades doubtful */
  readonly isDoubtful: boolean;
}

export interface Listing {
  readonly deployments: readonly Listed[];
  readonly unread: readonly Unread[];
  /** Reception reports among what was read */
  readonly reports: number;
  /** Columns of the deployment log; null where there is none */
  readonly logColumns: readonly string[] | null;
  readonly bands: readonly string[];
}

/** What is looked at. */
export type Look =
  | { readonly what: "check"; readonly deployment: number }
  | { readonly what: "advise"; readonly deployment: number }
  | { readonly what: "heard" }
  | { readonly what: "diff"; readonly before: number; readonly after: number; readonly isSamePlane: boolean }
  | {
      readonly what: "grade";
      /** A column to compare by; empty: not asked */
      readonly groupBy: string;
      readonly isOverTime: boolean;
    };

/** An answer as markup of our own, every word of a file in it escaped. */
interface View {
  readonly markup: string;
  /** What of the question it does not answer, in words; empty where it answers all */
  readonly note: string;
}

/** What can be saved of what is looked at. */
export type SaveAs = "report" | "csv" | "cleaned-csv" | "cleaned-touchstone";

export interface Saved {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** A plan to choose. */
interface PlanChoice {
  readonly id: string;
  readonly title: string;
  readonly classes: readonly string[];
}

export interface Choices {
  readonly plans: readonly PlanChoice[];
  /** Common activities, such as FT8 */
  readonly activities: readonly string[];
}

/** Each question to the worker, with its answer. `wanted` is what the user wants to transmit, as it was typed. */
export interface Asks {
  readonly choices: { readonly ask: Record<never, never>; readonly answer: Choices };
  readonly list: { readonly ask: { readonly session: Session }; readonly answer: Listing };
  readonly look: { readonly ask: { readonly look: Look; readonly wanted: string }; readonly answer: View };
  readonly save: {
    readonly ask: { readonly look: Look; readonly wanted: string; readonly as: SaveAs };
    readonly answer: readonly Saved[];
  };
  readonly station: { readonly ask: { readonly data: unknown }; readonly answer: Station };
}

export type AskName = keyof Asks;

export interface AskMessage<Name extends AskName = AskName> {
  readonly id: number;
  readonly name: Name;
  readonly ask: Asks[Name]["ask"];
}

export type AnswerMessage =
  | { readonly id: number; readonly answer: Asks[AskName]["answer"] }
  | { readonly id: number; readonly refusal: string };
