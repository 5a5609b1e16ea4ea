import type { CodeMeaning } from '../../codes/describeTroubleCode.ts';
import type { Language } from '../languages/language.ts';

/** What a trouble code is about, in a phrase: "misfire of cylinder 3".
 * @example describeCodeMeaning({ kind: 'misfire', cylinder: 3 }, english) // 'misfire of cylinder 3' */
export function describeCodeMeaning(meaning: CodeMeaning, { codeWords }: Language): string {
  switch (meaning.kind) {
    case 'misfire':
      return codeWords.misfire(meaning.cylinder);
    case 'coil-circuit':
      return codeWords.coilCircuit(meaning.coil);
    case 'injector-circuit':
      return codeWords.injectorCircuit(meaning.cylinder);
    case 'mixture':
      return meaning.direction === 'lean' ? codeWords.lean(meaning.bank) : codeWords.rich(meaning.bank);
    case 'cam':
      return codeWords.cam(meaning.bank);
    case 'circumstance':
      return codeWords.circumstance(meaning.circumstance);
    case 'other':
      return codeWords.standardClass(meaning.standardClass);
  }
}
