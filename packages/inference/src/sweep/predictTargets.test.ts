import { describe, expect, test } from 'vitest';
import { defineNetwork } from '../network/defineNetwork.ts';
import { compileSweep } from './compileSweep.ts';
import { predictTargets } from './predictTargets.ts';
import { readLikelihood, readTarget } from './readSweepFactor.ts';
import type { CompiledSweep, LikelihoodFactor, TargetTable } from './sweep.ts';
import { takeFactor } from './takeFactor.ts';

/** A sweep after likelihoods, ready to be asked. */
function after(sweep: CompiledSweep, likelihoods: readonly LikelihoodFactor[]) {
  let state = sweep.start;
  for (const likelihood of likelihoods) state = takeFactor(sweep, state, readLikelihood(sweep, likelihood, ''));
  const ask = (...targets: readonly TargetTable[]): Float64Array[] =>
    predictTargets(
      sweep,
      state,
      targets.map((target) => readTarget(sweep, target, '')),
    );
  return { ask, state };
}

function expectClose(found: ArrayLike<number>, expected: readonly number[]): void {
  expect(found.length).toBe(expected.length);
  expected.forEach((value, k) => expect(found[k], `entry ${k}`).toBeCloseTo(value, 13));
}

const cause = { name: 'cause', states: ['a', 'b', 'c'], table: [0.5, 0.3, 0.2] };
/** P(x | cause): the first two causes agree. y depends on x, w on nothing. */
const small = () =>
  compileSweep(
    defineNetwork({
      variables: [
        cause,
        { name: 'x', states: ['0', '1'], parents: ['cause'], table: [0.9, 0.1, 0.9, 0.1, 0.4, 0.6] },
        { name: 'y', states: ['0', '1'], parents: ['x'], table: [0.7, 0.3, 0.2, 0.8] },
        { name: 'w', states: ['0', '1', '2'], table: [0.5, 0.3, 0.2] },
        { name: 'v', states: ['0', '1'], parents: ['cause'], table: [0.5, 0.5, 0.2, 0.8, 0.5, 0.5] },
      ],
    }),
    { root: 'cause' },
  );
const likelihood = (variables: readonly string[], ...values: readonly number[]): LikelihoodFactor => ({
  variables,
  values: Float64Array.from(values),
});
const target = (id: string, parents: readonly string[], states: number, table: readonly number[]): TargetTable => ({
  id,
  parents,
  states,
  table: Float64Array.from(table),
});
const ofX = target('of-x', ['x'], 2, [1, 0, 0.5, 0.5]);
const ofY = target('of-y', ['y'], 3, [0.2, 0.3, 0.5, 0, 1, 0]);

describe('P(child | root)', () => {
  test('before anything is known sums the parents’ states out', () => {
    // child 0: 0.9 + 0.1 / 2; 0.4 + 0.6 / 2
    const [found] = after(small(), []).ask(ofX);
    expectClose(found!, [0.95, 0.05, 0.95, 0.05, 0.7, 0.3]);
  });

  test('of a child whose parent nobody asked about goes through that parent’s own', () => {
    // y is 0 with 0.65 and 0.4
    const [found] = after(small(), []).ask(ofY);
    const row = (p: number): number[] => [0.2 * p, 0.3 * p + (1 - p), 0.5 * p];
    expectClose(found!, [...row(0.65), ...row(0.65), ...row(0.4)]);
  });

  test('follows what was observed', () => {
    // y seen as 1: x is 0 with 0.27 / 0.35 and 0.12 / 0.6
    const [found] = after(small(), [likelihood(['y'], 0, 1)]).ask(ofX);
    const row = (p: number): number[] => [p + (1 - p) / 2, (1 - p) / 2];
    expectClose(found!, [...row(27 / 35), ...row(27 / 35), ...row(0.2)]);
  });

  test('a target may depend on the root itself', () => {
    const own = target('own', ['cause', 'x'], 2, [1, 0, 0, 1, 0, 1, 1, 0, 0.5, 0.5, 0.5, 0.5]);
    const [found] = after(small(), []).ask(own);
    expectClose(found!, [0.9, 0.1, 0.1, 0.9, 0.5, 0.5]);
    const nothingElse = target('root-alone', ['cause'], 2, [0.1, 0.9, 0.2, 0.8, 0.3, 0.7]);
    expectClose(after(small(), [likelihood(['y'], 0, 1)]).ask(nothingElse)[0]!, [0.1, 0.9, 0.2, 0.8, 0.3, 0.7]);
  });

  test('parents in several components are summed out one after the other, in whatever order the target names them', () => {
    const p = { x: [0.9, 0.1, 0.9, 0.1, 0.4, 0.6], w: [0.5, 0.3, 0.2], v: [0.5, 0.5, 0.2, 0.8, 0.5, 0.5] };
    const entry = (x: number, w: number, v: number): number => (1 + 2 * x + w + 3 * v) / 10;
    const expected = [0, 1, 2].flatMap((r) => {
      let sum = 0;
      for (const x of [0, 1])
        for (const w of [0, 1, 2])
          for (const v of [0, 1]) sum += p.x[2 * r + x]! * p.w[w]! * p.v[2 * r + v]! * entry(x, w, v);
      return [sum, 1 - sum];
    });
    const forwards = target(
      'xwv',
      ['x', 'w', 'v'],
      2,
      [0, 1].flatMap((x) => [0, 1, 2].flatMap((w) => [0, 1].flatMap((v) => [entry(x, w, v), 1 - entry(x, w, v)]))),
    );
    const backwards = target(
      'vwx',
      ['v', 'w', 'x'],
      2,
      [0, 1].flatMap((v) => [0, 1, 2].flatMap((w) => [0, 1].flatMap((x) => [entry(x, w, v), 1 - entry(x, w, v)]))),
    );
    const mixed = target(
      'wvx',
      ['w', 'v', 'x'],
      2,
      [0, 1, 2].flatMap((w) => [0, 1].flatMap((v) => [0, 1].flatMap((x) => [entry(x, w, v), 1 - entry(x, w, v)]))),
    );
    const asked = after(small(), []);
    for (const found of asked.ask(forwards, backwards, mixed)) expectClose(found, expected);
    // and asked again
    for (const found of asked.ask(mixed, forwards)) expectClose(found, expected);
    // x and v tied together by what was seen: they were both 0 or both 1
    const tied = after(small(), [likelihood(['x', 'v'], 1, 0, 0, 1)]);
    const given = [0, 1, 2].flatMap((r) => {
      const both = [p.x[2 * r]! * p.v[2 * r]!, p.x[2 * r + 1]! * p.v[2 * r + 1]!];
      let sum = 0;
      for (const s of [0, 1])
        for (const w of [0, 1, 2]) sum += (both[s]! / (both[0]! + both[1]!)) * p.w[w]! * entry(s, w, s);
      return [sum, 1 - sum];
    });
    for (const found of tied.ask(backwards, mixed, forwards)) expectClose(found, given);
  });

  test('several targets at once are answered in their order', () => {
    const asked = after(small(), [likelihood(['y'], 0.5, 1)]);
    const [first, second] = asked.ask(ofY, ofX);
    expect(first).toEqual(after(small(), [likelihood(['y'], 0.5, 1)]).ask(ofY)[0]);
    expect(second).toEqual(after(small(), [likelihood(['y'], 0.5, 1)]).ask(ofX)[0]);
  });
});

