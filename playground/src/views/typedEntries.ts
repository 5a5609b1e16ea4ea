import type { ReadingFieldGroup } from '@faultodds/core/readings';

/** Everything typed in so far: text by path of its field. */
export type Typed = Readonly<Record<string, string>>;

/** What was typed, as `readingOfEntries` takes it: unchecked. Empty fields are left out; a decimal comma is a decimal point.
 * @param suspect 0 where no cylinder is told from the others. */
export function typedEntries(
  typed: Typed,
  groups: readonly ReadingFieldGroup[],
  { unit, suspect, exposureUnit }: { readonly unit: string; readonly suspect: number; readonly exposureUnit: string },
): Record<string, number | string> {
  const entries: Record<string, number | string> = {};
  if (suspect > 0) entries['/suspect'] = suspect;
  if (unit !== '') entries['/unit'] = unit;
  for (const { path, role, isOptional } of groups.flatMap(({ fields }) => fields)) {
    const text = (typed[path] ?? '').trim();
    if (text !== '') entries[path] = Number(text.replace(',', '.'));
    if (role === 'exposure' && (text !== '' || !isOptional)) entries[path.replace(/amount$/, 'unit')] = exposureUnit;
    if (role === 'temperature' && text !== '') entries['/temperatures/unit'] = 'degC';
  }
  return entries;
}
