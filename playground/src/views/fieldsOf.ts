import type { Reading, ReadingModel } from '@faultodds/core';
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
