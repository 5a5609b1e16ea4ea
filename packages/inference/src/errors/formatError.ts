import { InferenceError, type InferenceProblem } from './inferenceError.ts';

/** Thrown when text is not in the format it should be. Codes: `bif-syntax`, `bif-meaning`, `json-syntax`, `network-json`.
 * `line` and `column` count from 1, in UTF-16 units. */
export class FormatError extends InferenceError {
  readonly line: number;
  readonly column: number;

  constructor(
    code: string,
    message: string,
    hint: string,
    text: string,
    offset: number,
    more: readonly InferenceProblem[] = [],
  ) {
    const before = text.slice(0, offset);
    const line = before.split('\n').length;
    const column = offset - before.lastIndexOf('\n');
    super('FormatError', [{ code, path: '', message: `line ${line}, column ${column}: ${message}`, hint }, ...more]);
    this.line = line;
    this.column = column;
  }
}
