import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { problemFor } from '../validation/problemFor.ts';
import { ModelError } from '../errors/modelError.ts';
import { recompileModel } from './compileModel.ts';
import type { CompiledModel } from './compiledModel.ts';
import { isProbabilityAt } from '../model/isProbabilityAt.ts';
import type { Model } from '../model/model.ts';
import { numberAt } from '../model/numberAt.ts';
import { keysOfPointer } from '../errors/jsonPointer.ts';

const argumentsSchema = z.strictObject({ path: z.string(), value: z.any() });

/** The model with one number changed, ready for questions: what if this estimate were wrong? A probability of a row takes the others
 * of its row with it in proportion, so that the row still sums to one.
 * @param path JSON Pointer of a `best` estimate or of a probability of a row, as `leaderSensitivity` reports them.
 * @throws ModelError `number-unknown` when nothing changeable stands there, `number-out-of-range` for a probability of a row outside
 * (0, 1), another probability outside [0, 1], or an estimate below 0 or beyond any @throws OptionError when the path is no text
 * @example
 * ```ts
 * const commoner = changeNumber(pump, '/causes/0/weight/best', 1000);
 * rankCauses(commoner, { context: {}, observations: [] }).ranking[0]; // { cause: 'fuse-blown', probability: 0.625, prior: 0.625 }
 * ``` */
export function changeNumber(compiled: CompiledModel, path: string, value: number): CompiledModel {
  checkOptions(argumentsSchema, { path, value });
  const keys = keysOfPointer(path);
  const last = keys.at(-1) ?? '';
  const inRow = keys.at(-2) === 'p';
  const found = numberAt(compiled.model, path);
  if (found === undefined || !(inRow || last === 'best')) {
    throw new ModelError([problemFor('number-unknown', path, {})]);
  }
  const most = isProbabilityAt(path) ? 1 : LARGEST_NUMBER;
  if (typeof value !== 'number' || (inRow ? !(value > 0 && value < 1) : !(value >= 0 && value <= most))) {
    const key = isProbabilityAt(path) ? 'number-out-of-range/probability' : 'number-out-of-range/estimate';
    throw new ModelError([problemFor(key, path, { value })]);
  }
  const changed = replaceAt(compiled.model, inRow ? keys.slice(0, -1) : keys, (old) => {
    if (!inRow) return value;
    const row = old as Readonly<Record<string, number>>;
    const rest = (1 - value) / (1 - found);
    return Object.fromEntries(Object.entries(row).map(([state, p]) => [state, state === last ? value : p * rest]));
  });
  return recompileModel(compiled, changed as Model);
}

/** A copy along a path, everything beside it shared. */
function replaceAt(value: unknown, [key, ...rest]: readonly string[], change: (old: unknown) => unknown): unknown {
  if (key === undefined) return change(value);
  if (Array.isArray(value)) return value.map((item, at) => (String(at) === key ? replaceAt(item, rest, change) : item));
  const record = value as Readonly<Record<string, unknown>>;
  return { ...record, [key]: replaceAt(record[key], rest, change) };
}
