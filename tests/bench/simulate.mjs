// Simulates invented cases under each policy, in worker threads. Run after `npm run build`:
//   node tests/bench/simulate.mjs [cases per policy in all, default 10000] [seed, default 1] [workers, default one per core]
// The cases are spread evenly over the intakes of the twelve worked cases. Every second case happens in the model itself, the others in one
// of 20 models drawn within its own uncertainty while the model is believed. A case has the same engine with the same cause under every
// policy (common random numbers): differences are of pairs. The frontier between cost and needless openings is a tenth of the cases, with
// several amounts that a needless opening counts for. Prints a progress line and tables with the time every policy took (work of all
// workers); writes tests/bench/results/simulation.json, .csv (one line per policy and world) and .svg. The rows do not depend on how many
// workers there are. What comes out is a property of this model, not of the world.
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import * as core from '@faultodds/core';
import * as doubt from '@faultodds/core/doubt';
import * as planning from '@faultodds/core/planning';
import * as simulation from '@faultodds/core/simulation';
import { demoCases, misfire } from '@faultodds/misfire';
import { plotOfPolicies } from './plotOfPolicies.mjs';

const TRUTHS = 20;
const USUAL_PARTS = ['replace-plug-set', 'replace-coil', 'replace-injector'];
const BASELINE = 'one-step';
/** What a needless opening counts for, in the model's unit; the model's own amount is the policy itself. */
const AMOUNTS = [0, 100, 400, 1000];
const FRONTIER_SHARE = 0.1;
/** `decide` gets the compiled model, facts, circumstances and problem. */
const policies = {
  'parts-swapping': (_compiled, _facts, _circumstances, problem) =>
    simulation.makePartsSwapping(USUAL_PARTS).solve(problem).policy,
  'one-step': simulation.makeAdvicePolicy,
  settled: simulation.makeSettledPolicy,
};

if (isMainThread) await lead();
else work();

function prepareCase(compiled, name) {
  const document = demoCases.find(({ id }) => id === name);
  const facts = { context: core.factsOf(core.caseState(core.loadCase(compiled, document))).context, observations: [] };
  return { facts, belief: core.beliefOf(compiled, facts) };
}

function work() {
  const { seed } = workerData;
  const compiled = core.compileModel(core.parseModel(misfire));
  const prices = core.defaultPrices(compiled.model);
  parentPort.on('message', ({ policy, amount, intake, first, cases }) => {
    const started = process.cpuUsage();
    const { facts, belief } = prepareCase(compiled, intake);
    const circumstances = amount === undefined ? {} : { prices: { ...prices, needlessOpening: amount } };
    const own = simulation.makeTruthOfModel(compiled, facts);
    const drawn = new Map();
    const truthOf = (number) => {
      if (number % 2 === 0) return own;
      const at = (number >> 1) % TRUTHS;
      if (!drawn.has(at)) {
        const random = doubt.createRandom(seed * 1000 + at);
        drawn.set(at, simulation.drawTruth(compiled, facts, {}, random, `drawn-${at + 1}`));
      }
      return drawn.get(at);
    };
    let states = 0;
    const prepare = () => {
      const problem = planning.compileCaseProblem(compiled, belief, circumstances);
      const decide = policies[policy](compiled, facts, circumstances, problem);
      return {
        problem,
        decide: (state) => {
          states += 1;
          return decide(state);
        },
      };
    };
    const rows = [];
    let told = 0;
    const tell = () => {
      parentPort.postMessage({ kind: 'progress', done: rows.length - told });
      told = rows.length;
    };
    for (const row of simulation.simulate({ policy, prepare, truthOf, first, cases, seed })) {
      rows.push({ ...row, intake });
      if (rows.length - told >= 10) tell();
    }
    tell();
    const { user, system } = process.cpuUsage(started);
    parentPort.postMessage({ kind: 'done', policy, amount, rows, states, seconds: (user + system) / 1e6 });
  });
  parentPort.postMessage({ kind: 'ready' });
}

/** The cases of a policy, in equal parts of even size over the intakes: each has numbers of its own. */
function tasksOf(policy, amount, cases) {
  const each = Math.ceil(cases / demoCases.length);
  return demoCases.flatMap(({ id: intake }, at) => {
    const count = Math.max(0, Math.min(each, cases - at * each));
    // the same engines however many there are of them
    const first = at * 1_000_000;
    return count === 0 ? [] : [{ policy, amount, intake, first, cases: count }];
  });
}

