import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import type { Model } from './model.ts';
import { modelIdentity } from './modelIdentity.ts';
import { parseModel } from './parseModel.ts';

test('a model is told by its id, its content version, 1 unless stated, and its hash', () => {
  const model = parseModel(pumpModel());
  expect(modelIdentity(model)).toEqual({ id: 'pump', version: 1, hash: expect.stringMatching(/^[0-9a-f]{16}$/) });
  expect(modelIdentity({ ...model, contentVersion: 7 }).version).toBe(7);
});

test('the hash depends on no order of keys and no parsing, and on every number and word', () => {
  const turned = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(turned);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .reverse()
        .map(([key, one]) => [key, turned(one)]),
    );
  };
  const { hash } = modelIdentity(parseModel(misfire));
  expect(modelIdentity(misfire as Model).hash).toBe(hash);
  expect(modelIdentity(turned(misfire) as Model).hash).toBe(hash);
  const model = parseModel(misfire);
  const { labourPerHour } = model;
  expect(
    modelIdentity({ ...model, labourPerHour: { ...labourPerHour, best: labourPerHour.best + 1e-9 } }).hash,
  ).not.toBe(hash);
  expect(modelIdentity({ ...model, title: `${model.title} ` }).hash).not.toBe(hash);
});
