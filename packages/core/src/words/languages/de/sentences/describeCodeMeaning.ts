import type { CodeMeaning } from '../../../../codes/describeTroubleCode.ts';
import { describeCodeMeaning as inLanguage } from '../../../sentences/describeCodeMeaning.ts';
import { german } from '../german.ts';

/** What a trouble code is about, in a phrase: "Aussetzer, Zylinder 3". */
export function describeCodeMeaning(meaning: CodeMeaning): string {
  return inLanguage(meaning, german);
}
