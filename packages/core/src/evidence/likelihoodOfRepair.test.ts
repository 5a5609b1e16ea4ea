import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { likelihoodOfRepair } from './likelihoodOfRepair.ts';

const compiled = compileModel(parseModel(pumpModel()));

test('the same attempt at the same repair is the same object, so that a sweep knows it again', () => {
  expect(likelihoodOfRepair(compiled, 0, false)).toBe(likelihoodOfRepair(compiled, 0, false));
  expect(likelihoodOfRepair(compiled, 0, true).values).not.toEqual(likelihoodOfRepair(compiled, 0, false).values);
  expect(likelihoodOfRepair(compileModel(parseModel(pumpModel())), 0, false)).not.toBe(
    likelihoodOfRepair(compiled, 0, false),
  );
});
