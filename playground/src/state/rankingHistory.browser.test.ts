import { beliefOf, type Facts, type Observation } from '@faultodds/core';
import { explainMove, rankAfterEach } from '@faultodds/core/explanation';
import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { moveAt, sharedMoments, extendHistory, type RankingHistory } from './rankingHistory.ts';

let sweeps = 0;
const shipped = loadKnowledge(misfire, []);
const { sweep } = shipped.compiled as unknown as { readonly sweep: object };
const compiled = Object.defineProperty({ ...shipped.compiled }, 'sweep', {
  get() {
    sweeps += 1;
    return sweep;
  },
});
const knowledge = { ...shipped, compiled };

const result = (id: string, of: string, outcome: string): Observation => ({ kind: 'result', id, test: of, outcome });
const [plug, coil, compression] = [
  result('r1', 'plug-swap', 'stays'),
  result('r2', 'coil-swap', 'follows'),
  result('r3', 'cranking-compression', 'low'),
];
const factsOf = (...observations: readonly Observation[]): Facts => ({ context: {}, observations });
const follow = (facts: Facts, earlier: RankingHistory | null = null): RankingHistory =>
  extendHistory(knowledge, beliefOf(compiled, facts), earlier) ?? expect.fail('left to the worker');
const chances = ({ moments }: Pick<RankingHistory, 'moments'>) =>
  moments.map(({ ranking }) => ranking.map(({ cause, probability }) => [cause, probability]));

test('one result more adds one moment, takes the others over and asks the kernel for nothing but the belief', () => {
  const before = follow(factsOf(plug!, coil!));
  const belief = beliefOf(compiled, factsOf(plug!, coil!, compression!));
  sweeps = 0;
  const history = extendHistory(knowledge, belief, before)!;
  expect(sweeps).toBe(0);
  expect(history.moments).toHaveLength(4);
  before.moments.forEach((moment, at) => expect(history.moments[at]).toBe(moment));
  expect(history.moments[3]).toBe(belief);
});

test('however a history came about, it is the one worked out from the beginning', () => {
  const whole = follow(factsOf(plug!, coil!, compression!));
  const ways = [
    [factsOf(plug!, compression!), whole], // the second taken back
    [factsOf(plug!), whole],
    [factsOf(compression!, plug!), whole],
    [{ ...factsOf(plug!, coil!), context: { 'ignition-type': 'coil-per-plug' } }, whole],
  ] as const;
  for (const [facts, earlier] of ways) {
    const anew = { moments: rankAfterEach(shipped.compiled, facts) };
    const [ours, theirs] = [chances(follow(facts, earlier)), chances(anew)];
    expect(ours).toHaveLength(theirs.length);
    ours.forEach((moment, at) => {
      const expected = new Map(theirs[at] as [string, number][]);
      for (const [cause, p] of moment as [string, number][]) expect(p).toBeCloseTo(expected.get(cause)!, 12);
    });
  }
});

test('what a history shares with other facts ends at the first observation that differs, and with another context', () => {
  const history = follow(factsOf(plug!, coil!));
  expect(sharedMoments(null, factsOf(plug!))).toBe(0);
  expect(sharedMoments(history, factsOf(plug!, compression!))).toBe(2);
  expect(sharedMoments(history, factsOf(compression!))).toBe(1);
  expect(sharedMoments(history, { ...factsOf(plug!), context: { 'ignition-type': 'coil-per-plug' } })).toBe(0);
});

test('a long way is left to the worker, and its end is the page’s own', () => {
  const many = Array.from({ length: 40 }, (_, at) => ({ ...plug!, id: `r${at}` }));
  const belief = beliefOf(compiled, factsOf(...many));
  sweeps = 0;
  expect(extendHistory(knowledge, belief, null)).toBeNull();
  expect(sweeps).toBe(0);
});

test('what an observation did is what core says of the two moments around it, worked out once', () => {
  const history = follow(factsOf(plug!, coil!));
  expect(moveAt(history, 1)).toEqual(explainMove(coil!, history.moments[1]!, history.moments[2]!));
  expect(moveAt(history, 1)).toBe(moveAt(history, 1));
  expect(moveAt(history, 2)).toBeUndefined();
});
