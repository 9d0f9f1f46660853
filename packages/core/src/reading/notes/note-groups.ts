import { grouped } from "../../numbers/grouped.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { NotedReading } from "./note-line.js";
import type { NoteGroup } from "./note-table.js";

/** A line of notes, and the readings in it; null where it holds none. */
export interface NoteLine {
  readonly text: string;
  /** In the file, counted from 1 */
  readonly line: number;
  readonly readings: readonly NotedReading[] | null;
  /** A place in it has no reading */
  readonly isPartly?: boolean;
}

/** Readings by the antenna that stands before them in their line, "Loop: 80m 1.4, 40m 1.2"; null where not each line has one. */
export function groupsOf(notes: readonly NoteLine[]): readonly NoteGroup[] | null {
  const noted = notes.filter(({ readings }) => readings !== null);
  const named = noted.map((note) => ({ ...note, name: BEFORE_COLON.exec(note.text)?.[1]?.trim() ?? "" }));
  const isName = (name: string) => name !== "" && roleFromHeader(name).quantity === "other";
  if (!named.every(({ name, readings }) => isName(name) && (readings?.length ?? 0) > 1)) return null;
  const groups = [...grouped(named, ({ name }) => name)].map(([name, lines]) => ({
    name,
    readings: lines.flatMap(({ line, readings }) => (readings ?? []).map((reading) => ({ ...reading, line }))),
  }));
  return groups.length > 1 ? groups : null;
}

const BEFORE_COLON = /^\W*(\p{L}[^:;=\d]{0,40}):/u;
