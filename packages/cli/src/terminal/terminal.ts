/** Where a command writes, and what may be written there. */
export interface Terminal {
  /** Standard output. */
  readonly write: (text: string) => void;
  /** Standard error. */
  readonly warn: (text: string) => void;
  /** Columns to fold sentences at; Infinity when nobody looks (a pipe, a file), so that lines can be searched. */
  readonly width: number;
  readonly colour: boolean;
  /** Whether characters beyond ASCII can be shown. */
  readonly unicode: boolean;
  /** Whether a person can answer. */
  readonly interactive: boolean;
}
