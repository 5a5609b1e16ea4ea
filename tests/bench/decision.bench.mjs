// Benchmark of the decision solvers. Run after `npm run build`: node tests/bench/decision.bench.mjs [processor seconds per search, default 2]
// 1. Certified gap of the bounded search against time, from every demo case at intake and after three results.
// 2. Cost of each solver's policy against the optimum (exact dynamic programming) on random small problems: mean and worst ratio.
// 3. Time of one-step advice: medians over all demo cases.
// Prints tables, writes tests/bench/results/decision.json with the machine and its load.
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { performance } from 'node:perf_hooks';
import * as core from '@faultodds/core';
import * as planning from '@faultodds/core/planning';
import { demoCases, misfire } from '@faultodds/misfire';
import { randomTables } from '../oracle/decisionRandomTables.mjs';
import { createRandom } from './seeded.mjs';

const SECONDS = Number(process.argv[2] ?? 2);
const MARKS = [0.25, 0.5, 1, 2, 5].filter((mark) => mark <= SECONDS);
const SMALL = 500;
const SEED = 20261125;
const compiled = core.compileModel(core.parseModel(misfire));
const load = loadavg()[0];

const cases = demoCases.flatMap((document) => {
  const facts = core.factsOf(core.caseState(core.loadCase(compiled, document)));
  return [0, 3].map((results) => ({
    id: document.id,
    results,
    facts: { context: facts.context, observations: facts.observations.slice(0, results) },
  }));
});

const search = cases.map(({ id, results, facts }) => {
  const belief = core.beliefOf(compiled, facts);
  const problem = planning.compileCaseProblem(compiled, belief);
  const started = process.cpuUsage();
  // processor time of this process: other work on the machine does not count
  const seconds = () => {
    const { user, system } = process.cpuUsage(started);
    return (user + system) / 1e6;
  };
  const signal = {
    get aborted() {
      return seconds() >= SECONDS;
    },
  };
  const marks = new Map();
  let latest;
  const { progress } = planning.boundedSearch.solve(problem, {
    steps: 1_000_000,
    signal,
    onImprove: (now) => {
      for (const mark of MARKS) {
        if (seconds() > mark && !marks.has(mark)) marks.set(mark, latest?.certifiedGap);
      }
      latest = now;
    },
  });
  for (const mark of MARKS) if (!marks.has(mark)) marks.set(mark, progress.certifiedGap);
  const perfect = planning.repairOrder.solve(problem).progress.lowerBound;
  const one = planning.oneStep.solve(problem).progress.upperBound;
  return {
    case: id,
    results,
    perfectInformation: perfect,
    lowerBound: progress.lowerBound,
    plan: progress.upperBound,
    oneStep: one,
    steps: progress.steps,
    gapAt: Object.fromEntries([...marks].map(([mark, gap]) => [`${mark} s`, gap])),
  };
});

const solvers = [
  planning.repairOrder,
  planning.informationPerCost,
  planning.oneStep,
  planning.makeExpectimax({ depth: 2 }),
  planning.makeExpectimax({ depth: 3 }),
  planning.boundedSearch,
];
const random = createRandom(SEED);
const ratios = new Map(solvers.map(({ id }) => [id, []]));
const bounds = { perfectInformation: 0, pairs: 0 };
for (let at = 0; at < SMALL; at += 1) {
  const problem = planning.compileTableProblem(randomTables(random));
  const optimum = planning.exactDynamicProgramming.solve(problem).progress.upperBound;
  for (const solver of solvers) {
    ratios.get(solver.id).push(planning.costOfPolicy(problem, solver.solve(problem).policy) / optimum);
  }
  bounds.perfectInformation += planning.repairOrder.solve(problem).progress.lowerBound / optimum / SMALL;
  bounds.pairs += planning.makeLowerBound(problem)(problem.start) / optimum / SMALL;
}
const small = [...ratios].map(([solver, all]) => ({
  solver,
  mean: all.reduce((a, b) => a + b, 0) / all.length,
  worst: Math.max(...all),
}));

const advice = cases.map(({ facts }) => {
  const belief = core.beliefOf(compiled, facts);
  const times = Array.from({ length: 7 }, () => {
    const started = performance.now();
    core.advise(compiled, belief);
    return performance.now() - started;
  });
  return median(times);
});

function median(values) {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
}

const percent = (share) => (share === undefined ? '' : `${(100 * share).toFixed(1)}%`);
console.log(
  `${cpus()[0].model}, load ${load.toFixed(1)} on ${cpus().length} cores, Node ${process.version}, seed ${SEED}`,
);
console.table(
  search.map((row) => ({
    case: row.case,
    results: row.results,
    'perfect information': row.perfectInformation.toFixed(0),
    'lower bound': row.lowerBound.toFixed(0),
    plan: row.plan.toFixed(0),
    'one step': row.oneStep.toFixed(0),
    steps: row.steps,
    ...Object.fromEntries(Object.entries(row.gapAt).map(([mark, gap]) => [mark, percent(gap)])),
  })),
);
console.log(`${SMALL} random small problems: cost of each policy / optimum`);
console.table(small.map(({ solver, mean, worst }) => ({ solver, mean: mean.toFixed(4), worst: worst.toFixed(3) })));
console.log(
  `bounds / optimum there: perfect information ${bounds.perfectInformation.toFixed(3)}, with pairs ${bounds.pairs.toFixed(3)}`,
);
console.log(
  `one-step advice: median ${median(advice).toFixed(2)} ms, slowest case ${Math.max(...advice).toFixed(2)} ms`,
);

const folder = new URL('./results/', import.meta.url);
mkdirSync(folder, { recursive: true });
const machine = { cpu: cpus()[0].model, cores: cpus().length, load, node: process.version };
const results = {
  machine,
  seed: SEED,
  search,
  smallProblems: { count: SMALL, policies: small, bounds },
  adviceMs: { median: median(advice), slowest: Math.max(...advice) },
};
writeFileSync(new URL('decision.json', folder), `${JSON.stringify(results, undefined, 2)}\n`);
