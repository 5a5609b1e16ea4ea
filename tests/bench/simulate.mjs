// Simulates invented cases under each policy, in worker threads. Run after `npm run build`:
//   node tests/bench/simulate.mjs [cases per policy, default 10000; slow policies a tenth] [seed, default 1] [demo case whose intake answers are taken, default demo-07]
// Half of the cases are drawn from the model itself, half from models drawn within its own uncertainty (20 of them) while the model is
// believed. Prints a progress line and a table; writes tests/bench/results/simulation.json and simulation.svg.
// What comes out is a property of this model, not of the world.
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import * as core from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';

const TRUTHS = 20;
// opening and closing that take longer than this count as opening the engine (valve cover, front cover, head, pan, gearbox ...)
const BIG_MINUTES = 100;
const USUAL_PARTS = ['replace-plug-set', 'replace-coil', 'replace-injector'];
const policies = {
  'parts-swapping': core.partsSwapping(USUAL_PARTS),
  'repair-order': core.repairOrder,
  'information-per-cost': core.informationPerCost,
  'one-step': core.oneStep,
  'expectimax-2': core.expectimax({ depth: 2, width: 3 }),
  replanning: core.replanning,
};
const BASELINE = 'one-step';
// policies that examine many places at every decision get a tenth of the cases
const SLOW = ['expectimax-2', 'replanning'];

if (isMainThread) await lead();
else work();

function prepareCase(name) {
  const compiled = core.compileModel(core.parseModel(misfire));
  const document = demoCases.find(({ id }) => id === name);
  const facts = { context: core.factsOf(core.caseState(core.loadCase(compiled, document))).context, observations: [] };
  const belief = core.updateBelief(compiled, facts);
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
  const truths = new Map();
  const truthOf = (index) => {
    if (!truths.has(index)) {
      truths.set(index, core.drawTruth(compiled.model, facts, {}, core.seededRandom(seed * 1000 + index)));
    }
    return truths.get(index);
  };
  parentPort.on('message', ({ policy, cases }) => {
    const prepare = () => {
      const problem = core.problemOfCase(compiled, belief);
      return { problem, decide: policies[policy].solve(problem).policy };
    };
    const decided = new Map();
    const run = (plan) => {
      const rows = [];
      for (const row of core.simulate({ policy, prepare, seed, bigAccess, decided, ...plan })) {
        rows.push(row);
        if (rows.length % 20 === 0) parentPort.postMessage({ kind: 'progress', done: 20 });
      }
      parentPort.postMessage({ kind: 'progress', done: rows.length % 20 });
      return rows;
    };
    const half = Math.floor(cases / 2);
    const own = run({ cases: half });
    const drawn = [];
    for (let index = 0; index < TRUTHS; index += 1) {
      // a policy with fewer cases has the first ones of every truth, so that policies can be compared case by case
      const first = 1_000_000 * (index + 1);
      drawn.push(...run({ first, cases: Math.ceil(half / TRUTHS), truth: truthOf(index) }));
    }
    parentPort.postMessage({
      kind: 'done',
      policy,
      own: core.summariseRuns(own)[0],
      drawn: core.summariseRuns(drawn)[0],
      costs: [own, drawn].map((rows) => rows.map(({ number, cost }) => [number, cost])),
    });
  });
  parentPort.postMessage({ kind: 'ready' });
}