async function lead() {
  const [cases = 10_000, seed = 1] = process.argv.slice(2, 4).map(Number);
  const count = Number(process.argv[4] ?? availableParallelism());
  const started = Date.now();
  const few = Math.ceil(cases * FRONTIER_SHARE);
  // the costly ones first
  const tasks = [
    ...tasksOf('settled', undefined, cases),
    ...AMOUNTS.flatMap((amount) => tasksOf('settled', amount, few)),
    ...tasksOf('one-step', undefined, cases),
    ...AMOUNTS.flatMap((amount) => tasksOf('one-step', amount, few)),
    ...tasksOf('parts-swapping', undefined, cases),
  ];
  const all = tasks.reduce((sum, task) => sum + task.cases, 0);
  const keyOf = (policy, amount) => `${policy}@${amount ?? 'default'}`;
  const found = new Map();
  let done = 0;
  let shownAt = 0;
  const show = () => {
    const now = Date.now();
    if (now - shownAt < 200 && done < all) return;
    shownAt = now;
    process.stderr.write(process.stderr.isTTY ? `\r${bar(done / all)} ${done} of ${all} cases` : '');
  };
  const workers = Array.from(
    { length: Math.min(tasks.length, count) },
    () => new Worker(fileURLToPath(import.meta.url), { workerData: { seed } }),
  );
  await Promise.all(
    workers.map(
      (worker) =>
        new Promise((resolve, reject) => {
          const next = () => {
            const task = tasks.shift();
            if (task === undefined) resolve(worker.terminate());
            else worker.postMessage(task);
          };
          worker.on('error', reject);
          worker.on('message', (message) => {
            if (message.kind === 'progress') {
              done += message.done;
              show();
              return;
            }
            if (message.kind === 'done') {
              const key = keyOf(message.policy, message.amount);
              const { rows = [], states = 0, seconds = 0 } = found.get(key) ?? {};
              found.set(key, {
                rows: [...rows, ...message.rows],
                states: states + message.states,
                seconds: seconds + message.seconds,
              });
            }
            next();
          });
        }),
    ),
  );
  process.stderr.write('\n');
  const seconds = (Date.now() - started) / 1000;
  const machine = {
    cores: cpus().length,
    processor: cpus()[0]?.model,
    load: loadavg()[0],
    seconds,
    workers: workers.length,
  };
  const summary = (key, select, baseline) => {
    const ofPolicy = found.get(key).rows.filter(select);
    return {
      ...simulation.summariseRuns(ofPolicy)[0],
      againstOneStep: difference(ofPolicy, found.get(baseline).rows.filter(select)),
    };
  };
  const isOwn = ({ truth }) => truth === 'as-believed';
  const baseline = keyOf(BASELINE);
  const rows = Object.keys(policies).map((policy) => {
    const key = keyOf(policy);
    return {
      policy,
      states: found.get(key).states,
      seconds: found.get(key).seconds,
      allCases: summary(key, () => true, baseline),
      fromTheModel: summary(key, isOwn, baseline),
      fromModelsAsPlausible: summary(key, (row) => !isOwn(row), baseline),
    };
  });
  const intakes = demoCases.map(({ id }) => ({
    intake: id,
    policies: Object.fromEntries(
      Object.keys(policies).map((policy) => [policy, summary(keyOf(policy), ({ intake }) => intake === id, baseline)]),
    ),
  }));
  const own = misfire.needlessOpening.best;
  // the cases that all amounts ran
  const shared = new Set(found.get(keyOf(BASELINE, AMOUNTS[0])).rows.map(({ number }) => number));
  const frontier = ['one-step', 'settled'].flatMap((policy) =>
    [...AMOUNTS.map((amount) => ({ amount, key: keyOf(policy, amount) })), { amount: own, key: keyOf(policy) }]
      .sort((a, b) => a.amount - b.amount)
      .map(({ amount, key }) => {
        const rows = found.get(key).rows.filter(({ number }) => shared.has(number));
        return { needlessOpening: amount, ...simulation.summariseRuns(rows)[0] };
      }),
  );
  print(rows, frontier, cases, seed, machine);
  const folder = new URL('./results/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  const note =
    'Invented cases drawn from the model and from models drawn within its uncertainty: a property of this model, not of the world.';
  const table = {
    note,
    seed,
    cases,
    needlessOpening: own,
    drawnModels: TRUTHS,
    unit: misfire.currencyUnit,
    machine,
    policies: rows,
    intakes,
    frontier,
  };
  writeFileSync(new URL('simulation.json', folder), `${JSON.stringify(table, undefined, 2)}\n`);
  writeFileSync(new URL('simulation.csv', folder), asCsv(rows));
  writeFileSync(new URL('simulation.svg', folder), plotOfPolicies(rows, note));
}

/** Mean differences on the cases that both ran, with standard errors and 95 % intervals (normal: thousands of pairs). */
function difference(rows, baseline) {
  const known = new Map(baseline.map((row) => [row.number, row]));
  const pairs = rows.flatMap((row) => (known.has(row.number) ? [[row, known.get(row.number)]] : []));
  const of = (value) => {
    const all = pairs.map(([a, b]) => value(a) - value(b));
    const mean = all.reduce((a, b) => a + b, 0) / all.length;
    const variance = all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / Math.max(1, all.length - 1);
    const standardError = Math.sqrt(variance / all.length);
    return { mean, standardError, low: mean - 1.96 * standardError, high: mean + 1.96 * standardError };
  };
  return {
    cases: pairs.length,
    cost: of(({ cost }) => cost),
    needlessOpenings: of(({ needlessOpenings }) => needlessOpenings),
    referred: of(({ end }) => Number(end === 'referred')),
  };
}

function bar(share) {
  const full = Math.round(share * 30);
  return `${'#'.repeat(full)}${'.'.repeat(30 - full)}`;
}

function worlds({ allCases, fromTheModel, fromModelsAsPlausible }) {
  return [
    ['all', allCases],
    ['model', fromTheModel],
    ['drawn models', fromModelsAsPlausible],
  ];
}

function print(rows, frontier, cases, seed, { seconds, load, cores, workers }) {
  console.log(
    `${cases} cases per policy over ${demoCases.length} intakes, seed ${seed}: ${seconds.toFixed(0)} s, ${workers} workers on ${cores} cores, load ${load.toFixed(1)}`,
  );
  console.table(
    rows.flatMap((row) =>
      worlds(row).map(([world, one]) => ({
        policy: row.policy,
        world,
        cases: one.cases,
        states: row.states,
        'processor seconds': row.seconds.toFixed(0),
        mean: `${one.meanCost.toFixed(0)} (${one.meanLow.toFixed(0)}-${one.meanHigh.toFixed(0)})`,
        'against one step, same cases': `${one.againstOneStep.cost.mean.toFixed(0)} ± ${one.againstOneStep.cost.standardError.toFixed(0)}`,
        median: one.medianCost.toFixed(0),
        'nine in ten': one.ninetiethPercentileCost.toFixed(0),
        'needless openings in 100': (100 * one.needlessOpeningsPerCase).toFixed(1),
        'wrong repairs': one.wrongRepairsPerCase.toFixed(2),
        steps: one.stepsPerCase.toFixed(1),
        referred: one.referredShare.toFixed(2),
      })),
    ),
  );
  console.log('What a needless opening counts for, against cost and openings (a tenth of the cases)');
  console.table(
    frontier.map((one) => ({
      policy: one.policy,
      amount: one.needlessOpening,
      cases: one.cases,
      mean: `${one.meanCost.toFixed(0)} (${one.meanLow.toFixed(0)}-${one.meanHigh.toFixed(0)})`,
      'needless openings in 100': (100 * one.needlessOpeningsPerCase).toFixed(1),
      referred: one.referredShare.toFixed(2),
    })),
  );
}

function asCsv(rows) {
  const columns = [
    'cases',
    'meanCost',
    'meanLow',
    'meanHigh',
    'standardError',
    'medianCost',
    'ninetiethPercentileCost',
    'needlessOpeningsPerCase',
    'wrongRepairsPerCase',
    'stepsPerCase',
    'referredShare',
  ];
  const lines = rows.flatMap((row) =>
    worlds(row).map(([world, one]) => [row.policy, world, ...columns.map((column) => one[column])].join(',')),
  );
  return `${[['policy', 'world', ...columns].join(','), ...lines].join('\r\n')}\r\n`;
}
