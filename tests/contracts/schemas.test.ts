import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compileModel, loadCase, parseModel } from '@faultodds/core';
import { caseJsonSchema, modelJsonSchema, modelPartJsonSchema } from '@faultodds/core/schema';
import { demoCases, misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { filesUnder, root } from '../fixtures/filesUnder.ts';
import { acceptsJson } from './acceptsJson.ts';

const read = (path: string): Record<string, unknown> =>
  JSON.parse(readFileSync(join(root, path), 'utf8')) as Record<string, unknown>;

test.each([
  ['model', modelJsonSchema],
  ['model-part', modelPartJsonSchema],
  ['case', caseJsonSchema],
] as const)('the %s schema beside the data is the one core makes now (else: npm run build)', (name, make) => {
  expect(read(`priors/schema/${name}.schema.json`)).toEqual(JSON.parse(JSON.stringify(make())));
});

test('the assembled model and every demo case parse', () => {
  const compiled = compileModel(parseModel(misfire));
  expect(demoCases.length).toBeGreaterThan(0);
  for (const demo of demoCases) expect(loadCase(compiled, demo).notices).toEqual([]);
});

const parts = filesUnder('priors/data/model', '.json');
const cases = filesUnder('priors/data/cases', '.json');

test('the data is there', () => {
  expect(parts.length).toBeGreaterThan(20);
  expect(cases.length).toBe(demoCases.length);
});

test.each([...parts, ...cases])('%s names its schema and fits it', (path) => {
  const data = read(path);
  const named = join(path, '..', String(data['$schema']));
  expect(named).toBe(join('priors/schema', path.includes('cases') ? 'case.schema.json' : 'model-part.schema.json'));
  expect(acceptsJson(read(named), data)).toEqual([]);
});

test('the schemas refuse what does not fit', () => {
  const schema = read('priors/schema/model-part.schema.json');
  const source = { id: 'a', kind: 'judgement', text: 'b' };
  expect(acceptsJson(schema, { sources: [source] })).toEqual([]);
  expect(acceptsJson(schema, { sources: [{ ...source, kind: 'rumour' }] })).not.toEqual([]);
  expect(acceptsJson(schema, { sources: [{ ...source, more: 1 }] })).not.toEqual([]);
  expect(acceptsJson(schema, { sources: [{ ...source, id: 'Not An Id' }] })).not.toEqual([]);
  expect(acceptsJson(schema, { sorces: [] })).not.toEqual([]);
  expect(acceptsJson(read('priors/schema/case.schema.json'), { format: 'faultodds-case', version: 3 })).not.toEqual([]);
});
