// How much the tests beside the hardest files notice: one small change of a file at a time, only its own tests run, in one process.
//   node tests/mutants/run.mjs [--sample 10] [--seed 1] [part of a source's path ...]
// The files on disk are never changed: the mutant is served in place of the source. What was found is stored in results.json.
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { createVitest } from 'vitest/node';
import { applyMutant, mutantsOf } from './mutantsOf.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { sample: { type: 'string', default: '10' }, seed: { type: 'string', default: '1' } },
});
const sample = Number(values.sample);
const seed = Number(values.seed);
/** Rounds of the mutated file's loops in one test file, at most. */
const STEPS = 3e8;

/** The first `count` of a seeded shuffle (mulberry32), in the order of the text. */
function draw(items, count) {
  let state = seed >>> 0;
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return items
    .map((item, at) => ({ item, at, key: random() }))
    .sort((a, b) => a.key - b.key)
    .slice(0, count)
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

const served = { path: '', text: '' };
const vitest = await createVitest(
  'test',
  {
    config: false,
    root,
    watch: true, // keeps the process; files are run when asked below
    run: false,
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    reporters: [{}],
    pool: 'threads',
    maxWorkers: 1,
    isolate: true,
    bail: 1,
    testTimeout: 0,
    experimental: { fsModuleCache: false },
  },
  {
    root,
    configFile: false,
    ssr: { resolve: { conditions: ['source', 'node', 'import', 'default'] } },
    server: { watch: null },
    plugins: [
      {
        name: 'one-mutant',
        enforce: 'pre',
        load: (id) => (id === served.path ? served.text : null),
      },
    ],
  },
);

/** Whether all tests pass with this text in place of the source. */
async function passes(source, tests, text) {
  // the last one first: it is itself again
  if (served.path !== '') vitest.invalidateFile(served.path);
  served.path = join(root, source);
  served.text = text;
  vitest.invalidateFile(served.path);
  const specifications = tests.map((test) => vitest.getRootProject().createSpecification(join(root, test)));
  for (const specification of specifications) {
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications([specification], false);
    // those run before are among them
    const module = testModules.find(({ moduleId }) => moduleId === specification.moduleId);
    if (module === undefined) throw new Error(`no tests in ${specification.moduleId}`);
    if (unhandledErrors.length > 0 || !module.ok()) return false;
  }
  return true;
}

const stored = join(here, 'results.json');
const results = JSON.parse(readFileSync(stored, 'utf8'));
const targets = JSON.parse(readFileSync(join(here, 'targets.json'), 'utf8'));
try {
  for (const { source, tests, equivalent = [] } of targets) {
    if (positionals.length > 0 && !positionals.some((part) => source.includes(part))) continue;
    const text = readFileSync(join(root, source), 'utf8');
    const lines = text.split('\n');
    const all = mutantsOf(text);
    if (!(await passes(source, tests, applyMutant(text, undefined, STEPS))))
      throw new Error(`${source}: its tests fail as it is`);
    const drawn = draw(all, sample);
    const survived = [];
    for (const mutant of drawn) {
      const isCaught = !(await passes(source, tests, applyMutant(text, mutant, STEPS)));
      const { operator, line, from, text: to } = mutant;
      const code = lines[line - 1].trim();
      console.log(`${isCaught ? 'caught  ' : 'SURVIVED'} ${source}:${line} ${operator}: ${from} -> ${to}`);
      if (isCaught) continue;
      const reason = equivalent.find((one) => one.code === code && one.from === from && one.to === to)?.reason;
      survived.push({ line, code, operator, from, to, ...(reason === undefined ? {} : { equivalent: reason }) });
    }
    const tested = drawn.length - survived.filter((one) => one.equivalent !== undefined).length;
    const caught = drawn.length - survived.length;
    console.log(`${source}: ${caught} of ${tested} caught (${drawn.length - tested} change nothing)`);
    results[source] = { tests, seed, possible: all.length, drawn: drawn.length, tested, caught, survived };
    writeFileSync(stored, `${JSON.stringify(results, null, 2)}\n`);
  }
} finally {
  await vitest.close();
}
