import type { Model } from '../../../../model/model.ts';
import type { CaseNotice } from '../../../../session/caseNotice.ts';
import { sentencesForNotices as inLanguage } from '../../../sentences/sentencesForNotices.ts';
import { german } from '../german.ts';

/** What a reader should know of a case that was opened: a model that differs, entries without a place. */
export function sentencesForNotices(model: Model, notices: readonly CaseNotice[]): readonly string[] {
  return inLanguage(model, notices, german);
}
