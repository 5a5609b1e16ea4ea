import type { ReadingModel } from '../model/readingModel.ts';
import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { engineLimits } from '../reading/engineLimits.ts';
import type { Reading } from '../reading/reading.ts';

/** One number of a reading, as a form or a prompt asks for it. */
export interface ReadingField {
  /** JSON Pointer of the number in the reading: `parseReading` reports what is wrong with it there. */
  readonly path: string;
  /** What the number is. `suspect` and `partner`: misfires of the cylinder in question and of the one a part was swapped with. */
  readonly role:
    'value' | 'reference' | 'short' | 'long' | 'nominal' | 'temperature' | 'count' | 'suspect' | 'partner' | 'exposure';
  /** The cylinder that was measured or counted; absent where it is the suspect's alone. */
  readonly cylinder?: number;
  /** A count. */
  readonly isWhole: boolean;
  /** The reading is complete without it. */
  readonly isOptional: boolean;
}

/** Numbers that are read at one time. */
export interface ReadingFieldGroup {
  /** Where there are two groups: before or after a part was swapped or replaced. */
  readonly when?: 'before' | 'after';
  readonly fields: readonly ReadingField[];
}

const cylindersSchema = z.strictObject({ cylinders: optionSchemas.whole(0, engineLimits.most) });

/** The numbers a reading of one kind is made of, in the order in which they are entered; see `readingOfEntries`.
 * @param cylinders of the engine, for the kinds that read or count every cylinder. @throws OptionError more than an engine has
 * @example
 * ```ts
 * const [group] = readingFields(compressionReading, 'per-cylinder', 2);
 * group?.fields.map(({ path }) => path) // ['/values/1', '/values/2', '/nominal']
 * ``` */
export function readingFields(model: ReadingModel, kind: Reading['kind'], cylinders = 0): readonly ReadingFieldGroup[] {
  checkOptions(cylindersSchema, { cylinders });
  const ofEach = (path: string, role: ReadingField['role'], more: Partial<ReadingField> = {}): ReadingField[] =>
    Array.from({ length: cylinders }, (_, at) => field(`${path}/${at + 1}`, role, { cylinder: at + 1, ...more }));
  switch (kind) {
    case 'single':
      return [{ fields: [field('/value', 'value')] }];
    case 'pair':
      return [{ fields: [field('/value', 'value'), field('/reference', 'reference')] }];
    case 'trim':
      return [{ fields: [field('/short', 'short'), field('/long', 'long')] }];
    case 'per-cylinder': {
      const isResistance = model.kind === 'measured' && model.measures === 'resistance';
      const temperatures = ofEach('/temperatures/values', 'temperature', { isOptional: true });
      const nominal = field('/nominal', 'nominal', { isOptional: true });
      return [{ fields: [...ofEach('/values', 'value'), nominal, ...(isResistance ? temperatures : [])] }];
    }
    case 'counts': {
      const exposure = field('/exposure/amount', 'exposure', { isOptional: true });
      return [{ fields: [...ofEach('/counts', 'count', { isWhole: true }), exposure] }];
    }
    case 'part-counts': {
      const isSwap = model.kind === 'part-counts' && model.outcomes.follows !== undefined;
      return (['before', 'after'] as const).map((when) => ({
        when,
        fields: [
          field(`/${when}/suspect`, 'suspect', { isWhole: true }),
          ...(isSwap ? [field(`/${when}/partner`, 'partner', { isWhole: true })] : []),
          field(`/${when}/exposure/amount`, 'exposure'),
        ],
      }));
    }
  }
}

function field(path: string, role: ReadingField['role'], more: Partial<ReadingField> = {}): ReadingField {
  return { path, role, isWhole: false, isOptional: false, ...more };
}
