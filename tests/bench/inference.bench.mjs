// Benchmark of @faultodds/inference. Run: node tests/bench/inference.bench.mjs [networks,by,name]
// Reads the reference folder ($FAULTODDS_REFERENCE or ../shared/reference), prints a table, writes tests/bench/results/inference.json.
//
// Every comparison is a ratio of two sides timed in the same run, round by round in turn; medians of rounds, spread = (third - first
// quartile) / median. The peer is bayesjs (npm), the baseline the project's first kernel (tests/oracle/bucketElimination.mjs). The
// libDAI, aGrUM and bayesjs columns of the reference's performance-targets.md were measured on another machine; bayesjs is the one side
// both runs share, so ratios to the compiled libraries are also given divided by (bayesjs here / bayesjs there).
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import bayesjs from 'bayesjs';
import { compileEach } from '@faultodds/inference/each';
import { propagateEach } from '../../packages/inference/dist/queries/posteriorGivenEach.js';
import {
  compileNetwork,
  createPropagation,
  defineNetwork,
  propagate,
  propagateTo,
  setFinding,
} from '@faultodds/inference';
import { compileSweep, sweepRoot } from '@faultodds/inference/sweeps';
import { parseBif } from '@faultodds/inference/formats';
import { allPosteriors } from '../oracle/bucketElimination.mjs';
import { hubNetwork } from './hubNetwork.mjs';

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc');
const reference =
  process.env.FAULTODDS_REFERENCE ?? fileURLToPath(new URL('../../../shared/reference', import.meta.url));
if (!existsSync(reference)) {
  console.error(`reference folder not found: ${reference}; nothing was measured`);
  process.exit(2);
}

// performance-targets.md: microseconds, and the smallest sum of clique entries seen there
const published = {
  asia: { libdai: 9.5, libdaiCold: 24, agrum: 115, bayesjs: 1937, plain: 0.66, entries: 40 },
  alarm: { libdai: 55, libdaiCold: 255, agrum: 1267, bayesjs: 185000, plain: 12.9, entries: 1020 },
  insurance: { libdai: 826, libdaiCold: 1389, agrum: 1593, plain: 1057, entries: 29352 },
  hailfinder: { libdai: 226, libdaiCold: 812, agrum: 2359, plain: 300, entries: 9406 },
  win95pts: { libdai: 168, libdaiCold: 1741, agrum: 4609, plain: 43, entries: 2684 },
  hepar2: { libdai: 178, libdaiCold: 1899, agrum: 3710, plain: 60, entries: 2617 },
  andes: { libdai: 7772, libdaiCold: 20545, agrum: 29467, plain: 4720, entries: 345438 },
  pigs: { libdai: 28947, libdaiCold: 98970, agrum: 55022, plain: 26955, entries: 689904 },
  water: { libdai: 96873, libdaiCold: 382308, agrum: 19140, plain: 45464, entries: 3465948 },
};
const six = ['asia', 'alarm', 'insurance', 'hailfinder', 'win95pts', 'hepar2'];
const names = process.argv[2]?.split(',') ?? Object.keys(published);

const quantile = (sorted, q) => sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];
const summary = (times) => {
  const sorted = [...times].sort((a, b) => a - b);
  const median = quantile(sorted, 0.5);
  return {
    median,
    best: sorted[0],
    spread: (quantile(sorted, 0.75) - quantile(sorted, 0.25)) / median,
    rounds: sorted.length,
  };
};
const clock = (work) => {
  const start = performance.now();
  work();
  return (performance.now() - start) * 1000;
};
/** Times several sides in turn, round by round. Each side: { run(round), batch }: `batch` calls are timed together. */
const alternate = (sides, seconds, warmUp = 0.3) => {
  const times = Object.fromEntries(Object.keys(sides).map((key) => [key, []]));
  const started = performance.now();
  for (let round = 0; ; round += 1) {
    for (const [key, { run, batch }] of Object.entries(sides)) {
      const spent = clock(() => {
        for (let k = 0; k < batch; k += 1) run(round * batch + k);
      });
      if (performance.now() - started > warmUp * seconds * 1000 || round < 1) times[key].push(spent / batch);
      if (round === 0) times[key].length = 0;
    }
    if (performance.now() - started > seconds * 1000 && round >= 4) break;
  }
  return Object.fromEntries(Object.entries(times).map(([key, list]) => [key, summary(list)]));
};
const geometricMean = (list) => Math.exp(list.reduce((sum, value) => sum + Math.log(value), 0) / list.length);

