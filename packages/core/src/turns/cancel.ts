/** Stops a computation early; an `AbortSignal` is one. */
export interface Cancel {
  readonly aborted: boolean;
}
