import { demand } from "./argument.js";

/** What a file holds: its bytes in any array or buffer of bytes, or its text. A text is the content itself, not a file's name. */
export type FileContent = Uint8Array | ArrayBuffer | string;

/**
 * The bytes of a file's content. An array of bytes is taken as it is, without a copy; a text becomes UTF-8.
 *
 * @param name the argument, for the message
 * @throws TypeError for anything else
 */
export function bytesOf(content: FileContent, name: string): Uint8Array {
  if (typeof content === "string") return new TextEncoder().encode(content);
  // By its tag, since a buffer may come from another realm (a frame, a sandbox).
  if (Object.prototype.toString.call(content) === "[object ArrayBuffer]") return new Uint8Array(content);
  demand(ArrayBuffer.isView(content), name, "the bytes of a file (Uint8Array or ArrayBuffer) or its text", content);
  return content as Uint8Array;
}
