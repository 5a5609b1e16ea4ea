import { dimensionOfEntry, kindsOf, type Reading, type ReadingModel, unitsOf } from '@faultodds/core';
import { t } from '../words/t.ts';

/** A number to type in. */
export interface ReadingField {
  /** JSON Pointer of the number in the reading: what core says about it is shown here. */
  readonly path: string;
  readonly label: string;
  /** Stands apart and may stay empty. */
  readonly extra: boolean;
  readonly whole: boolean;
  readonly suspect: boolean;
}

/** Fields that belong together, with a heading where there are several groups. */
export interface FieldGroup {
  readonly heading: string;
  readonly fields: readonly ReadingField[];
  /** Path of the exposure whose unit is chosen here; '' for none. */
  readonly exposure: string;
}

/** Everything typed in so far: text by path. */
export type Typed = Readonly<Record<string, string>>;

/** The numbers one way of noting a reading takes. */
export function fieldsOf(
  model: ReadingModel,
  kind: Reading['kind'],
  cylinders: number,
  suspect: number,
): readonly FieldGroup[] {
  const words = t.entry.field;
  const field = (path: string, label: string, more: Partial<ReadingField> = {}): ReadingField => ({
    path,
    label,
    extra: false,
    whole: false,
    suspect: false,
    ...more,
  });
  const each = (path: string, more: Partial<ReadingField> = {}): ReadingField[] =>
    Array.from({ length: cylinders }, (_, at) =>
      field(`${path}/${at + 1}`, t.entry.engine.short(at + 1), { suspect: at + 1 === suspect, ...more }),
    );
  const group = (fields: readonly ReadingField[], heading = '', exposure = ''): FieldGroup => ({
    heading,
    fields,
    exposure,
  });
  switch (kind) {
    case 'single':
      return [group([field('/value', words.value)])];
    case 'pair':
      return [group([field('/value', words.value), field('/reference', words.reference)])];
    case 'trim':
      return [group([field('/short', words.short), field('/long', words.long)])];
    case 'per-cylinder': {
      const warm = model.kind === 'measured' && model.measures === 'resistance';
      const temperatures = each('/temperatures/values', { extra: true, suspect: false }).map((one, at) => ({
        ...one,
        label: words.temperature(at + 1),
      }));
      return [
        group([...each('/values'), field('/nominal', words.nominal, { extra: true }), ...(warm ? temperatures : [])]),
      ];
    }
    case 'counts':
      return [
        group([...each('/counts', { whole: true }), field('/exposure/amount', t.entry.counted)], '', '/exposure'),
      ];
    case 'part-counts': {
      const swapped = model.kind === 'part-counts' && model.outcomes.follows !== undefined;
      return (['before', 'after'] as const).map((when) =>
        group(
          [
            field(`/${when}/suspect`, words.own, { whole: true, suspect: true }),
            ...(swapped ? [field(`/${when}/partner`, words.partner, { whole: true })] : []),
            field(`/${when}/exposure/amount`, words.exposure),
          ],
          words[when],
          `/${when}/exposure`,
        ),
      );
    }
  }
}

/** The units a number may be typed in, the usual one of the workshop first; none where it has none. */
export function unitChoices(model: ReadingModel, kind: Reading['kind']): readonly string[] {
  if (model.kind !== 'measured' || kind === 'trim' || kind === 'counts' || kind === 'part-counts') return [];
  return unitsOf(dimensionOfEntry(model, kind)).map(({ symbol }) => symbol);
}

/** The ways a reading may be noted. */
export function kindChoices(model: ReadingModel): readonly Reading['kind'][] {
  return kindsOf(model);
}

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
