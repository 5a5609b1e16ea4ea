import type { LanguageCode } from '../../model/localText.ts';
import type { Money } from '../../cost/money.ts';
import type { codeWords } from './en/codeWords.ts';
import type { messages } from './en/messages.ts';
import type { numberWords } from './en/numberWords.ts';
import type { planWords } from './en/planWords.ts';
import type { remarkWords } from './en/remarkWords.ts';
import type { problems } from './en/problems/problems.ts';

/** Everything a language brings: its sentences by key, and how numbers are written in it. The sentence makers decide what to say, the
 * language how. */
export interface Language {
  /** Of texts of the model that exist in several languages. */
  readonly code: LanguageCode;
  /** The keys of English; a missing one does not compile. */
  readonly messages: { readonly [Key in keyof typeof messages]: (typeof messages)[Key] };
  /** What trouble codes are about. */
  readonly codeWords: typeof codeWords;
  /** What the numbers of a model are. */
  readonly numberWords: typeof numberWords;
  /** Remarks on what was entered. */
  readonly remarkWords: Widened<typeof remarkWords>;
  /** When not to drive on. */
  readonly stopAndTow: string;
  /** Whose procedure comes first. */
  readonly usualCaution: string;
  /** Words of a written plan. */
  readonly planWords: Widened<typeof planWords>;
  /** What can be wrong, by the keys of English. */
  readonly problems: typeof problems;
  /** A number as it was read, all its digits. */
  readonly formatNumber: (value: number) => string;
  readonly formatMinutes: (minutes: number) => string;
  readonly formatMoney: (money: Money) => string;
  readonly formatProbability: (probability: number) => string;
  readonly formatTimes: (ratio: number) => string;
}

/** The same keys with any text under them. */
type Widened<Words> = {
  readonly [Key in keyof Words]: Words[Key] extends string
    ? string
    : Words[Key] extends (...parts: never[]) => string
      ? Words[Key]
      : Widened<Words[Key]>;
};