const results = {
  machine: { node: process.version, cpu: cpus()[0]?.model, cores: cpus().length, load: loadavg()[0] },
  networks: {},
};
// answers are used, and kept where keeping them allocates nothing
const sink = new Float64Array(1);

for (const name of names) {
  const network = defineNetwork(parseBif(readFileSync(join(reference, 'networks', `${name}.bif`), 'utf8')));
  const cases = JSON.parse(readFileSync(join(reference, 'posteriors', `${name}.json`), 'utf8')).cases.filter(
    (one) => Object.keys(one.evidence).length === 3,
  );
  const findings = cases.map((one) =>
    Object.entries(one.evidence).map(([key, state]) => [
      network.indexOf.get(key),
      network.variables[network.indexOf.get(key)].states.indexOf(state),
    ]),
  );
  const compiled = compileNetwork(network);
  const workspace = createPropagation(compiled);
  // retracts what the last case observed and this one does not
  const give = (space, last, list) => {
    for (let k = 0; k < last.length; k += 1) setFinding(space, last[k][0], -1);
    for (let k = 0; k < list.length; k += 1) setFinding(space, list[k][0], list[k][1]);
  };
  // new evidence every time: the three cases in turn
  const warm = (round) => {
    give(workspace, findings[(round + 2) % 3], findings[round % 3]);
    propagate(workspace);
    sink[0] += workspace.logEvidence[0] + workspace.marginals[0];
  };
  // the same with every message forgotten: all that new evidence can reach is computed anew, in both directions. What compiling made (tables
  // calibrated without evidence) and the loops written for it stay
  const forgetful = createPropagation(compiled);
  const forgotten = (round) => {
    forgetful.stale.fill(3);
    give(forgetful, findings[(round + 2) % 3], findings[round % 3]);
    propagate(forgetful);
    sink[0] += forgetful.logEvidence[0] + forgetful.marginals[0];
  };
  // each case in a workspace of its own, its second finding moved from state to state, the three cases in turn
  const moving = findings.map((list) => {
    const space = createPropagation(compiled);
    give(space, [], list);
    const [moved] = list[1];
    const possible = Array.from(network.variables[moved].states, (_, state) => state).filter((state) => {
      setFinding(space, moved, state);
      return propagate(space);
    });
    // where one state alone is possible the finding is taken back and given again
    const states = possible.length > 1 ? possible : [...possible, -1];
    const asked = list[0][0] === 0 ? 1 : 0;
    const next = (turn) => setFinding(space, moved, states[turn % states.length]);
    return { space, asked, next };
  });
  const large = compiled.prior.length > 100_000;
  const batch = Math.max(1, Math.min(100, Math.floor(20_000 / compiled.prior.length)));
  const times = alternate(
    {
      warm: { run: warm, batch },
      forgotten: { run: forgotten, batch },
      oneChangedAll: {
        run: (round) => {
          const { space, next } = moving[round % 3];
          next(Math.floor(round / 3));
          propagate(space);
          sink[0] += space.logEvidence[0];
        },
        batch,
      },
      oneChangedOne: {
        run: (round) => {
          const { space, asked, next } = moving[round % 3];
          next(Math.floor(round / 3));
          propagateTo(space, asked);
          sink[0] += space.logEvidence[0];
        },
        batch,
      },
    },
    large ? 6 : 2,
  );
  // apart: building everything anew empties the caches that warm calls live on
  const { cold } = alternate(
    {
      cold: {
        run: (round) => {
          const fresh = createPropagation(compileNetwork(network));
          for (const [v, state] of findings[round % 3]) setFinding(fresh, v, state);
          propagate(fresh);
          sink[0] += fresh.logEvidence[0];
        },
        batch: 1,
      },
    },
    large ? 6 : 2,
  );
  // heap: no garbage is collected within so few queries, so growth is what they allocated
  const queries = large ? 20 : 3000;
  // once through everything first: what the runtime allocates while it compiles is not the kernel's
  for (let k = 0; k < 2 * queries; k += 1) warm(k);
  collectGarbage();
  const before = process.memoryUsage().heapUsed;
  for (let k = 0; k < queries; k += 1) warm(k);
  const heapBytes = Math.max(0, process.memoryUsage().heapUsed - before) / queries;

  const entries = compiled.tree.cliqueEntries;
  const row = { entries, entriesRatio: entries / published[name].entries, ...times, cold, heapBytes };
  if (['asia', 'alarm', 'insurance', 'win95pts'].includes(name)) {
    const reps = alternate(
      {
        warm: { run: warm, batch },
        firstKernel: {
          run: (round) => (sink[0] += allPosteriors(network, findings[round % 3]).logProbability),
          batch: 1,
        },
      },
      name === 'asia' ? 1 : 4,
    );
    row.firstKernel = reps.firstKernel;
    row.firstKernelTimes = reps.firstKernel.median / reps.warm.median;
  }
  if (name === 'asia' || name === 'alarm') {
    const model = toPeer(network);
    const given = cases.map((one) => one.evidence);
    const peer = alternate(
      {
        warm: { run: warm, batch },
        bayesjs: {
          run: (round) => (sink[0] += Object.keys(bayesjs.inferAll(model, { ...given[round % 3] })).length),
          batch: 1,
        },
      },
      name === 'asia' ? 2 : 6,
    );
    row.bayesjs = peer.bayesjs;
    row.bayesjsTimes = peer.bayesjs.median / peer.warm.median;
  }
  results.networks[name] = row;
  console.log(
    `${name.padEnd(11)} warm ${row.warm.median.toFixed(2)} us (best ${row.warm.best.toFixed(2)}, spread ${(100 * row.warm.spread).toFixed(0)} %)  cold ${row.cold.median.toFixed(0)}  ` +
      `one changed: all ${(row.oneChangedAll.median / row.warm.median).toFixed(2)}, one asked ${(row.oneChangedOne.median / row.warm.median).toFixed(2)} of warm; ` +
      `all ${(row.oneChangedAll.median / row.forgotten.median).toFixed(2)} of warm with every message forgotten (${row.forgotten.median.toFixed(2)} us)  ` +
      `heap ${heapBytes.toFixed(0)} B  entries ${entries} (${row.entriesRatio.toFixed(3)} of smallest seen)` +
      (row.bayesjsTimes === undefined ? '' : `  bayesjs ${row.bayesjsTimes.toFixed(0)} x slower`) +
      (row.firstKernelTimes === undefined ? '' : `  first kernel ${row.firstKernelTimes.toFixed(0)} x slower`),
  );
}

