// Every option and plain number of every public function, fed with what it cannot be: refused by an error of its own, with the place.
import * as core from '@faultodds/core';
import * as authoring from '@faultodds/core/authoring';
import * as codes from '@faultodds/core/codes';
import * as doubt from '@faultodds/core/doubt';
import * as explanation from '@faultodds/core/explanation';
import * as planning from '@faultodds/core/planning';
import * as readings from '@faultodds/core/readings';
import * as simulation from '@faultodds/core/simulation';
import * as kernel from '@faultodds/inference';
import { mostProbableExplanations } from '@faultodds/inference/analysis';
import { createRandom as kernelRandom } from '@faultodds/inference/sampling';
import { compileSweep } from '@faultodds/inference/sweeps';
import { compileEach } from '@faultodds/inference/each';
import { describe, expect, test } from 'vitest';
import { pumpModel } from '../fixtures/pumpModel.ts';

const compiled = core.compileModel(core.parseModel(pumpModel()));
const facts = { context: {}, observations: [] };
const belief = core.beliefOf(compiled, facts);
const problem = planning.compileTableProblem({
  prior: [0.6, 0.4],
  tests: [
    {
      id: 't',
      cost: 1,
      outcomeGivenCause: [
        [0.9, 0.1],
        [0.2, 0.8],
      ],
    },
  ],
  repairs: [{ id: 'r', cost: 5, cures: [1, 0] }],
  referralCost: [20, 20],
});
const solution = planning.repairOrder.solve(problem);
const step = { kind: 'repair', repair: compiled.model.repairs.find(({ referral }) => referral !== true)!.id } as const;
const network = kernel.defineNetwork({ variables: [{ name: 'a', states: ['y', 'n'], table: [0.2, 0.8] }] });
const tree = kernel.compileNetwork(network);
const random = doubt.createRandom(1);
const aborted = { aborted: true };

const notNumbers = [NaN, '1', 'many', null, {}, [], true];
const numbers = [...notNumbers, -1, -Infinity];
const finite = [...numbers, Infinity, 1e308];
const functions = [1, 'f', null, {}];
const signals = [1, 'stop', null, {}, { aborted: 'no' }];

type Row = readonly [what: string, wrong: readonly unknown[], ask: (value: never) => unknown];

const solverRows = (name: string, solve: planning.Solver['solve']): Row[] => [
  [`${name} steps`, numbers, (steps) => solve(problem, { steps })],
  [`${name} signal`, signals, (signal) => solve(problem, { signal })],
  [`${name} onImprove`, functions, (onImprove) => solve(problem, { onImprove })],
  [`${name} an option there is not`, [1], (step_) => solve(problem, { stpes: step_ } as never)],
];
const plan = {
  policy: 'p',
  prepare: () => ({ problem, decide: solution.policy }),
  cases: 1,
  seed: 1,
};
const engine = { suspectCylinder: 3, cylinders: 4 };
const whole = [...finite, 1.5];
const tables = {
  prior: [0.6, 0.4],
  tests: [
    {
      id: 't',
      cost: 1,
      outcomeGivenCause: [
        [0.9, 0.1],
        [0.2, 0.8],
      ],
    },
  ],
  repairs: [{ id: 'r', cost: 5, cures: [1, 0] }],
  referralCost: [20, 20],
};

