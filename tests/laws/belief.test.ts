import {
  compileModel,
  parseModel,
  type CompiledModel,
  type Facts,
  type Model,
  type Observation,
  type TestResult,
} from '@faultodds/core';
import { expect, test } from 'vitest';
import { createRandom } from '../oracle/randomNetwork.ts';
import { anyCase, apart, believe, difference, law, rank, shuffled, tolerance } from './anyCase.ts';

const sum = (record: Readonly<Record<string, number>>) => Object.values(record).reduce((a, b) => a + b, 0);
const withinRounding = tolerance.probability;

test('every distribution sums to one and holds nothing but probabilities', () => {
  law(anyCase(), 100, ({ compiled, facts }) => {
    const belief = believe(compiled, facts, facts.observations);
    for (const distribution of [belief.prior, belief.posterior, ...Object.values(belief.predictive)]) {
      expect(apart(sum(distribution), 1)).toBeLessThan(withinRounding);
      for (const p of Object.values(distribution)) expect(p >= 0 && p <= 1 + withinRounding).toBe(true);
    }
    expect(
      apart(
        belief.groups.reduce((total, { probability }) => total + probability, 0),
        1,
      ),
    ).toBeLessThan(withinRounding);
    expect(belief.logProbabilityOfEvidence).toBeLessThan(Infinity);
    expect(belief.logProbabilityOfEvidence).toBeGreaterThan(-Infinity);
  });
});

test('the order of observations does not matter, repeats and doubtful activity included', () => {
  law(anyCase(9), 150, ({ compiled, facts, chance }) => {
    const one = rank(compiled, facts, facts.observations);
    const other = rank(compiled, facts, shuffled(facts.observations, chance));
    expect(difference(one.posterior, other.posterior)).toBeLessThan(withinRounding);
    expect(apart(one.logProbabilityOfEvidence, other.logProbabilityOfEvidence)).toBeLessThan(withinRounding);
  });
});

test('entering all results at once equals entering them one by one', () => {
  law(anyCase(), 30, ({ compiled, model, facts }) => {
    // the chain rule: the probability of each result given those before it multiplies up to that of all
    let logarithm = 0;
    let before = believe(compiled, facts, []);
    facts.observations.forEach((observation, at) => {
      const after = believe(compiled, facts, facts.observations.slice(0, at + 1));
      if (observation.kind === 'result' && observation.outcome !== undefined) {
        const handling = model.tests.find(({ id }) => id === observation.test)!.mayCause; // doing it is evidence of its own
        const isRepeat =
          handling !== undefined ||
          isSharedQuestion(compiled, facts, observation.test) ||
          facts.observations.slice(0, at).some((one) => one.kind === 'repair-tried' || one.test === observation.test);
        // what was foretold for an untaken test is what its result then brings
        if (!isRepeat && observation.faultActive !== 'no' && observation.faultActive !== 'unknown') {
          const foretold = Math.log(before.predictive[observation.test]![observation.outcome]!);
          expect(Math.abs(after.logProbabilityOfEvidence - before.logProbabilityOfEvidence - foretold)).toBeLessThan(
            1e-9,
          );
        }
      }
      logarithm += after.logProbabilityOfEvidence - before.logProbabilityOfEvidence;
      before = after;
    });
    const whole = believe(compiled, facts, facts.observations);
    expect(Math.abs(logarithm - whole.logProbabilityOfEvidence)).toBeLessThan(1e-9);
  });
});

test('a likelihood says the same at any scale', () => {
  law(anyCase(), 100, ({ compiled, model, facts, chance }) => {
    const random = createRandom(chance);
    const scaled = facts.observations.map((observation): Observation => {
      if (observation.kind !== 'result') return observation;
      const { outcome, likelihood, ...result } = observation;
      const factor = 10 ** (8 * random() - 4);
      const outcomes = model.tests.find((one) => one.id === observation.test)!.outcomes.map(({ id }) => id);
      const given = likelihood ?? Object.fromEntries(outcomes.map((id) => [id, Number(id === outcome)]));
      return {
        ...result,
        likelihood: Object.fromEntries(Object.entries(given).map(([id, value]) => [id, value * factor])),
      };
    });
    const before = rank(compiled, facts, facts.observations);
    const after = rank(compiled, facts, scaled);
    expect(difference(after.posterior, before.posterior)).toBeLessThan(1e-11); // powers of ten round
    expect(apart(after.logProbabilityOfEvidence, before.logProbabilityOfEvidence)).toBeLessThan(1e-9);
  });
});

test('a likelihood that speaks for no outcome more than for another changes nothing', () => {
  law(anyCase(), 60, ({ compiled, model, facts }) => {
    const asked = new Set(facts.observations.map((one) => (one.kind === 'result' ? one.test : '')));
    const before = believe(compiled, facts, facts.observations);
    const untaken = model.tests.filter(
      ({ id, mayCause }) => before.predictive[id] !== undefined && mayCause === undefined && !asked.has(id),
    );
    for (const { id, outcomes } of untaken.slice(0, 3)) {
      if (model.repairs.some((repair) => repair.sameAs?.test === id)) continue; // perhaps asked by a repair
      const likelihood = Object.fromEntries(outcomes.map((outcome) => [outcome.id, 3]));
      const after = rank(compiled, facts, [
        ...facts.observations,
        { kind: 'result', id: 'flat', test: id, likelihood },
      ]);
      expect(difference(after.posterior, before.posterior)).toBeLessThan(withinRounding);
    }
  });
});

