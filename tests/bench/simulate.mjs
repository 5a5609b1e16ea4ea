// Simulates invented cases under each policy, in worker threads. Run after `npm run build`:
//   node tests/bench/simulate.mjs [cases per policy, default 10000] [seed, default 1] [demo case whose intake answers are taken, default demo-07]
//     [workers, default one per core]
// Every second case happens in the model itself, the others in one of 20 models drawn within its own uncertainty while the model is
// believed. All cases of a policy walk down one tree of states together, cut into parts for the workers; the rows do not depend on how
// many workers there are. Prints a progress line and a table with the time every policy took (work of all workers, divided by their
// number); writes tests/bench/results/simulation.json, .csv (one line per policy and world) and .svg.
// What comes out is a property of this model, not of the world.
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
// opening and closing that take longer than this count as opening the engine (valve cover, front cover, head, pan, gearbox ...)
const BIG_MINUTES = 100;
const USUAL_PARTS = ['replace-plug-set', 'replace-coil', 'replace-injector'];
const BASELINE = 'one-step';
/** `decide` gets the compiled model, facts and problem; `parts` is how often the tree is cut; the costly ones stand first. */
const policies = {
  'information-per-cost': { parts: 16, decide: solverPolicy(planning.informationPerCost) },
  replanning: { parts: 16, decide: solverPolicy(planning.replanning) },
  'expectimax-2': { parts: 16, decide: solverPolicy(planning.makeExpectimax({ depth: 2, width: 3 })) },
  'one-step': {
    parts: 4,
    decide: (compiled, facts, problem) => simulation.makeAdvicePolicy(compiled, facts, {}, problem),
  },
  'bounded-search': { parts: 1, decide: solverPolicy(planning.boundedSearch) },
  'repair-order': { parts: 1, decide: solverPolicy(planning.repairOrder) },
  'parts-swapping': { parts: 1, decide: solverPolicy(simulation.makePartsSwapping(USUAL_PARTS)) },
};
const ORDER = [
  'parts-swapping',
  'repair-order',
  'information-per-cost',
  'one-step',
  'expectimax-2',
  'replanning',
  'bounded-search',
];

if (isMainThread) await lead();
else work();

function solverPolicy(solver) {
  return (_compiled, _facts, problem) => solver.solve(problem).policy;
}

function prepareCase(name) {
  const compiled = core.compileModel(core.parseModel(misfire));
  const document = demoCases.find(({ id }) => id === name);
  const facts = { context: core.factsOf(core.caseState(core.loadCase(compiled, document))).context, observations: [] };
  const belief = core.beliefOf(compiled, facts);
  const bigAccess = compiled.model.access.reduce(
    (bits, { id, openMinutes, closeMinutes }) =>
      openMinutes.best + closeMinutes.best > BIG_MINUTES ? bits | compiled.accessBit.get(id) : bits,
    0,
  );
  return { compiled, facts, belief, bigAccess };
}

function work() {
  const { name, seed } = workerData;
  const { compiled, facts, belief, bigAccess } = prepareCase(name);
  const own = simulation.makeTruthOfModel(compiled, facts);
  const drawn = Array.from({ length: TRUTHS }, (_, at) =>
    simulation.drawTruth(compiled, facts, {}, doubt.createRandom(seed * 1000 + at), `drawn-${at + 1}`),
  );
  const truthOf = (number) => (number % 2 === 0 ? own : drawn[(number >> 1) % TRUTHS]);
  parentPort.on('message', ({ policy, cases, part }) => {
    const rows = [];
    const started = Date.now();
    let states = 0;
    let told = 0;
    const prepare = () => {
      const problem = planning.compileCaseProblem(compiled, belief);
      const decide = policies[policy].decide(compiled, facts, problem);
      return {
        problem,
        decide: (state) => {
          states += 1;
          return decide(state);
        },
      };
    };
    for (const row of simulation.simulate({ policy, prepare, truthOf, cases, seed, bigAccess, part })) {
      rows.push(row);
      if (rows.length - told >= 20) {
        parentPort.postMessage({ kind: 'progress', done: rows.length - told });
        told = rows.length;
      }
    }
    parentPort.postMessage({ kind: 'progress', done: rows.length - told });
    parentPort.postMessage({ kind: 'done', policy, rows, states, seconds: (Date.now() - started) / 1000 });
  });
  parentPort.postMessage({ kind: 'ready' });
}

