import type { Model } from '../../model/model.ts';
import type { ReadingRemark } from '../../reading/readingLikelihood.ts';
import type { Language } from '../languages/language.ts';
import { nameOf } from './nameOf.ts';

/** What a reader of a reading should know about its numbers. @param test id of its test.
 * @example
 * ```ts
 * const said = describeReadingRemark(model, 'cranking-compression', { kind: 'set-aside', cylinders: ['2'] }, english);
 * said // 'Left out of the comparison, because far above the others or 0: cylinder 2.'
 * ``` */
export function describeReadingRemark(
  { tests }: Model,
  test: string,
  remark: ReadingRemark,
  language: Language,
): string {
  const words = language.remarkWords.reading;
  switch (remark.kind) {
    case 'set-aside':
      return words.setAside(remark.cylinders.join(', '));
    case 'beyond-range': {
      if (remark.outcome === undefined) return words.beyondModel;
      const outcomes = tests.find(({ id }) => id === test)?.outcomes ?? [];
      return words.beyondRange(nameOf(outcomes, remark.outcome, language));
    }
    case 'elsewhere':
      return words.elsewhere;
    case 'exposure-unknown':
      return words.exposureUnknown;
  }
}
