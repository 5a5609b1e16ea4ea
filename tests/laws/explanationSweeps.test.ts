import { compileModel, type Facts, parseModel, rankCauses } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { misfire } from '@faultodds/misfire';
import { beforeEach, expect, test, vi } from 'vitest';

// How much work an explanation is, counted in sweeps and in factors multiplied on the way, never in seconds.

const counted = vi.hoisted(() => ({ sweeps: 0 }));
vi.mock('@faultodds/inference/sweeps', async (importOriginal) => {
  const kernel = await importOriginal<typeof import('@faultodds/inference/sweeps')>();
  return {
    ...kernel,
    sweepRoot: (...asked: Parameters<typeof kernel.sweepRoot>) => {
      counted.sweeps += 1;
      return kernel.sweepRoot(...asked);
    },
  };
});
beforeEach(() => {
  counted.sweeps = 0;
});

const model = parseModel(misfire);
const tests = model.tests.filter(({ appliesWhen }) => appliesWhen === undefined).slice(0, 20);

/** Results round some tests of the misfire model again and again, leaning to one outcome after another. */
function manyResults(count: number): Facts {
  const observations = Array.from({ length: count }, (_, at) => {
    const { id: test, outcomes } = tests[at % tests.length]!;
    const seen = outcomes[Math.floor(at / tests.length + at) % outcomes.length]!.id;
    const likelihood = Object.fromEntries(outcomes.map(({ id }) => [id, id === seen ? 1 : 0.4]));
    return { kind: 'result' as const, id: `r${at + 1}`, test, likelihood };
  });
  return { context: {}, observations };
}

/** Likelihood factors multiplied onto others so far: the steps by which the kernel remembers what it derived. */
function factorsTaken(compiled: ReturnType<typeof compileModel>): number {
  let taken = 0;
  const waiting = [compiled.sweep.start];
  for (let state = waiting.pop(); state !== undefined; state = waiting.pop()) {
    taken += state.after.size;
    waiting.push(...state.after.values());
  }
  return taken;
}

test('explaining a case sweeps at most three times per result, and once more for every different result when they repeat', () => {
  const compiled = compileModel(model);
  explainCase(compiled, manyResults(tests.length));
  expect(counted.sweeps).toBeLessThanOrEqual(3 * tests.length + 2);

  counted.sweeps = 0;
  const repeated = manyResults(80);
  const different = new Set(repeated.observations.map(({ id: _id, ...said }) => JSON.stringify(said))).size;
  expect(different).toBeLessThan(80);
  explainCase(compileModel(model), repeated);
  expect(counted.sweeps).toBeLessThanOrEqual(80 + 2 + 2 * different);
});

test('leaving each result out does not multiply all the others anew', () => {
  // halving: log2(groups) steps to each group; one result after the other it would be half of all groups
  const compiled = compileModel(model);
  const facts = manyResults(tests.length);
  explainCase(compiled, facts);
  const families = compiled.sweep.families.length;
  const steps = Math.ceil(Math.log2(tests.length)) + 3;
  expect(factorsTaken(compiled)).toBeLessThan(tests.length * steps + families * tests.length);
});

test('the ranking without each of many repeated results is that of a case in which it was never recorded', () => {
  const compiled = compileModel(model);
  const facts = manyResults(tests.length + 6);
  explainCase(compiled, facts).observations.forEach(({ rankingWithout }, at) => {
    if (at % 5 !== 0) return;
    const { posterior } = rankCauses(compiled, { ...facts, observations: facts.observations.toSpliced(at, 1) });
    for (const { cause, probability } of rankingWithout) expect(probability).toBeCloseTo(posterior[cause]!, 12);
  });
});
