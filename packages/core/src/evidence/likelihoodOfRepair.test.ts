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

test('what a repair does not cure goes all the same with the chance that the model gives', () => {
  const { model } = compiled;
  const at = model.repairs.findIndex(({ id }) => id === 'fit-fuse');
  const fuse = compiled.causeIndex.get('fuse-blown')!;
  const hose = compiled.causeIndex.get('hose-leak')!;
  const goes = (gone: number): readonly number[] => {
    const other = compileModel({ ...model, goneWithoutCure: { ...model.goneWithoutCure, best: gone } });
    const [went, stayed] = [likelihoodOfRepair(other, at, true).values, likelihoodOfRepair(other, at, false).values];
    return [went[hose]!, stayed[hose]!, went[fuse]!];
  };
  const cures = model.repairs[at]!.cures['fuse-blown']!.best;
  expect(goes(0.035)).toEqual([0.035, 0.965, cures]);
  expect(goes(0.2)).toEqual([0.2, 0.8, cures]);
});