results.batched = batched();
for (const [key, { each, calls, ratio }] of Object.entries(results.batched)) {
  console.log(
    `batched     40 root hypotheses, ${key}: one propagation ${each.median.toFixed(0)} us, 40 warm calls ${calls.median.toFixed(0)} us, ratio ${ratio.toFixed(3)}`,
  );
}
console.log(
  `batched     geometric mean of ratios ${geometricMean(Object.values(results.batched).map(({ ratio }) => ratio)).toFixed(3)}`,
);
results.sweeps = sweeps();
for (const [key, value] of Object.entries(results.sweeps))
  console.log(`sweep       ${key}: ${value.median.toFixed(0)} us (best ${value.best.toFixed(0)})`);

const shared = ['asia', 'alarm'].filter((name) => results.networks[name] !== undefined);
if (shared.length > 0) {
  const scales = Object.fromEntries(
    shared.map((name) => [name, results.networks[name].bayesjs.median / published[name].bayesjs]),
  );
  scales.both = geometricMean(Object.values(scales));
  results.scales = scales;
  const compare = (list, pick, theirs) =>
    list
      .filter((name) => results.networks[name] !== undefined)
      .map((name) => ({ name, ratio: pick(results.networks[name]) / published[name][theirs] }));
  const rows = {
    'warm / libDAI, six': compare(six, (row) => row.warm.median, 'libdai'),
    'cold / libDAI cold, six': compare(six, (row) => row.cold.median, 'libdaiCold'),
    'andes, pigs warm / libDAI': compare(['andes', 'pigs'], (row) => row.warm.median, 'libdai'),
    'water warm / aGrUM': compare(['water'], (row) => row.warm.median, 'agrum'),
  };
  results.targets = rows;
  const shown = Object.entries(scales).map(([name, scale]) => `${scale.toFixed(2)} by ${name}`);
  console.log(
    `\nagainst figures of performance-targets.md, which another machine made; the time bayesjs takes here over there: ${shown.join(', ')}`,
  );
  console.log('ratios as they are; in brackets divided by the scale of asia, of alarm, of both');
  for (const [what, list] of Object.entries(rows)) {
    if (list.length === 0) continue;
    const mean = geometricMean(list.map(({ ratio }) => ratio));
    const scaled = Object.values(scales).map((scale) => (mean / scale).toFixed(3));
    console.log(
      `${what.padEnd(28)} gm ${mean.toFixed(3)} (${scaled.join(', ')})  ${list.map(({ name, ratio }) => `${name} ${ratio.toFixed(3)}`).join('  ')}`,
    );
  }
}
const folder = fileURLToPath(new URL('./results/', import.meta.url));
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'inference.json'), `${JSON.stringify(results, null, 2)}\n`);
console.log(`written: tests/bench/results/inference.json (checksum of answers ${sink[0].toFixed(3)})`);