test('a result taken while the fault surely slept changes nothing where the fault must be present', () => {
  law(anyCase(), 100, ({ compiled, model, facts }) => {
    const before = believe(compiled, facts, facts.observations);
    const needing = model.tests.filter(
      (one) => one.faultMustBeActive && one.mayCause === undefined && before.predictive[one.id] !== undefined,
    );
    for (const { id, outcomes } of needing.slice(0, 3)) {
      const slept: TestResult = { kind: 'result', id: 'slept', test: id, outcome: outcomes[0]!.id, faultActive: 'no' };
      const after = believe(compiled, facts, [...facts.observations, slept]);
      expect(after.posterior).toEqual(before.posterior);
      expect(after.logProbabilityOfEvidence).toBe(before.logProbabilityOfEvidence);
      expect(after.warnings.some(({ kind, items }) => kind === 'asleep' && items.includes('slept'))).toBe(true);
    }
  });
});

test('sixty observations neither underflow nor come apart', () => {
  law(anyCase(60), 12, ({ compiled, model, facts, chance }) => {
    const many = [...facts.observations];
    const random = createRandom(chance);
    const { predictive } = believe(compiled, facts, []);
    const tests = model.tests.filter(({ id }) => predictive[id] !== undefined);
    while (many.length < 60) {
      const one = tests[Math.floor(random() * tests.length)]!;
      many.push({ kind: 'result', id: `more${many.length}`, test: one.id, outcome: one.outcomes[0]!.id });
    }
    const belief = rank(compiled, facts, many);
    expect(apart(sum(belief.posterior), 1)).toBeLessThan(withinRounding);
    expect(Number.isFinite(belief.logProbabilityOfEvidence)).toBe(true);
    expect(difference(belief.posterior, rank(compiled, facts, shuffled(many, chance)).posterior)).toBeLessThan(1e-11);
  });
});

test('reordering causes, mechanisms, states, outcomes and tests changes nothing', () => {
  law(anyCase(), 100, ({ compiled, model, facts, chance }) => {
    const mixed = <T>(list: readonly T[], at: number): T[] => shuffled(list, chance + at);
    const other: Model = {
      ...model,
      context: mixed(model.context, 1),
      causes: mixed(model.causes, 2),
      mechanisms: mixed(model.mechanisms, 3).map((one, at) => ({ ...one, states: mixed(one.states, at) })),
      tests: mixed(model.tests, 4).map((one, at) => ({ ...one, outcomes: mixed(one.outcomes, at) })),
      repairs: mixed(model.repairs, 5),
    };
    const before = believe(compiled, facts, facts.observations);
    const after = believe(compileModel(parseModel(other)), facts, facts.observations);
    expect(difference(after.posterior, before.posterior)).toBeLessThan(1e-11); // sums run in another order
    for (const [id, outcomes] of Object.entries(before.predictive)) {
      expect(difference(after.predictive[id]!, outcomes)).toBeLessThan(1e-11);
    }
  });
});

test('renaming causes, mechanisms, states, outcomes and tests changes nothing but the names', () => {
  law(anyCase(), 100, ({ compiled, model, facts }) => {
    if (!model.id.startsWith('random')) return; // ids of the generated models are one letter and a number
    const renamed = <T>(value: T): T =>
      JSON.parse(JSON.stringify(value).replaceAll(/"([a-z])(\d+)"/g, '"$1-renamed-$2"')) as T;
    const other = compileModel(parseModel(renamed(model)));
    const before = believe(compiled, facts, facts.observations);
    const after = believe(other, renamed(facts), renamed(facts).observations);
    expect(after.posterior).toEqual(renamed(before.posterior));
    expect(after.predictive).toEqual(renamed(before.predictive));
  });
});

test('a mechanism and a test that nobody asks about change nothing', () => {
  law(anyCase(), 60, ({ compiled, model, facts }) => {
    const source = model.sources[0]!.id;
    const { asleep: _, ...plain } = model.tests[0]!;
    const states = [
      { id: 'up', label: 'up' },
      { id: 'down', label: 'down' },
    ];
    const other: Model = {
      ...model,
      causes: model.causes.map((cause, at) => ({
        ...cause,
        states: {
          ...cause.states,
          idle: { p: { up: 0.1 + 0.8 / (at + 1), down: 0.9 - 0.8 / (at + 1) }, ess: 1, source },
        },
      })),
      mechanisms: [
        ...model.mechanisms,
        { id: 'idle', label: 'idle', states, background: { p: { up: 0.5, down: 0.5 }, ess: 1, source } },
      ],
      tests: [
        ...model.tests,
        {
          ...plain,
          id: 'idle-look',
          outcomes: states,
          rows: [
            { when: { idle: ['up'] }, p: { up: 0.9, down: 0.1 }, ess: 1, source },
            { when: {}, p: { up: 0.2, down: 0.8 }, ess: 1, source },
          ],
        },
      ],
    };
    const before = believe(compiled, facts, facts.observations);
    const after = believe(compileModel(parseModel(other)), facts, facts.observations);
    expect(difference(after.posterior, before.posterior)).toBeLessThan(withinRounding);
    expect(apart(after.logProbabilityOfEvidence, before.logProbabilityOfEvidence)).toBeLessThan(withinRounding);
  });
});

/** Whether another test or an intake answer may share the likelihood of this one. */
function isSharedQuestion({ structure }: CompiledModel, { context, observations }: Facts, id: string): boolean {
  return (structure.questions.get(id) ?? []).some(
    (name) =>
      name !== id && (name in context || observations.some((one) => one.kind === 'result' && one.test === name)),
  );
}
