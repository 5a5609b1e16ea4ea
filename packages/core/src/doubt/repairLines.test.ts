import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { changeNumber } from '../compiled/changeNumber.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Facts, Context } from '../evidence/facts.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { parseModel } from '../model/parseModel.ts';
import { repairLines } from './repairLines.ts';

const pump = pumpModel();
const compiled = compileModel(parseModel(pump));
const look = results(['vacuum', 'weak']);
const tried = (...attempts: readonly (readonly [repair: string, cured: boolean])[]): Facts => ({
  context: {} as Context,
  observations: [
    ...look,
    ...attempts.map(([repair, cured], at) => ({ kind: 'repair-tried' as const, id: `x${at}`, repair, cured })),
  ],
});
const pathsOf = (facts: Facts, of = compiled): readonly string[] => repairLines(of, facts).map(({ path }) => path);

/** Every line against the ranking recomputed with the number changed. */
function expectExact(of: CompiledModel, facts: Facts): void {
  const lines = repairLines(of, facts);
  expect(lines.length).toBeGreaterThan(0);
  for (const { path, value, constants, slopes } of lines) {
    for (const x of [value, 0.9 * value, 0.3]) {
      const joint = constants.map((constant, c) => constant + slopes[c]! * x);
      const sum = joint.reduce((a, b) => a + b, 0);
      const { posterior } = rankCauses(changeNumber(of, path, x), facts);
      of.causes.forEach((cause, c) =>
        expect(joint[c]! / sum, `${path} at ${x}: ${cause}`).toBeCloseTo(posterior[cause]!, 12),
      );
    }
    // at the present value they are the ranking itself
    expect(constants.reduce((all, constant, c) => all + constant + slopes[c]! * value, 0)).toBeCloseTo(1, 12);
  }
}

test('lines of a repair that failed, or cured, are what recomputing gives', () => {
  for (const cured of [true, false]) {
    const facts = tried(['fit-fuse', cured]);
    expectExact(compiled, facts);
    expect(pathsOf(facts)).toEqual(['/repairs/0/cures/fuse-blown/best', '/goneWithoutCure/best']);
  }
});

test('after several repairs each keeps its chance of success; the fault that goes by itself is no line any more', () => {
  const facts = tried(['fit-fuse', false], ['change-hose', true]);
  expectExact(compiled, facts);
  expect(pathsOf(facts)).toHaveLength(2);
  expect(pathsOf(facts)).not.toContain('/goneWithoutCure/best');
  expect(pathsOf(tried(['fit-fuse', false], ['fit-fuse', false]))).toEqual([]);
});

test('a repair that was sure to cure, and failed, has lines too', () => {
  const sure = {
    ...pump,
    repairs: pump.repairs.map((one) =>
      one.id === 'fit-fuse'
        ? { ...one, cures: { 'fuse-blown': { ...one.cures['fuse-blown']!, best: 1, high: 1 } } }
        : one,
    ),
  };
  const facts = tried(['fit-fuse', false]);
  expectExact(compileModel(sure), facts);
});

test('two causes at once: a repair that cures one of them alone leaves the chance of the other as it is', () => {
  const share = { best: 0.1, low: 0.05, high: 0.2, ess: 5, source: 'judgement' };
  const both = { ...pump.repairs[0]!, cures: { ...pump.repairs[0]!.cures, clogged: share } };
  const pairs = compileModel(
    { ...pump, twoCauseShare: share, repairs: [both, ...pump.repairs.slice(1)] },
    { atMost: 2 },
  );
  for (const cured of [true, false]) expectExact(pairs, tried(['fit-fuse', cured]));
});

test('a repair that asks the question of a test is a run of that test, and no attempt', () => {
  const asking = {
    ...pump,
    repairs: pump.repairs.map((one) =>
      one.id === 'fit-fuse' ? { ...one, sameAs: { test: 'fuse-look', cured: 'blown', notCured: 'whole' } } : one,
    ),
  };
  expect(pathsOf(tried(['fit-fuse', false]), compileModel(parseModel(asking)))).toEqual([]);
});