async function lead() {
  const [cases = 10_000, seed = 1] = process.argv.slice(2, 4).map(Number);
  const name = process.argv[4] ?? 'demo-07';
  const count = Number(process.argv[5] ?? availableParallelism());
  const started = Date.now();
  const tasks = Object.entries(policies).flatMap(([policy, { parts }]) =>
    Array.from({ length: parts }, (_, index) => ({ policy, cases, part: { index, of: parts } })),
  );
  const all = Object.keys(policies).length * cases;
  const found = new Map(ORDER.map((policy) => [policy, { rows: [], states: 0, seconds: 0 }]));
  let done = 0;
  let shownAt = 0;
  const show = () => {
    const now = Date.now();
    if (now - shownAt < 200 && done < all) return;
    shownAt = now;
    const line = `${bar(done / all)} ${done} of ${all} cases`;
    process.stderr.write(process.stderr.isTTY ? `\r${line}` : '');
  };
  const workers = Array.from(
    { length: Math.min(tasks.length, count) },
    () => new Worker(fileURLToPath(import.meta.url), { workerData: { name, seed } }),
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
              const { rows, states, seconds } = found.get(message.policy);
              found.set(message.policy, {
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
  const rows = ORDER.map((policy) => {
    const ofModel =
      (isOwn) =>
      ({ rows }) =>
        rows.filter(({ truth }) => (truth === 'as-believed') === isOwn);
    const summary = (select) => {
      const ofPolicy = select(found.get(policy));
      return {
        ...simulation.summariseRuns(ofPolicy)[0],
        againstOneStep: difference(ofPolicy, select(found.get(BASELINE))),
      };
    };
    return {
      policy,
      states: found.get(policy).states,
      seconds: found.get(policy).seconds / workers.length,
      fromTheModel: summary(ofModel(true)),
      fromModelsAsPlausible: summary(ofModel(false)),
    };
  });
  print(rows, cases, seed, name, machine);
  const folder = new URL('./results/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  const note =
    'Invented cases drawn from the model and from models drawn within its uncertainty: a property of this model, not of the world.';
  const table = {
    note,
    intake: name,
    seed,
    cases,
    drawnModels: TRUTHS,
    unit: misfire.currencyUnit,
    machine,
    policies: rows,
  };
  writeFileSync(new URL('simulation.json', folder), `${JSON.stringify(table, undefined, 2)}\n`);
  writeFileSync(new URL('simulation.csv', folder), asCsv(rows));
  writeFileSync(new URL('simulation.svg', folder), plotOfPolicies(rows, note));
}

/** Mean difference of cost on the cases that both ran, with its standard error. */
function difference(rows, baseline) {
  const known = new Map(baseline.map(({ number, cost }) => [number, cost]));
  const all = rows.flatMap(({ number, cost }) => (known.has(number) ? [cost - known.get(number)] : []));
  const mean = all.reduce((a, b) => a + b, 0) / all.length;
  const variance = all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / Math.max(1, all.length - 1);
  return { cases: all.length, mean, standardError: Math.sqrt(variance / all.length) };
}

function bar(share) {
  const full = Math.round(share * 30);
  return `${'#'.repeat(full)}${'.'.repeat(30 - full)}`;
}

function worlds({ fromTheModel, fromModelsAsPlausible }) {
  return [
    ['model', fromTheModel],
    ['drawn models', fromModelsAsPlausible],
  ];
}

function print(rows, cases, seed, name, { seconds, load, cores, workers }) {
  console.log(
    `${cases} cases per policy, seed ${seed}, intake of ${name}: ${seconds.toFixed(0)} s, ${workers} workers on ${cores} cores, load ${load.toFixed(1)}`,
  );
  console.table(
    rows.flatMap((row) =>
      worlds(row).map(([world, one]) => ({
        policy: row.policy,
        world,
        cases: one.cases,
        states: row.states,
        seconds: row.seconds.toFixed(0),
        mean: `${one.meanCost.toFixed(0)} (${one.meanLow.toFixed(0)}-${one.meanHigh.toFixed(0)})`,
        'against one step, same cases': `${one.againstOneStep.mean.toFixed(0)} ± ${one.againstOneStep.standardError.toFixed(0)}`,
        median: one.medianCost.toFixed(0),
        'nine in ten': one.ninetiethPercentileCost.toFixed(0),
        'needless openings': one.needlessOpeningsPerCase.toFixed(3),
        'wrong repairs': one.wrongRepairsPerCase.toFixed(2),
        steps: one.stepsPerCase.toFixed(1),
        referred: one.referredShare.toFixed(2),
      })),
    ),
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