const rows: readonly Row[] = [
  ['compileModel atMost', [0, 3, ...notNumbers], (atMost) => core.compileModel(compiled.model, { atMost })],
  [
    'changeNumber value',
    [NaN, '1', -1, Infinity, 1e300],
    (v) => doubt.changeNumber(compiled, '/labourPerHour/best', v),
  ],
  ['changeNumber path', [1, null, {}], (path) => doubt.changeNumber(compiled, path, 1)],
  ['rangeOfProbability p', [...finite, 1.1], (p) => authoring.rangeOfProbability(p, 5)],
  ['rangeOfProbability ess', finite, (ess) => authoring.rangeOfProbability(0.5, ess)],
  ['createRandom', [...notNumbers, undefined, Infinity], (seed) => doubt.createRandom(seed)],
  [
    'conditionalRateTest events',
    finite,
    (events) => readings.conditionalRateTest({ events, exposure: 1 }, { events: 1, exposure: 1 }),
  ],
  [
    'conditionalRateTest exposure',
    [0, ...finite],
    (exposure) => readings.conditionalRateTest({ events: 1, exposure: 1 }, { events: 1, exposure }),
  ],
  ['naturalFrequencies of', [0, ...whole], (of) => explanation.naturalFrequencies({ a: 1 }, of)],
  ['naturalFrequencies probabilities', [...finite, 1.1, 0.5], (a) => explanation.naturalFrequencies({ a })],
  ['weightOfEvidence before', [...finite, 1.1], (a) => explanation.weightOfEvidence({ a, b: 0.5 }, { a: 0.5, b: 0.5 })],
  ['weightOfEvidence after', [...finite, 1.1], (a) => explanation.weightOfEvidence({ a: 0.5, b: 0.5 }, { a, b: 0.5 })],
  [
    'credibleRanking draws',
    [0, ...whole],
    (draws) => doubt.credibleRanking(compiled, facts, { draws, signal: aborted }),
  ],
  [
    'credibleRanking seed',
    [...notNumbers, Infinity],
    (seed) => doubt.credibleRanking(compiled, facts, { seed, draws: 1 }),
  ],
  ['credibleRanking signal', signals, (signal) => doubt.credibleRanking(compiled, facts, { signal, draws: 1 })],
  ['credibleRanking an option there is not', [1], (drws) => doubt.credibleRanking(compiled, facts, { drws } as never)],
  [
    'adviceStability draws',
    [0, ...whole],
    (draws) => doubt.adviceStability(compiled, facts, {}, { draws, signal: aborted }),
  ],
  [
    'adviceStability seed',
    [...notNumbers, Infinity],
    (seed) => doubt.adviceStability(compiled, facts, {}, { seed, draws: 1 }),
  ],
  [
    'adviceFlips numbers',
    [...numbers, 1.5],
    (n) => doubt.adviceFlips(compiled, facts, {}, { numbers: n, signal: aborted }),
  ],
  ['adviceFlips signal', signals, (signal) => doubt.adviceFlips(compiled, facts, {}, { numbers: 0, signal })],
  ['drawModel random', functions, (draw) => doubt.drawModel(compiled.model, draw)],
  ['drawModel tests', [1, 'hum', {}], (of) => doubt.drawModel(compiled.model, random, { tests: of })],
  ['diagnosability affordable', numbers, (affordable) => authoring.diagnosability(compiled, { affordable })],
  ['diagnosability fewCases', finite, (fewCases) => authoring.diagnosability(compiled, { fewCases })],
  ['diagnosability prices', [1, {}, null], (prices) => authoring.diagnosability(compiled, { prices })],
  [
    'whatWouldItTake step',
    [null, {}, { kind: 'x' }, { kind: 'access', access: 1 }],
    (one) => planning.whatWouldItTake(compiled, belief, {}, one),
  ],
  [
    'whatWouldItTake evaluations',
    [...numbers, 1.5],
    (evaluations) => planning.whatWouldItTake(compiled, belief, {}, step, { evaluations }),
  ],
  ['whatWouldItTake signal', signals, (signal) => planning.whatWouldItTake(compiled, belief, {}, step, { signal })],
  [
    'whatWouldItTake onImprove',
    functions,
    (onImprove) => planning.whatWouldItTake(compiled, belief, {}, step, { onImprove }),
  ],
  ['compileCaseProblem limits', numbers, (money) => planning.compileCaseProblem(compiled, belief, {}, { money })],
  ...solverRows('boundedSearch', planning.boundedSearch.solve),
  ...solverRows('replanning', planning.replanning.solve),
  ...solverRows('oneStep', planning.oneStep.solve),
  ...solverRows('exactDynamicProgramming', planning.exactDynamicProgramming.solve),
  ...solverRows('repairOrder', planning.repairOrder.solve),
  ...solverRows('informationPerCost', planning.informationPerCost.solve),
  ...solverRows('boundedSearch.inTurns', (of, options) => planning.boundedSearch.inTurns(of, options) as never),
  ['makeLowerBound signal', signals, (signal) => planning.makeLowerBound(problem, { signal })],
  ['credibleRankingInTurns signal', signals, (signal) => doubt.credibleRankingInTurns(compiled, facts, { signal })],
  ['adviceStabilityInTurns signal', signals, (signal) => doubt.adviceStabilityInTurns(compiled, facts, {}, { signal })],
  ['adviceFlipsInTurns signal', signals, (signal) => doubt.adviceFlipsInTurns(compiled, facts, {}, { signal })],
  ...solverRows('improvingSolutions', (of, options) => planning.improvingSolutions(of, options) as never),
  ['expectimax depth', [0, ...whole], (depth) => planning.makeExpectimax({ depth })],
  ['expectimax width', [0, 1.5, ...numbers], (width) => planning.makeExpectimax({ depth: 1, width })],
  ['writePlan depth', [0, 1.5, ...numbers], (depth) => planning.writePlan(problem, solution, { depth })],
  ['writePlan leastLooked', [1.5, ...numbers], (leastLooked) => planning.writePlan(problem, solution, { leastLooked })],
  [
    'writePlan leastProbability',
    [1.1, ...finite],
    (leastProbability) => planning.writePlan(problem, solution, { leastProbability }),
  ],
  [
    'costOfPolicy leastProbability',
    [1.1, ...finite],
    (leastProbability) => planning.costOfPolicy(problem, solution.policy, { leastProbability }),
  ],
  ['costOfPolicy from', [1, null, {}], (from) => planning.costOfPolicy(problem, solution.policy, { from })],
  ['takeAction test', [...whole, 1], (of) => planning.takeAction(problem, problem.start, { kind: 'test', test: of })],
  [
    'takeAction repair',
    [...whole, 1],
    (of) => planning.takeAction(problem, problem.start, { kind: 'repair', repair: of }),
  ],
  ['takeAction kind', [1, 'burn', null], (kind) => planning.takeAction(problem, problem.start, { kind } as never)],
  ['compileTableProblem prior', [...finite, 0.5], (p) => planning.compileTableProblem({ ...tables, prior: [p, 0.4] })],
  [
    'compileTableProblem outcome',
    [...finite, 0.5],
    (p) =>
      planning.compileTableProblem({
        ...tables,
        tests: [
          {
            id: 't',
            cost: 1,
            outcomeGivenCause: [
              [p, 0.1],
              [0.2, 0.8],
            ],
          },
        ],
      }),
  ],
  [
    'compileTableProblem cost',
    finite,
    (cost) => planning.compileTableProblem({ ...tables, repairs: [{ id: 'r', cost, cures: [1, 0] }] }),
  ],
  [
    'compileTableProblem cures',
    [[1], [1, 2], [NaN, 0], 1],
    (cures) => planning.compileTableProblem({ ...tables, repairs: [{ id: 'r', cost: 1, cures }] }),
  ],
  [
    'compileTableProblem access',
    [0, ...whole],
    (access) => planning.compileTableProblem({ ...tables, repairs: [{ id: 'r', cost: 1, cures: [1, 0], access }] }),
  ],
  [
    'compileTableProblem requires',
    [0, ...whole],
    (at) => planning.compileTableProblem({ ...tables, access: [{ cost: 1, requires: [at] }] }),
  ],
  [
    'compileTableProblem referralCost',
    finite,
    (cost) => planning.compileTableProblem({ ...tables, referralCost: [cost, 1] }),
  ],
  [
    'compileTableProblem needlessOpening',
    finite,
    (needlessOpening) => planning.compileTableProblem({ ...tables, needlessOpening } as never),
  ],
  [
    'compileTableProblem opensEngine',
    [1, 'yes', null],
    (opensEngine) => planning.compileTableProblem({ ...tables, access: [{ cost: 1, opensEngine }] } as never),
  ],
  ['simulate cases', whole, (cases) => simulation.simulate({ ...plan, cases })],
  ['simulate first', whole, (first) => simulation.simulate({ ...plan, first })],
  ['simulate seed', [...notNumbers, Infinity], (seed) => simulation.simulate({ ...plan, seed })],
  ['simulate part of', [0, ...whole], (of) => simulation.simulate({ ...plan, part: { index: 0, of } })],
  ['simulate part index', [2, ...whole], (index) => simulation.simulate({ ...plan, part: { index, of: 2 } })],
  ['simulate prepare', functions, (prepare) => simulation.simulate({ ...plan, prepare })],
  ['convertUnit value', [...notNumbers, Infinity], (value) => readings.convertUnit('pressure', value, 'bar', 'psi')],
  ['resistanceAt20 resistance', finite, (r) => readings.resistanceAt20(r, 20)],
  ['resistanceAt20 temperature', [...notNumbers, -235, Infinity], (t) => readings.resistanceAt20(1, t)],
  ['misfireShare misfires', finite, (n) => readings.misfireShare(n, 1000, 4)],
  ['misfireShare revolutions', [0, ...finite], (n) => readings.misfireShare(5, n, 4)],
  ['misfireShare cylinders', [0, ...whole], (n) => readings.misfireShare(5, 1000, n)],
  ['storedAverage counts', finite, (n) => codes.storedAverage([n])],
  ['storedAverage before', finite, (n) => codes.storedAverage([1], n)],
  ['countsOfMonitors covers', ['all', 1, null], (covers) => codes.countsOfMonitors([], covers)],
  [
    'observationsFromCodes suspect',
    [0, 5, ...whole],
    (suspectCylinder) => codes.observationsFromCodes(compiled, [], { ...engine, suspectCylinder }),
  ],
  [
    'observationsFromCodes cylinders',
    [0, 999_999, ...whole],
    (cylinders) => codes.observationsFromCodes(compiled, [], { ...engine, cylinders }),
  ],
  [
    'observationsFromCodes bank',
    [0, 3, ...notNumbers],
    (bank) => codes.observationsFromCodes(compiled, [], { ...engine, bank }),
  ],
  [
    'observationsFromCodes coil',
    [0, ...whole],
    (A) => codes.observationsFromCodes(compiled, [], { ...engine, cylinderOfCoil: { A } }),
  ],
  [
    'actionThresholds benefit',
    [0, ...numbers.filter((x) => typeof x === 'number')],
    (benefit) => planning.actionThresholds({ benefit, loss: 1, sensitivity: 1, falsePositiveRate: 0 }),
  ],
];

