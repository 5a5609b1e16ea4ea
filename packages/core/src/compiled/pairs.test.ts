import { demoCases, misfire } from '@faultodds/misfire';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { advise } from '../advice/advise.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { caseState } from '../session/session.ts';
import { factsOf } from '../session/factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { compileModel } from './compileModel.ts';
import { noisyMax } from './noisyMax.ts';
import { parseModel } from '../model/parseModel.ts';

const share = { best: 0.1, low: 0.05, high: 0.2, ess: 5, source: 'judgement' };

test('noisy-MAX of two rows is the distribution of the worse of two independent draws', () => {
  const row = fc
    .array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 })
    .map((weights) => weights.map((w) => w / weights.reduce((a, b) => a + b)));
  fc.assert(
    fc.property(row, row, (a, b) => {
      const worse = [0, 0, 0, 0];
      a.forEach((pa, i) => b.forEach((pb, j) => (worse[Math.max(i, j)]! += pa * pb)));
      noisyMax(a, b).forEach((p, s) => expect(p).toBeCloseTo(worse[s]!, 12));
    }),
    { seed: 20 },
  );
});

test('before any test, pairs share the stated share, and single causes keep their odds', () => {
  const model = { ...pumpModel(), twoCauseShare: share };
  const facts = { context: {}, observations: [] };
  const single = rankCauses(compileModel(model), facts).posterior;
  const pairs = rankCauses(compileModel(model, { atMost: 2 }), facts).posterior;
  const ofPairs = Object.entries(pairs).filter(([id]) => id.includes(' + '));
  expect(ofPairs.reduce((sum, [, p]) => sum + p, 0)).toBeCloseTo(0.1, 12);
  expect(ofPairs).toHaveLength(6); // four listed causes
  for (const [id, p] of Object.entries(single)) expect(pairs[id]).toBeCloseTo(0.9 * p, 12);
});

test('with two causes at once, P(evidence) is what adding up every hypothesis and state gives', () => {
  const model = { ...pumpModel(), twoCauseShare: share };
  const compiled = compileModel(model, { atMost: 2 });
  const here = model.tests.filter((one) => one.appliesWhen === undefined);
  const results = here.map((one, at) => ({
    kind: 'result' as const,
    id: `r${at}`,
    test: one.id,
    outcome: one.outcomes[at % one.outcomes.length]!.id,
  }));
  const prior = rankCauses(compiled, { context: {}, observations: [] }).posterior;
  const [first, second] = model.mechanisms;
  const states = (mechanism: (typeof model.mechanisms)[number], ids: readonly string[]): Record<string, number> => {
    const rows = ids.flatMap((id) => model.causes.find((cause) => cause.id === id)!.states[mechanism.id] ?? []);
    const used = rows.length === 0 ? [mechanism.background!] : rows;
    const names = mechanism.states.map((state) => state.id);
    const worse = Object.fromEntries(names.map((name) => [name, 0]));
    const draw = (left: typeof used, worst: number, p: number): void => {
      if (left.length === 0) worse[names[worst]!]! += p;
      else names.forEach((name, at) => draw(left.slice(1), Math.max(worst, at), p * left[0]!.p[name]!));
    };
    draw(used, 0, 1);
    return worse;
  };
  let evidence = 0;
  const joint = Object.fromEntries(
    Object.keys(prior).map((hypothesis) => {
      const ids = hypothesis.split(' + ');
      let likelihood = 0;
      for (const [s1, p1] of Object.entries(states(first!, ids))) {
        for (const [s2, p2] of Object.entries(states(second!, ids))) {
          const seen = results.reduce((product, result) => {
            const found = model.tests
              .find((one) => one.id === result.test)!
              .rows.find((row) =>
                Object.entries(row.when).every(([parent, wanted]) =>
                  parent === 'cause'
                    ? ids.some((id) => wanted.includes(id))
                    : wanted.includes(parent === first!.id ? s1 : s2),
                ),
              )!;
            return product * found.p[result.outcome]!;
          }, 1);
          likelihood += p1 * p2 * seen;
        }
      }
      evidence += prior[hypothesis]! * likelihood;
      return [hypothesis, prior[hypothesis]! * likelihood];
    }),
  );
  const { posterior, logProbabilityOfEvidence } = rankCauses(compiled, { context: {}, observations: results });
  expect(logProbabilityOfEvidence).toBeCloseTo(Math.log(evidence), 12);
  for (const [hypothesis, p] of Object.entries(joint)) expect(posterior[hypothesis]).toBeCloseTo(p / evidence, 12);
});

test('a pair of faults stays while either does: the replaced coil does not clear a car with a cracked bridge as well', () => {
  const compiled = compileModel(parseModel(misfire), { atMost: 2 });
  const stays = { kind: 'result' as const, id: 'r', test: 'coil-replaced', outcome: 'misfire-stays' };
  const { prior, posterior } = rankCauses(compiled, { context: {}, observations: [stays] });
  const moved = (id: string): number => posterior[id]! / prior[id]!;
  expect(moved('coil-weak + cam-bridge-cracked')).toBeCloseTo(moved('cam-bridge-cracked'), 12);
  expect(moved('coil-weak')).toBeLessThan(0.2);
});

test('advice works on pairs, and a demo case keeps its leading cause', () => {
  const compiled = compileModel(parseModel(misfire), { atMost: 2 });
  const facts = factsOf(
    caseState(
      loadCase(
        compiled,
        demoCases.find((demo) => (demo as { id: string }).id === 'demo-12'),
      ),
    ),
  );
  const belief = beliefOf(compiled, facts);
  expect(belief.ranking[0]!.cause).toBe('spring-broken');
  expect(advise(compiled, belief).expectedCost.amount).toBeGreaterThan(0);
});

test('a model that does not say how often two causes act at once is refused for pairs', () => {
  expect(() => compileModel(pumpModel(), { atMost: 2 })).toThrow(/two-cause-share-missing/);
});
