import type { Money } from '../decision/cost/money.ts';
import type { messages } from './en/messages.ts';

/** Everything a language brings: its sentences by key, and how numbers are written in it. The sentence makers decide what to say, the
 * language how. */
export interface Language {
  /** The keys of English; a missing one does not compile. */
  readonly messages: { readonly [Key in keyof typeof messages]: (typeof messages)[Key] };
  /** A number as it was read, all its digits. */
  readonly formatNumber: (value: number) => string;
  readonly formatMinutes: (minutes: number) => string;
  readonly formatMoney: (money: Money) => string;
  readonly formatProbability: (probability: number) => string;
  readonly formatTimes: (ratio: number) => string;
}