const kernelRows: readonly Row[] = [
  [
    'defineNetwork rowTolerance',
    finite,
    (rowTolerance) => kernel.defineNetwork({ variables: [{ name: 'a', states: ['y'], table: [1] }] }, { rowTolerance }),
  ],
  [
    'compileNetwork memoryLimitBytes',
    numbers,
    (memoryLimitBytes) => kernel.compileNetwork(network, { memoryLimitBytes }),
  ],
  ['compileNetwork restarts', numbers, (restarts) => kernel.compileNetwork(network, { search: { restarts } })],
  ['compileNetwork share', numbers, (share) => kernel.compileNetwork(network, { search: { share } })],
  ['compileEach memoryLimitBytes', numbers, (memoryLimitBytes) => compileEach(network, 'a', { memoryLimitBytes })],
  [
    'compileSweep memoryLimitBytes',
    numbers,
    (memoryLimitBytes) => compileSweep(network, { root: 'a', memoryLimitBytes }),
  ],
  ['mostProbableExplanations count', numbers, (count) => mostProbableExplanations(tree, {}, count)],
  ['createRandom', [...notNumbers, undefined, Infinity], (seed) => kernelRandom(seed)],
  ['setFinding variable', [...whole, 1], (v) => kernel.setFinding(kernel.createPropagation(tree), v, 0)],
  [
    'setFinding state',
    [NaN, '1', null, {}, -2, 2, 0.5, Infinity],
    (s) => kernel.setFinding(kernel.createPropagation(tree), 0, s),
  ],
  [
    'setLikelihood variable',
    [...whole, 1],
    (v) => kernel.setLikelihood(kernel.createPropagation(tree), v, Float64Array.of(1, 1), 0),
  ],
  [
    'setLikelihood weights',
    [null, [], [1], [NaN, 1], [-1, 1], [2, 1], [1, 1, 1]],
    (w) => kernel.setLikelihood(kernel.createPropagation(tree), 0, w, 0),
  ],
  [
    'setLikelihood logScale',
    [NaN, Infinity],
    (log) => kernel.setLikelihood(kernel.createPropagation(tree), 0, Float64Array.of(1, 1), log),
  ],
  ['propagateTo variable', [...whole, 1], (v) => kernel.propagateTo(kernel.createPropagation(tree), v)],
];

