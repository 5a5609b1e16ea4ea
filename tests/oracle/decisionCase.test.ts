import {
  caseState,
  compileModel,
  factsOf,
  loadCase,
  advise,
  outcomeGivenCause,
  parseModel,
  beliefOf,
  type Facts,
  type Observation,
} from '@faultodds/core';
import {
  allowedActions,
  boundedSearch,
  oneStep,
  compileCaseProblem,
  repairOrder,
  repairOrTest,
  takeAction,
  whatWouldItTake,
  testsWhileOpen,
  type Action,
} from '@faultodds/core/planning';
import { demoCases, misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { smallModel } from '../fixtures/smallModel.ts';

// Source of the checks on the misfire model: the belief of the same facts, asked directly. Tolerance 1e-10.
const compiled = compileModel(parseModel(misfire));
const story = factsOf(
  caseState(
    loadCase(
      compiled,
      demoCases.find((one) => (one as { id: string }).id === 'demo-07'),
    ),
  ),
);
const intake: Facts = { context: story.context, observations: [] };

describe('a case as a decision problem', () => {
  const problem = compileCaseProblem(compiled, beliefOf(compiled, intake));
  const testAt = (id: string): Action => ({ kind: 'test', test: problem.tests.findIndex((one) => one.id === id) });
  const repairAt = (id: string): Action => ({
    kind: 'repair',
    repair: problem.repairs.findIndex((one) => one.id === id),
  });

  test('after results it believes what the facts say, whatever their order', () => {
    const circuit = problem.tests.find(({ id }) => id === 'read-circuit-codes')!.outcomes[0]!;
    const steps: readonly { action: Action; outcome: string; observation: Observation }[] = [
      {
        action: testAt('relative-compression'),
        outcome: 'even',
        observation: { kind: 'result', id: 'a', test: 'relative-compression', outcome: 'even' },
      },
      {
        action: testAt('read-circuit-codes'),
        outcome: circuit,
        observation: { kind: 'result', id: 'b', test: 'read-circuit-codes', outcome: circuit },
      },
    ];
    const states = [steps, steps.toReversed()].map((order) => {
      let state = problem.start;
      for (const { action, outcome } of order) {
        state = takeAction(problem, state, action).branches.find((one) => one.outcome === outcome)!.state!;
      }
      const belief = beliefOf(compiled, {
        context: intake.context,
        observations: order.map(({ observation }) => observation),
      });
      problem.causes.forEach((cause, c) => expect(state.posterior[c]).toBeCloseTo(belief.posterior[cause]!, 10));
      const leakDown = problem.tests.findIndex(({ id }) => id === 'leak-down');
      const table = problem.outcomeTable(state.evidence, leakDown);
      const asked = outcomeGivenCause(compiled, belief, 'leak-down');
      problem.tests[leakDown]!.outcomes.forEach((outcome, o) => {
        const at = problem.causes.indexOf('intake-valve-leak') * problem.tests[leakDown]!.outcomes.length + o;
        expect(table[at]).toBeCloseTo(asked['intake-valve-leak']![outcome]!, 10);
      });
      return state;
    });
    expect(states[0]!.evidence).toBe(states[1]!.evidence);
    expect(states[0]!.key).toBe(states[1]!.key);
  });

  test('a repair that failed leaves what it could not cure, in proportion', () => {
    const failed = takeAction(problem, problem.start, repairAt('replace-coil')).branches.find(
      ({ outcome }) => outcome === 'not-cured',
    )!;
    const at = (id: string): number => problem.causes.indexOf(id);
    const before = problem.start.posterior;
    const coil = compiled.model.repairs.find(({ id }) => id === 'replace-coil')!.cures['coil-weak']!.best;
    const after = failed.state!.posterior;
    const odds = (p: Float64Array): number => p[at('coil-weak')]! / p[at('secondary-leak')]!;
    expect(odds(after) / odds(before)).toBeCloseTo(1 - coil, 12);
    expect(failed.probability).toBeCloseTo(1 - coil * before[at('coil-weak')]!, 12);
  });

  test('a test answers its twin, and a part that was replaced in vain answers the test of the same question', () => {
    const closedAfter = (action: Action, outcome: string): string[] => {
      const { state } = takeAction(problem, problem.start, action).branches.find((one) => one.outcome === outcome)!;
      return problem.tests.flatMap(({ id }, at) => (state!.closedTests[at] === 1 ? [id] : []));
    };
    expect(closedAfter(testAt('coil-swap'), 'follows')).toEqual(expect.arrayContaining(['coil-swap', 'coil-replaced']));
    expect(closedAfter(repairAt('replace-coil'), 'not-cured')).toEqual(
      expect.arrayContaining(['coil-swap', 'coil-replaced']),
    );
  });

  test('an opened access is paid once, and a check closes it', () => {
    const open = takeAction(problem, problem.start, testAt('rotate-and-watch')).branches[0]!.state!;
    const lash = testAt('follower-lash-check') as { kind: 'test'; test: number };
    const closedPrice = problem.testCost(lash.test, 0).money;
    expect(problem.testCost(lash.test, open.open).money).toBeLessThan(closedPrice / 3);
    const after = takeAction(problem, open, repairAt('replace-coil')).branches.find(
      (one) => one.outcome === 'not-cured',
    )!.state!;
    expect(after.open).toBe(0);
    expect(problem.testCost(lash.test, after.open).money).toBe(closedPrice);
  });

  test('configurations never weigh more than their cause, and cover most of what is believed', () => {
    const { cause, weight } = problem.configurations();
    const sums = new Float64Array(problem.causes.length);
    cause.forEach((c, h) => (sums[c]! += weight[h]!));
    sums.forEach((sum, c) => expect(sum).toBeLessThanOrEqual(problem.start.posterior[c]! + 1e-12));
    expect(sums.reduce((a, b) => a + b, 0)).toBeGreaterThan(0.7);
  });

  test('equipment that is not at hand is not planned with', () => {
    const without = compileCaseProblem(compiled, beliefOf(compiled, intake), { equipment: [] });
    expect(without.tests.length).toBeLessThan(problem.tests.length);
    expect(without.tests.map(({ id }) => id)).not.toContain('in-cylinder-waveform');
  });

  test('with an hour to spend only what fits into the rest of it is allowed, and handing on always', () => {
    const short = compileCaseProblem(compiled, beliefOf(compiled, intake), {}, { minutes: 60 });
    let state = short.start;
    for (let left = 60; ;) {
      const actions = allowedActions(short, state);
      expect(actions.at(-1)).toEqual({ kind: 'refer' });
      for (const action of actions) expect(takeAction(short, state, action).cost.minutes).toBeLessThanOrEqual(left);
      const [first] = actions;
      if (first!.kind === 'refer') break;
      const { cost, branches } = takeAction(short, state, first!);
      left -= cost.minutes;
      state = branches.at(-1)!.state!;
    }
    const { policy, progress } = boundedSearch.solve(short, { steps: 4 });
    expect(allowedActions(short, short.start)).toContainEqual(policy(short.start));
    expect(progress.lowerBound).toBeLessThanOrEqual(progress.upperBound);
  });

  test('one step ahead costs what the advice says, and repairs without tests cost what its sequence says', () => {
    const advice = advise(compiled, beliefOf(compiled, intake));
    expect(repairOrder.solve(problem).progress.upperBound).toBeCloseTo(advice.repairNow.expectedCost.amount, 6);
    // the advice begins with something quick that is about as good; what the best costs stands beside it. It may keep its old sequence after a
    // result, so it can be a hair cheaper
    const cheapest = Math.min(...advice.tests.map(({ expectedCostWith }) => expectedCostWith.amount));
    const ahead = oneStep.solve(problem).progress.upperBound;
    expect(ahead).toBeGreaterThan(cheapest - 1e-6);
    expect(ahead).toBeLessThan(cheapest * 1.01);
    expect(advice.expectedCost.amount).toBeGreaterThanOrEqual(cheapest);
  });
});

describe('what would it take', () => {
  // two causes behind a cover, one outside; the look behind the cover is dear, the listening outside cheap and unsure
  const modelAt = (inside: number) =>
    compileModel(
      smallModel({
        causes: { lobe: inside * 0.6, spring: inside * 0.4, coil: 1 - inside },
        labourPerHour: 60,
        access: { cover: { minutes: 60 } },
        tests: {
          listen: { p: { coil: { quiet: 0.8, ticking: 0.2 }, else: { quiet: 0.3, ticking: 0.7 } }, price: 10 },
        },
        repairs: {
          'renew-lobe': { cures: { lobe: 1 }, minutes: 200, access: ['cover'] },
          'renew-spring': { cures: { spring: 1 }, minutes: 100, access: ['cover'] },
          'renew-coil': { cures: { coil: 1 }, minutes: 30 },
        },
        referralFee: 400,
      }),
    );
  const nothing: Facts = { context: {}, observations: [] };
  const cover = { kind: 'access', access: 'cover' } as const;
  const ask = (inside: number, circumstances = {}) => {
    const small = modelAt(inside);
    return whatWouldItTake(small, beliefOf(small, nothing), circumstances, cover);
  };
  const bestIsBehind = (inside: number): boolean => {
    const small = modelAt(inside);
    const { best } = advise(small, beliefOf(small, nothing));
    return best.kind === 'repair' && best.repair !== 'renew-coil';
  };

  test('the threshold is where the advice changes', () => {
    const { status, threshold, probability, causes } = ask(0.2);
    expect(status).toBe('reachable');
    expect(causes).toEqual(['lobe', 'spring']);
    expect(probability).toBeCloseTo(0.2, 12);
    expect(threshold).toBeGreaterThan(0.2);
    expect(bestIsBehind(threshold! - 0.003)).toBe(false);
    expect(bestIsBehind(threshold! + 0.003)).toBe(true);
  });

  test('it is the same threshold from wherever one asks, and already best beyond it', () => {
    const { threshold } = ask(0.2);
    expect(ask(0.4).threshold).toBeCloseTo(threshold!, 4);
    const beyond = ask(Math.min(0.99, threshold! + 0.02));
    expect(beyond.status).toBe('already-best');
    expect(beyond.threshold).toBeCloseTo(threshold!, 4);
  });

  test('the tests that could get there are named with their price and power', () => {
    const { threshold } = ask(0.2);
    const { tests } = ask(threshold! - 0.05);
    expect(tests?.tests.map(({ test: id }) => id)).toEqual(['listen']);
    expect(tests?.price.amount).toBeCloseTo(10, 9);
    expect(tests?.reachedIfTrue).toBeCloseTo(0.7, 9);
    expect(tests?.reachedIfFalse).toBeCloseTo(0.2, 9);
    expect(tests?.isLikely).toBe(true);
  });

  test('a step that cannot be best is never reached: handing on costs less', () => {
    const small = modelAt(0.2);
    const dear = compileModel({
      ...small.model,
      repairs: small.model.repairs.map((repair) =>
        repair.id === 'renew-coil' || repair.referral === true
          ? repair
          : {
              ...repair,
              cures: Object.fromEntries(Object.entries(repair.cures).map(([c, q]) => [c, { ...q, best: 0.05 }])),
            },
      ),
    });
    const { status, threshold } = whatWouldItTake(dear, beliefOf(dear, nothing), {}, cover);
    expect(status).toBe('never');
    expect(threshold).toBeUndefined();
  });

  test('at the edges: already open, impossible', () => {
    expect(ask(0.2, { openAccess: ['cover'] }).status).toBe('already-open');
    expect(ask(0).status).toBe('impossible');
  });

  test('on the misfire model the cover is far from worth opening at intake and best once the valvetrain stands out', () => {
    const at = (results: number) => {
      const facts = { context: story.context, observations: story.observations.slice(0, results) };
      return whatWouldItTake(compiled, beliefOf(compiled, facts), {}, { kind: 'access', access: 'valve-cover-off' });
    };
    expect(['reachable', 'never']).toContain(at(0).status);
    expect(at(0).probability).toBeLessThan(0.3);
    const later = at(9);
    expect(later.status).toBe('already-best');
    expect(later.probability).toBeGreaterThan(later.threshold!);
  });
});

test('while the cover is off, looks behind it that pay are those whose value exceeds their price without it', () => {
  const belief = beliefOf(compiled, { context: story.context, observations: story.observations.slice(0, 9) });
  const looks = testsWhileOpen(compiled, belief, {}, 'valve-cover-off');
  expect(looks.length).toBeGreaterThan(3);
  for (const { advice, priceLater, pays } of looks) {
    expect(advice.price.amount).toBeLessThan(priceLater.amount);
    expect(pays).toBe(advice.grossValue.amount > advice.price.amount);
  }
  expect(looks.some(({ pays }) => pays)).toBe(true);
});

test('repairing now and testing first are told apart by the figures of the advice', () => {
  for (const results of [0, 3, 9, 13]) {
    const belief = beliefOf(compiled, {
      context: story.context,
      observations: story.observations.slice(0, results),
    });
    const advice = advise(compiled, belief);
    const { better, repairNow, testFirst, saving } = repairOrTest(compiled, belief);
    expect(better).toBe(advice.best.kind);
    expect(saving.amount).toBeCloseTo(Math.abs(testFirst!.expectedCost.amount - repairNow.expectedCost.amount), 9);
  }
});

test('after a repair that seems to have cured neither is better: it is proved first', () => {
  const cured = { kind: 'repair-tried', id: 'last', repair: 'replace-plug', cured: true } as const;
  const belief = beliefOf(compiled, {
    context: story.context,
    observations: [...story.observations.slice(0, 3), cured],
  });
  const { better, repairNow, testFirst } = repairOrTest(compiled, belief);
  expect(better).toBe('prove');
  expect(advise(compiled, belief).best.kind).toBe('prove');
  // for the case that the fault comes back
  expect(repairNow.expectedCost.amount).toBeGreaterThan(0);
  expect(testFirst!.expectedCost.amount).toBeGreaterThan(0);
});

test('the thresholds of the leading cause enclose the probabilities at which the test changes what is done', () => {
  const facts: Facts = { context: {}, observations: [] };
  const modelAt = (p: number) =>
    compileModel(
      smallModel({
        causes: { coil: p, plug: 1 - p },
        labourPerHour: 0,
        tests: { swap: { p: { coil: { follows: 0.9, stays: 0.1 }, plug: { follows: 0.1, stays: 0.9 } }, price: 5 } },
        repairs: { 'new-coil': { cures: { coil: 1 }, parts: 80 }, 'new-plug': { cures: { plug: 1 }, parts: 60 } },
        referralFee: 1e6,
      }),
    );
  const at = (p: number) => {
    const small = modelAt(p);
    return repairOrTest(small, beliefOf(small, facts));
  };
  const { thresholds } = at(0.6);
  // coil first wastes 80 on a plug, plug first wastes 60 on a coil: alone, 80 / (80 + 60)
  expect(thresholds?.noTestThreshold).toBeCloseTo(80 / 140, 9);
  expect(thresholds?.positive).toEqual(['follows']);
  const { testTreatmentThreshold } = thresholds!;
  expect(at(testTreatmentThreshold - 0.005).better).toBe('test');
  expect(at(testTreatmentThreshold + 0.005).better).toBe('repair');
});