function toPeer(network) {
  return Object.fromEntries(
    network.variables.map(({ name, states, parents, table }) => {
      const row = (at) => Object.fromEntries(states.map((state, s) => [state, table[at * states.length + s]]));
      const rows = table.length / states.length;
      const when = (at) => {
        let rest = at;
        const given = {};
        for (let k = parents.length - 1; k >= 0; k -= 1) {
          const parent = network.variables[parents[k]];
          given[parent.name] = parent.states[rest % parent.states.length];
          rest = Math.floor(rest / parent.states.length);
        }
        return given;
      };
      const cpt =
        parents.length === 0
          ? row(0)
          : Array.from({ length: rows }, (_, at) =>
              Object.fromEntries([
                ['when', when(at)],
                // oxlint-disable-next-line unicorn/no-thenable -- the peer's own format
                ['then', row(at)],
              ]),
            );
      return [
        name,
        { id: name, states: [...states], parents: parents.map((parent) => network.variables[parent].name), cpt },
      ];
    }),
  );
}

/** All posteriors given each of 40 root states: one propagation with the root in every clique, against 40 warm calls that observe one root
 * state each. Fresh evidence every time. The invented hub network, and published networks whose parentless variables were given a common
 * parent of 40 states (seeded random tables around their priors). */
function batched() {
  const found = {};
  const measure = (key, network, rootName, cases) => {
    const compiled = compileNetwork(network);
    const workspace = createPropagation(compiled);
    const batch = compileEach(network, rootName);
    const wide = createPropagation(batch.inner);
    const pairs = new Float64Array(batch.pairAt.at(-1));
    const root = network.indexOf.get(rootName);
    const times = alternate(
      {
        each: {
          run: (round) => {
            for (const [v, state] of cases[round % cases.length]) setFinding(wide, v, state);
            propagateEach(batch, wide, pairs);
            sink[0] += pairs[0];
          },
          batch: 1,
        },
        calls: {
          run: (round) => {
            for (const [v, state] of cases[round % cases.length]) setFinding(workspace, v, state);
            for (let r = 0; r < 40; r += 1) {
              setFinding(workspace, root, r);
              propagate(workspace);
              sink[0] += workspace.marginals[0];
            }
          },
          batch: 1,
        },
      },
      1.5,
    );
    found[key] = { ...times, ratio: times.each.median / times.calls.median };
  };
  const { definition, random } = hubNetwork(2, 40);
  const hub = defineNetwork(definition);
  const drawn = (network, observed) =>
    Array.from({ length: 12 }, () =>
      observed.map((name) => [
        network.indexOf.get(name),
        Math.floor(random() * network.variables[network.indexOf.get(name)].states.length),
      ]),
    );
  measure('hub', hub, 'root', drawn(hub, ['m0', 'm3', 'mixed']));
  for (const name of six) {
    if (!names.includes(name)) continue;
    const published = parseBif(readFileSync(join(reference, 'networks', `${name}.bif`), 'utf8'));
    const variables = published.variables.map((variable) => {
      if (variable.parents.length > 0) return variable;
      const count = variable.states.length;
      const table = new Float64Array(40 * count);
      for (let r = 0; r < 40; r += 1) {
        let sum = 0;
        for (let s = 0; s < count; s += 1) sum += table[r * count + s] = variable.table[s] * (0.5 + random()) + 0.001;
        for (let s = 0; s < count; s += 1) table[r * count + s] /= sum;
      }
      return { ...variable, parents: ['hypothesis'], table };
    });
    const states = Array.from({ length: 40 }, (_, r) => `h${r}`);
    const network = defineNetwork({
      variables: [{ name: 'hypothesis', states, table: new Float64Array(40).fill(1 / 40) }, ...variables],
    });
    const [one] = JSON.parse(readFileSync(join(reference, 'posteriors', `${name}.json`), 'utf8')).cases.filter(
      ({ evidence }) => Object.keys(evidence).length === 3,
    );
    const seen = Object.entries(one.evidence).map(([key, state]) => [
      network.indexOf.get(key),
      network.variables[network.indexOf.get(key)].states.indexOf(state),
    ]);
    // the same three variables, one of them retracted in turn
    measure(name, network, 'hypothesis', [
      seen,
      ...seen.map(([v]) => seen.map(([w, state]) => [w, w === v ? -1 : state])),
    ]);
  }
  return found;
}

/** Sweeps with 46 targets on the invented hub network (36 root states, nine children of 2 to 6 states, one variable with four of them as
 * parents): nothing kept; and one likelihood more than the time before. */
function sweeps() {
  const { definition, targets, observe } = hubNetwork(1);
  const network = defineNetwork(definition);
  const seen = Array.from({ length: 44 }, (_, k) => observe(2 + ((k * 7) % 44), 0));
  const found = {};
  for (const count of [0, 1, 3, 6, 10]) {
    const fresh = compileSweep(network, { root: 'root', memoryLimitBytes: 0 });
    const kept = compileSweep(network, { root: 'root' });
    const likelihoods = seen.slice(0, count);
    const times = alternate(
      {
        fresh: { run: () => (sink[0] += sweepRoot(fresh, { likelihoods, targets }).targets.size), batch: 1 },
        more: {
          run: (round) =>
            (sink[0] += sweepRoot(kept, {
              likelihoods: [...likelihoods, seen[count + (round % 30)]],
              targets,
            }).targets.size),
          batch: 1,
        },
      },
      2,
    );
    found[`${count} likelihoods, 46 targets, nothing kept`] = times.fresh;
    found[`${count} likelihoods and one of 30 more, as in a search`] = times.more;
  }
  return found;
}