/** What came of asking: an error of ours, by its class; 'accepted'; anything else is thrown on. */
function outcome(
  kind: abstract new (...args: never[]) => Error & { readonly path: string },
  ask: () => unknown,
): string {
  try {
    ask();
    return 'accepted';
  } catch (error) {
    if (!(error instanceof kind)) throw error;
    expect(error.path).toMatch(/^(\/.*)?$/);
    return 'refused';
  }
}

describe.each([
  ['core', rows, core.FaultoddsError],
  ['inference', kernelRows, kernel.InferenceError],
] as const)('%s', (_, table, kind) => {
  test.each(table)('%s', (what, wrong, ask) => {
    for (const value of wrong) {
      expect(
        outcome(kind, () => ask(value as never)),
        `${what}: ${String(JSON.stringify(value) ?? value)}`,
      ).toBe('refused');
    }
  });
});

test('what is right is accepted: budgets without limit, nothing left over, an AbortSignal', () => {
  const { signal } = new AbortController();
  expect(planning.exactDynamicProgramming.solve(problem, { steps: Infinity, signal }).progress.certifiedGap).toBe(0);
  expect(planning.oneStep.solve(problem, { steps: 0 }).progress.steps).toBe(0);
  expect(planning.writePlan(problem, solution, { depth: Infinity, leastProbability: 0 }).format).toBe('faultodds-plan');
  expect(doubt.credibleRanking(compiled, facts, { draws: 1, seed: -3.5, signal }).draws).toBe(1);
  expect([...simulation.simulate({ ...plan, part: { index: 1, of: 2 } })].length).toBeLessThanOrEqual(1);
});
