// Full update of the misfire model: belief, every test's predictive per cause, ranking, one-step advice; and what surrounds it. Every figure is
// a ratio to the ranking alone (`rankCauses`) on the same facts in the same run. Needs a built repository (npm run build).
import { cpus } from 'node:os';
import {
  caseState,
  circumstancesOf,
  compileModel,
  factsOf,
  loadCase,
  advise,
  parseModel,
  rankCauses,
  beliefOf,
} from '@faultodds/core';
import { credibleRanking, leaderSensitivity } from '@faultodds/core/doubt';
import { explainCase } from '@faultodds/core/explanation';
import { demoCases, misfire } from '@faultodds/misfire';

const model = parseModel(misfire);
const rounds = Number(process.argv[2] ?? 5);
const milliseconds = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Every prefix of every demo case, with the access that is open then. */
const one = compileModel(model);
const states = demoCases.flatMap((demo) => {
  const session = loadCase(one, demo);
  const facts = factsOf(caseState(session));
  const circumstances = circumstancesOf(one, caseState(session));
  return facts.observations.map((_, at) => ({
    facts: { context: facts.context, observations: facts.observations.slice(0, at + 1) },
    circumstances,
  }));
});

const rows = {
  'compile the model': () => compileModel(model),
};
const perState = {
  'ranking alone (baseline)': (compiled, { facts }) => rankCauses(compiled, facts),
  'belief with every predictive': (compiled, { facts }) => beliefOf(compiled, facts),
  'full update: belief, ranking, advice': (compiled, { facts, circumstances }) =>
    advise(compiled, beliefOf(compiled, facts), circumstances),
  'explanation of the whole case': (compiled, { facts }) => explainCase(compiled, facts),
  'all sensitivity functions': (compiled, { facts }) => leaderSensitivity(compiled, facts),
};

console.log(
  `${states.length} states of ${demoCases.length} invented cases, ${rounds} rounds, ${cpus()[0].model}, Node ${process.version}`,
);
for (const [name, work] of Object.entries(rows)) {
  console.log(`${name}: ${median(Array.from({ length: rounds }, () => milliseconds(work))).toFixed(1)} ms`);
}
// a fresh compiled model each round: nothing is remembered from the round before
const times = Object.fromEntries(Object.keys(perState).map((name) => [name, []]));
for (let round = 0; round <= rounds; round += 1) {
  for (const [name, work] of Object.entries(perState)) {
    const compiled = compileModel(model);
    const taken = states.map((state) => milliseconds(() => work(compiled, state)));
    if (round > 0) times[name].push(...taken); // the first round warms up
  }
}
const baseline = median(times['ranking alone (baseline)']);
for (const [name, taken] of Object.entries(times)) {
  const sorted = [...taken].sort((a, b) => a - b);
  const p95 = sorted[Math.floor(sorted.length * 0.95)];
  console.log(
    `${name}: median ${median(taken).toFixed(2)} ms, 95 % ${p95.toFixed(2)} ms, ratio ${(median(taken) / baseline).toFixed(1)}`,
  );
}

const longest = states.reduce((a, b) => (b.facts.observations.length > a.facts.observations.length ? b : a));
const three = states.find(({ facts }) => facts.observations.length === 3);
for (const [name, { facts }] of Object.entries({ 'three results': three, 'thirteen results': longest })) {
  const single = median(
    Array.from({ length: rounds }, () => milliseconds(() => rankCauses(compileModel(model), facts))),
  );
  const both = median(
    Array.from({ length: rounds }, () => milliseconds(() => rankCauses(compileModel(model, { atMost: 2 }), facts))),
  );
  console.log(
    `two causes at once, ${name}, compiling included: ${both.toFixed(0)} ms, ratio to one cause ${(both / single).toFixed(1)}`,
  );
  const draws = 200;
  const interval = milliseconds(() => credibleRanking(one, facts, { draws }));
  const update = median(Array.from({ length: rounds }, () => milliseconds(() => beliefOf(compileModel(model), facts))));
  console.log(
    `interval from ${draws} plausible models, ${name}: ${interval.toFixed(0)} ms (${(((interval / draws) * 2000) / 1000).toFixed(1)} s for 2000), one draw is ${(interval / draws / update).toFixed(2)} of a compiled update`,
  );
}
