/** What the reader looks at in the pictures: one column, one cause. */
export interface Focus {
  /** The column pointed at, else the one chosen, else null (the latest). */
  readonly column: string | null;
  /** The cause chosen, or null (the leading one). */
  readonly cause: string | null;
  /** Points at a column (pinned: false), chooses it (true), or leaves (null; pinned: true forgets the choice as well). */
  toColumn(id: string | null, pinned: boolean): void;
  toCause(cause: string | null): void;
}

/** Starts with nothing chosen. */
export function createFocus(): Focus {
  let pointed = $state<string | null>(null);
  let chosen = $state<string | null>(null);
  let cause = $state<string | null>(null);
  return {
    get column() {
      return pointed ?? chosen;
    },
    get cause() {
      return cause;
    },
    toColumn(id, pinned) {
      if (pinned) chosen = id === chosen ? null : id;
      pointed = id;
    },
    toCause(next) {
      cause = next;
    },
  };
}
