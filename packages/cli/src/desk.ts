import type { Suspect } from './askSuspect.ts';

/** What is remembered while a case is worked on, beside the case itself: so that nothing is asked or typed twice. */
export interface Desk {
  suspect: Suspect | undefined;
  /** Offered when the suspect is asked for: what the readings on record name, or what was said before. */
  guess: Suspect | undefined;
  bank: 1 | 2 | undefined;
  /** Lines that were typed and not recorded, by the field they were typed in. */
  readonly typed: Map<string, string>;
}
