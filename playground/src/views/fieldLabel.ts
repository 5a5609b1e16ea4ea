import type { ReadingField, ReadingFieldGroup } from '@faultodds/core/readings';
import { t } from '../words/t.ts';

/** What stands beside the number of a reading. */
export function fieldLabel({ role, cylinder }: ReadingField): string {
  const words = t.entry.field;
  switch (role) {
    case 'value':
      return cylinder === undefined ? words.value : t.entry.engine.short(cylinder);
    case 'count':
      return t.entry.engine.short(cylinder ?? 0);
    case 'temperature':
      return words.temperature(cylinder ?? 0);
    default:
      return words[role];
  }
}

/** The heading of numbers that are read at one time; '' where there is one group. */
export function groupHeading({ when }: ReadingFieldGroup): string {
  return when === undefined ? '' : t.entry.field[when];
}
