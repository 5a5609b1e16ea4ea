import { demoCases, misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import type { Facts } from '../evidence/facts.ts';
import { compileModel, recompileModel } from '../compiled/compileModel.ts';
import { isProbabilityAt } from '../model/isProbabilityAt.ts';
import { parseModel } from '../model/parseModel.ts';
import { caseState } from '../session/session.ts';
import { factsOf } from '../session/factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { leaderSensitivity, type NumberSensitivity } from './leaderSensitivity.ts';

const compiled = compileModel(parseModel(misfire));
const caseFacts = (id: string): Facts =>
  factsOf(
    caseState(
      loadCase(
        compiled,
        demoCases.find((demo) => (demo as { id: string }).id === id),
      ),
    ),
  );

/** Posterior of the leader with one number changed in a copy of the model, the rest of its row in proportion: no shortcut taken. */
function recomputed(path: string, from: number, to: number, facts: Facts, leader: string): number {
  const model = structuredClone(compiled.model) as unknown as Record<string, unknown>;
  const keys = path.split('/').slice(1);
  const key = keys.pop()!;
  const holder = keys.reduce((value, k) => value[k] as Record<string, unknown>, model) as Record<string, number>;
  if (key !== 'best') for (const other of Object.keys(holder)) holder[other]! *= (1 - to) / (1 - from);
  holder[key] = to;
  return rankCauses(recompileModel(compiled, model as never), facts).posterior[leader]!;
}

const at = ({ numerator: n, denominator: d }: NumberSensitivity, x: number): number =>
  (n.constant + n.slope * x) / (d.constant + d.slope * x);

test('every sensitivity function gives what recomputing with the changed number gives', () => {
  for (const id of ['demo-05', 'demo-07', 'demo-09']) {
    const all = caseFacts(id);
    const observations = all.observations.map((seen, n) =>
      n % 2 === 0 ? { ...seen, faultActive: 'unknown' as const } : seen,
    );
    const facts = { ...all, observations };
    const { leading, functions } = leaderSensitivity(compiled, facts);
    expect(functions.length).toBeGreaterThan(300);
    for (const fn of functions.filter((_, n) => n % 9 === 0)) {
      const to = isProbabilityAt(fn.path) ? Math.min(0.9, fn.value * 1.5 + 0.01) : fn.value * 1.7;
      expect(at(fn, fn.value)).toBeCloseTo(rankCauses(compiled, facts).posterior[leading]!, 12);
      expect(at(fn, to), fn.path).toBeCloseTo(recomputed(fn.path, fn.value, to, facts, leading), 12);
    }
  }
});

test('how surely a failed repair cures, and what goes without a cure, are among the numbers that matter', () => {
  const facts: Facts = {
    context: {},
    observations: [{ kind: 'repair-tried', id: 'a', repair: 'renew-boot-or-lead', cured: false }],
  };
  const { leading, functions } = leaderSensitivity(compiled, facts);
  const ofRepair = functions.filter(({ path }) => path.startsWith('/repairs/') || path.startsWith('/goneWithoutCure'));
  expect(ofRepair.map(({ path }) => path.split('/')[1])).toEqual(
    expect.arrayContaining(['repairs', 'goneWithoutCure']),
  );
  for (const fn of ofRepair) {
    expect(at(fn, fn.low)).toBeCloseTo(recomputed(fn.path, fn.value, fn.low, facts, leading), 12);
    expect(at(fn, fn.high)).toBeCloseTo(recomputed(fn.path, fn.value, fn.high, facts, leading), 12);
  }
});

test('at a flip the leader and the cause that takes over are equally likely', () => {
  const facts = caseFacts('demo-11');
  const { leading, functions } = leaderSensitivity(compiled, facts);
  const flips = functions.filter((fn) => fn.flip !== undefined && fn.path.includes('/p/')).slice(0, 5);
  expect(flips.length).toBeGreaterThan(0);
  for (const { path, value, flip } of flips) {
    const there = recomputed(path, value, flip!.at, facts, leading);
    expect(there).toBeCloseTo(recomputed(path, value, flip!.at, facts, flip!.cause), 10);
  }
});

// Laskey 1995; Coupe & van der Gaag 2002: the posterior is a quotient of two linear functions of a parameter. Coefficients for the
// burglar alarm (Pearl 1988, numbers of Russell & Norvig): P(j, m | burglary) = 0.59224259, P(j, m | none) = 0.001493351; the posterior
// of burglary is one half where its prior is 0.00251517703. Tolerance: the printed digits.
test('the prior at which two calls make a burglary even is the published one', () => {
  const calls = { both: 0.59224259, 'not-both': 1 - 0.59224259 };
  const none = { both: 0.001493351, 'not-both': 1 - 0.001493351 };
  const burglar = compileModel(
    smallModel({ causes: { burglary: 0.001, none: 0.999 }, tests: { calls: { p: { burglary: calls, else: none } } } }),
  );
  const facts: Facts = { context: {}, observations: [{ kind: 'result', id: 'a', test: 'calls', outcome: 'both' }] };
  const { leading, functions } = leaderSensitivity(burglar, facts);
  expect(leading).toBe('none');
  const weight = functions.find((fn) => fn.value === 0.001 && fn.path.endsWith('/weight/best'))!;
  expect(1 - at(weight, 0.001)).toBeCloseTo(0.284171835, 8);
  const even = weight.flip!.at / (weight.flip!.at + 0.999); // weights are relative: as a prior
  expect(even).toBeCloseTo(0.00251517703, 9);
});
