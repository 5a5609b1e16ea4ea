import { describe, expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { kindsOf } from '../reading/kindsOf.ts';
import { parseReading } from '../reading/parseReading.ts';
import { readingFields } from './readingFields.ts';
import { readingOfEntries } from './readingOfEntries.ts';
import { unitsOfEntry } from './unitsOfEntry.ts';

const compiled = compileModel(parseModel(misfire));
const ways = compiled.model.tests.flatMap(({ id, readings = [] }) =>
  readings.flatMap((model) => kindsOf(model).map((kind) => ({ id, model, kind, name: `${id} ${model.id} ${kind}` }))),
);
const pathsOf = (model: (typeof ways)[number]['model'], kind: (typeof ways)[number]['kind']): readonly string[] =>
  readingFields(model, kind, 4).flatMap(({ fields }) => fields.map(({ path }) => path));

describe('every reading of the misfire model', () => {
  test('is looked at', () => expect(ways.length).toBeGreaterThan(20));

  test.each(ways)('$name has every number that its schema asks for among its fields', ({ id, model, kind }) => {
    const engine = { cylinders: 4, suspect: 3 };
    const [unit] = unitsOfEntry(model, kind);
    const paths = pathsOf(model, kind);
    const entries: Record<string, number | string> = unit === undefined ? {} : { '/unit': unit };
    for (const path of paths) entries[path] = 0.5;
    for (const path of paths.filter((one) => one.endsWith('/amount')))
      entries[path.replace('/amount', '/unit')] = 'revolutions';
    if (paths.some((path) => path.startsWith('/temperatures'))) entries['/temperatures/unit'] = 'degC';
    try {
      parseReading(compiled, id, readingOfEntries(model, kind, entries), engine);
    } catch (error) {
      // values may be out of range; nothing may be missing, unknown or of the wrong shape
      const { problems } = error as { problems: readonly { code: string; path: string }[] };
      const missing = problems.filter(({ code }) => /missing|unknown|unexpected|required/.test(code));
      expect(missing).toEqual([]);
      for (const { path } of problems)
        expect([...paths, '', '/unit', '/values', '/counts', '/before', '/after', '/nominal']).toContain(path);
    }
  });
});

test('the cylinders are numbered, optional numbers marked, counts whole', () => {
  const measured = ways.find(({ kind, model }) => kind === 'per-cylinder' && 'measures' in model)!;
  const [values] = readingFields(measured.model, 'per-cylinder', 3);
  expect(values!.fields.filter(({ role }) => role === 'value').map(({ cylinder }) => cylinder)).toEqual([1, 2, 3]);
  expect(values!.fields.find(({ role }) => role === 'nominal')).toMatchObject({ isOptional: true, isWhole: false });
  const counted = ways.find(({ kind }) => kind === 'counts')!;
  const [counts] = readingFields(counted.model, 'counts', 2);
  expect(counts!.fields).toEqual([
    { path: '/counts/1', role: 'count', cylinder: 1, isWhole: true, isOptional: false },
    { path: '/counts/2', role: 'count', cylinder: 2, isWhole: true, isOptional: false },
    { path: '/exposure/amount', role: 'exposure', isWhole: false, isOptional: true },
  ]);
});

test('what was entered stands where its path says, and no path reaches beyond the reading', () => {
  const { model } = ways.find(({ kind }) => kind === 'part-counts')!;
  expect(readingOfEntries(model, 'part-counts', { '/before/suspect': 12, '/after/exposure/amount': 3000 })).toEqual({
    kind: 'part-counts',
    measure: model.id,
    before: { suspect: 12, exposure: {} },
    after: { exposure: { amount: 3000 } },
  });
  readingOfEntries(model, 'single', { '/__proto__/polluted': 1 });
  expect({}).not.toHaveProperty('polluted');
});
