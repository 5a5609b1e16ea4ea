import type { Reading, ReadingModel } from '@faultodds/core';
import type { FieldGroup, Typed } from './fieldsOf.ts';

/** What was typed, as core takes it: unchecked. Empty fields are left out; a decimal comma is a decimal point. */
export function readingInput(
  model: ReadingModel,
  kind: Reading['kind'],
  typed: Typed,
  groups: readonly FieldGroup[],
  { unit, suspect, exposureUnit }: { readonly unit: string; readonly suspect: number; readonly exposureUnit: string },
): unknown {
  const input: Record<string, unknown> = { kind, measure: model.id };
  if (kind === 'per-cylinder' || kind === 'counts') input['suspect'] = suspect;
  if (kind === 'per-cylinder') input['values'] = {};
  if (kind === 'counts') input['counts'] = {};
  if (kind === 'part-counts') Object.assign(input, { before: { exposure: {} }, after: { exposure: {} } });
  if (unit !== '') input['unit'] = unit;
  for (const { fields, exposure } of groups) {
    for (const { path } of fields) {
      const text = (typed[path] ?? '').trim();
      if (text !== '') setAt(input, path, Number(text.replace(',', '.')));
    }
    const keys = exposure.split('/').slice(1);
    const holder = keys.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], input);
    if (exposure !== '' && typeof holder === 'object') setAt(input, `${exposure}/unit`, exposureUnit);
  }
  const temperatures = input['temperatures'];
  if (typeof temperatures === 'object') setAt(input, '/temperatures/unit', 'degC');
  return input;
}

function setAt(input: Record<string, unknown>, path: string, value: unknown): void {
  const keys = path.split('/').slice(1);
  const last = keys.pop() ?? '';
  let at = input;
  for (const key of keys) at = (at[key] ??= {}) as Record<string, unknown>;
  at[last] = value;
}