describe('an answer', () => {
  test('is kept, and stays for what is observed elsewhere', () => {
    const sweep = small();
    const seen = likelihood(['y'], 0, 1);
    const [answer] = after(sweep, [seen]).ask(ofX);
    expect(after(sweep, [seen]).ask(ofX)[0]).toBe(answer);
    // w has nothing to do with it
    expect(after(sweep, [seen, likelihood(['w'], 1, 0, 0)]).ask(ofX)[0]).toBe(answer);
    // nor what is known of the root alone
    expect(after(sweep, [seen, likelihood(['cause'], 1, 0, 0)]).ask(ofX)[0]).toBe(answer);
    // x has
    expectClose(after(sweep, [seen, likelihood(['x'], 0, 1)]).ask(ofX)[0]!, [0.5, 0.5, 0.5, 0.5, 0.5, 0.5]);
  });

  test('and all that was derived for it is counted in numbers held', () => {
    const sweep = small();
    const asked = after(sweep, [likelihood(['y'], 0, 1)]);
    expect(sweep.cache.entries).toBe(0);
    asked.ask(ofX);
    // 3 * 2 of the answer, 2 classes * 2 states of the parent's distribution
    expect(sweep.cache.entries).toBe(6 + 4);
    asked.ask(ofX);
    expect(sweep.cache.entries).toBe(10);
  });
});

describe('a target over a whole chain of sixteen, whose joint distribution would be large', () => {
  const count = 16;
  const names = Array.from({ length: count }, (_, k) => `x${k}`);
  const sweep = compileSweep(
    defineNetwork({
      variables: [
        cause,
        ...names.map((name, k) => ({
          name,
          states: ['0', '1'],
          parents: [k === 0 ? 'cause' : names[k - 1]!],
          table: k === 0 ? [0.75, 0.25, 0.75, 0.25, 0.4, 0.6] : [0.9, 0.1, 0.1, 0.9],
        })),
      ],
    }),
    { root: 'cause' },
  );
  // yes when all are equal
  const table = new Float64Array(2 * 2 ** count);
  for (let u = 0; u < 2 ** count; u += 1) table[2 * u + (u === 0 || u === 2 ** count - 1 ? 0 : 1)] = 1;
  const allEqual: TargetTable = { id: 'all', parents: names, states: 2, table };
  const ends = target('ends', [names[0]!, names[count - 1]!], 2, [1, 0, 0, 1, 0, 1, 1, 0]);
  const like = (1 + 0.8 ** 15) / 2;

  test('is answered without it', () => {
    // the last weighs 1 to 0.5
    const asked = after(sweep, [likelihood([names[count - 1]!], 1, 0.5)]);
    const row = (p: number): number[] => {
      const last = p * like + (1 - p) * (1 - like);
      const all = (0.9 ** 15 * (p + (1 - p) / 2)) / (last + (1 - last) / 2);
      return [all, 1 - all];
    };
    expectClose(asked.ask(allEqual)[0]!, [...row(0.75), ...row(0.75), ...row(0.4)]);
    const both = (p: number): number[] => {
      const last = p * like + (1 - p) * (1 - like);
      const equal = (like * (p + (1 - p) / 2)) / (last + (1 - last) / 2);
      return [equal, 1 - equal];
    };
    expectClose(asked.ask(ends)[0]!, [...both(0.75), ...both(0.75), ...both(0.4)]);
  });

  test('rows of an impossible root are zeros', () => {
    const asked = after(sweep, [likelihood([names[count - 1]!, 'cause'], 0, 1, 1, 0, 1, 1)]);
    const [found] = asked.ask(allEqual);
    expect([...found!.subarray(0, 2)]).toEqual([0, 0]);
    expectClose(found!.subarray(2, 3), [0.9 ** 15]);
  });
});
