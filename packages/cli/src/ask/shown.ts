import type { Reading } from '@faultodds/core';

/** What a test showed: an outcome, how strongly it speaks for each, or numbers, perhaps with an outcome beside them. */
export interface Shown {
  readonly outcome?: string;
  readonly likelihood?: Readonly<Record<string, number>>;
  readonly reading?: Reading;
}
