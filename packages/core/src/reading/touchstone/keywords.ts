import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { numberFromText } from "../text/scan-numbers.js";
import type { TouchstoneKeywords } from "./header.js";

/**
 * Collects the keywords of a version 2 file as the lines come in.
 *
 * Source: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (2024), pp. 4-12, 22-28. The order of
 * keywords is not enforced, and [End] may be missing, as it is in examples of the specification itself.
 */
export class KeywordReader {
  readonly result: TouchstoneKeywords = {
    version: null,
    ports: null,
    references: null,
    matrixFormat: "full",
    frequencies: null,
  };
  ended = false;
  readonly #file: string;
  readonly #findings: Finding[];
  #inInformation = false;
  /** Line of a [Reference] whose values may still go on in the next lines; 0 when none is open */
  #openReference = 0;

  constructor(file: string, findings: Finding[]) {
    this.#file = file;
    this.#findings = findings;
  }

  /** Whether a line of numbers can only be data. */
  get expectsData(): boolean {
    return !this.#inInformation && this.#openReference === 0 && !this.ended;
  }

  /** Whether the line lies within [Begin Information], whose contents no reader interprets. */
  skipsInformation(firstByte: number, content: () => string): boolean {
    if (!this.#inInformation) return false;
    if (firstByte === 0x5b && /^\[end information\]/i.test(content())) this.#inInformation = false;
    return true;
  }

  /** Takes a keyword line. @returns true where the network data end here (noise data or [End]) */
  take(content: string, line: number): boolean {
    // Two examples of the specification put a value inside the brackets: [Version 2.0].
    const match = /^\[\s*([a-z -]+?)\s*(?:([\d.]+)\s*)?\]\s*(.*)$/i.exec(content);
    if (match === null) throw this.#refuse(line, `${quote(content)} is no keyword`);
    const keyword = (match[1] as string).toLowerCase();
    const value = (match[2] ?? match[3] ?? "").trim();
    this.#openReference = 0;
    if (this.result.version === null && keyword !== "version" && !keyword.endsWith("information")) {
      throw this.#refuse(
        line,
        `the keyword ${quote(content)} in a file without [Version]`,
        "[Version] 2.0 as the first line",
      );
    }
    switch (keyword) {
      case "version":
        if (!/^2(\.\d+)?$/.test(value))
          throw this.#refuse(line, `version ${quote(value)} is not supported`, "2.0 or 2.1");
        this.result.version = value;
        return false;
      case "number of ports":
        this.result.ports = this.#wholeNumber(value, line);
        return false;
      case "number of frequencies":
        this.result.frequencies = this.#wholeNumber(value, line);
        return false;
      case "two-port data order":
      case "two-port order":
        if (!/^(12_21|21_12)$/.test(value)) throw this.#refuse(line, `port order ${quote(value)}`, "12_21 or 21_12");
        return false;
      case "matrix format":
        if (!/^(full|lower|upper)$/i.test(value))
          throw this.#refuse(line, `matrix format ${quote(value)}`, "Full, Lower or Upper");
        this.result.matrixFormat = value.toLowerCase() as "full" | "lower" | "upper";
        return false;
      case "reference":
        this.result.references = [];
        this.#openReference = line;
        if (value !== "") this.#addReferences(value, line);
        return false;
      case "mixed-mode order":
        throw new ReadError({
          code: "not-a-reflection-sweep",
          file: this.#file,
          line,
          found: "the file holds mixed-mode parameters",
          expected: "the reflection at a single port",
          remedy: "Export the single-ended parameters instead.",
        });
      case "begin information":
        this.#inInformation = true;
        return false;
      case "number of noise frequencies":
      case "network data":
      case "end information":
        return false;
      case "noise data":
        return true;
      case "end":
        this.ended = true;
        return false;
      default:
        this.#findings.push(finding("caution", "unknown-keyword", { text: quote(content) }, { line }));
        return false;
    }
  }

  /** Takes a line of numbers that belongs to an open [Reference]. */
  takesReference(content: () => string, line: number): boolean {
    if (this.#openReference === 0 || this.result.references === null) return false;
    const wanted = this.result.ports;
    if (wanted !== null && this.result.references.length >= wanted) {
      this.#openReference = 0;
      return false;
    }
    this.#addReferences(content(), line);
    return true;
  }

  /** Checks what only the whole header can tell. */
  finish(): void {
    const { version, ports } = this.result;
    if (version !== null && ports === null) {
      throw new ReadError({
        code: "bad-keyword",
        file: this.#file,
        found: "a version 2 file without [Number of Ports]",
        expected: "[Number of Ports] and a number",
      });
    }
  }

  #addReferences(text: string, line: number): void {
    for (const word of text.split(/\s+/)) {
      const value = numberFromText(word);
      if (!(value > 0))
        throw this.#refuse(line, `the reference ${quote(word)} is not usable`, "positive real numbers of ohms");
      this.result.references?.push(value);
    }
  }

  #wholeNumber(text: string, line: number): number {
    const value = numberFromText(text);
    if (!(Number.isInteger(value) && value > 0))
      throw this.#refuse(line, `${quote(text)} is no count`, "a whole number above 0");
    return value;
  }

  #refuse(line: number, found: string, expected?: string): ReadError {
    return new ReadError({
      code: "bad-keyword",
      file: this.#file,
      line,
      found,
      ...(expected === undefined ? {} : { expected }),
    });
  }
}