async function lead() {
  const [cases = 10_000, seed = 1] = process.argv.slice(2, 4).map(Number);
  const name = process.argv[4] ?? 'demo-07';
  const started = Date.now();
  // the slow ones first, so that both cores stay busy
  const waiting = Object.keys(policies).reverse();
  const casesOf = (policy) => (SLOW.includes(policy) ? Math.ceil(cases / 10) : cases);
  const all = waiting.reduce((sum, policy) => sum + casesOf(policy), 0);
  const results = new Map();
  let done = 0;
  const workers = Array.from(
    { length: Math.min(waiting.length, availableParallelism()) },
    () => new Worker(fileURLToPath(import.meta.url), { workerData: { name, seed } }),
  );
  await Promise.all(
    workers.map(
      (worker) =>
        new Promise((resolve, reject) => {
          const next = () => {
            const policy = waiting.shift();
            if (policy === undefined) resolve(worker.terminate());
            else worker.postMessage({ policy, cases: casesOf(policy) });
          };
          worker.on('error', reject);
          worker.on('message', (message) => {
            if (message.kind === 'progress') {
              done += message.done;
              process.stderr.write(`\r${bar(done / all)} ${done} of ${all} cases`);
              return;
            }
            if (message.kind === 'done') results.set(message.policy, message);
            next();
          });
        }),
    ),
  );
  process.stderr.write('\n');
  const seconds = (Date.now() - started) / 1000;
  const rows = Object.keys(policies).map((policy) => {
    const { own, drawn, costs } = results.get(policy);
    const [ownDifference, drawnDifference] = costs.map((list, at) => difference(list, results.get(BASELINE).costs[at]));
    return {
      policy,
      fromTheModel: { ...own, againstOneStep: ownDifference },
      fromModelsAsPlausible: { ...drawn, againstOneStep: drawnDifference },
    };
  });
  print(rows, seconds, cases, seed, name);
  const folder = new URL('./results/', import.meta.url);
  mkdirSync(folder, { recursive: true });
  const note =
    'Invented cases drawn from the model and from models drawn within its uncertainty: a property of this model, not of the world.';
  const table = { note, intake: name, seed, drawnModels: TRUTHS, unit: misfire.currencyUnit, policies: rows };
  writeFileSync(new URL('simulation.json', folder), `${JSON.stringify(table, undefined, 2)}\n`);
  writeFileSync(new URL('simulation.svg', folder), plot(rows, note));
}

/** Mean difference of cost on the cases that both ran, with its standard error. */
function difference(costs, baseline) {
  const known = new Map(baseline);
  const all = costs.flatMap(([number, cost]) => (known.has(number) ? [cost - known.get(number)] : []));
  const mean = all.reduce((a, b) => a + b, 0) / all.length;
  const variance = all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / Math.max(1, all.length - 1);
  return { cases: all.length, mean, standardError: Math.sqrt(variance / all.length) };
}

function bar(share) {
  const full = Math.round(share * 30);
  return `${'#'.repeat(full)}${'.'.repeat(30 - full)}`;
}

function print(rows, seconds, cases, seed, name) {
  console.log(`${cases} cases per policy, seed ${seed}, intake of ${name}, ${seconds.toFixed(0)} s`);
  console.table(
    rows.flatMap(({ policy, fromTheModel, fromModelsAsPlausible }) =>
      [
        ['model', fromTheModel],
        ['drawn models', fromModelsAsPlausible],
      ].map(([truth, one]) => ({
        policy,
        truth,
        cases: one.cases,
        mean: `${one.meanCost.toFixed(0)} ± ${one.standardError.toFixed(0)}`,
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

function plot(rows, note) {
  const most = Math.max(...rows.map(({ fromTheModel }) => fromTheModel.ninetiethPercentileCost));
  const x = (cost) => 170 + (cost / most) * 520;
  const lines = rows.map(({ policy, fromTheModel: one, fromModelsAsPlausible: drawn }, at) => {
    const y = 46 + at * 34;
    return [
      `<text x="160" y="${y + 4}" text-anchor="end">${policy}</text>`,
      `<line x1="${x(one.medianCost)}" x2="${x(one.ninetiethPercentileCost)}" y1="${y}" y2="${y}" stroke="currentColor" stroke-opacity="0.4" stroke-width="3"/>`,
      `<circle cx="${x(one.meanCost)}" cy="${y}" r="5" fill="currentColor"><title>mean ${one.meanCost.toFixed(0)}</title></circle>`,
      `<circle cx="${x(drawn.meanCost)}" cy="${y}" r="5" fill="none" stroke="currentColor"><title>mean ${drawn.meanCost.toFixed(0)} on drawn models</title></circle>`,
      `<text x="${x(one.meanCost)}" y="${y - 9}" text-anchor="middle" font-size="10">${one.meanCost.toFixed(0)}</text>`,
    ].join('');
  });
  const height = 70 + rows.length * 34;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 720 ${height}" role="img" font-family="sans-serif" font-size="12" fill="currentColor"><title>Cost to a confirmed repair under each policy</title><text x="16" y="20" font-size="11">Cost to a confirmed repair: dot mean (ring: on drawn models), line from median to nine in ten</text>${lines.join('')}<text x="16" y="${height - 10}" font-size="9">${note}</text></svg>\n`;
}
