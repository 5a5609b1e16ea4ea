import type { Facts, Model, TestResult } from '@faultodds/core';

type Test = Model['tests'][number];
type World = Readonly<Record<string, string>>; // 'cause' and every mechanism -> state

/** What a case says by adding up every combination of cause and mechanism states, straight from the model's own rows: shares no code with
 * the packages. All records by id, ruled-out causes at 0. */
export interface EnumeratedCase {
  readonly prior: Readonly<Record<string, number>>;
  readonly posterior: Readonly<Record<string, number>>;
  readonly logProbabilityOfEvidence: number;
  /** P(outcome | cause, everything recorded). */
  readonly outcomeGivenCause: (test: string, cause: string, outcome: string) => number;
}

/** Enumerates a case. Exponential in the number of mechanisms. */
export function enumerateCase(model: Model, facts: Facts): EnumeratedCase {
  const prior = priorOf(model, facts.context);
  // weight of each world: P(world | cause) x P(evidence | world)
  const worlds = allWorlds(model).map((world) => ({
    world,
    weight: chanceOfMechanisms(model, world) * chanceOfEvidence(model, world, facts),
  }));
  const given = new Map<string, number>();
  for (const { world, weight } of worlds) given.set(world['cause']!, (given.get(world['cause']!) ?? 0) + weight);
  const evidence = model.causes.reduce((sum, { id }) => sum + prior[id]! * given.get(id)!, 0);
  return {
    prior,
    posterior: Object.fromEntries(model.causes.map(({ id }) => [id, (prior[id]! * given.get(id)!) / evidence])),
    logProbabilityOfEvidence: Math.log(evidence),
    outcomeGivenCause: (id, cause, outcome) => {
      const test = model.tests.find((one) => one.id === id)!;
      const of = worlds.filter(({ world }) => world['cause'] === cause);
      return (
        of.reduce((sum, { world, weight }) => sum + weight * rowFor(test.rows, world)[outcome]!, 0) / given.get(cause)!
      );
    },
  };
}

function priorOf(model: Model, context: Facts['context']): Record<string, number> {
  const weights = model.causes.map((cause) => {
    const missing = Object.entries(cause.requires ?? {}).some(([feature, value]) => context[feature] !== value);
    let product = 1;
    let excluded = missing;
    for (const feature of model.context) {
      const value = feature.values.find((one) => one.id === context[feature.id]);
      const multiplier = value?.multipliers[cause.id];
      if (multiplier?.best === 0) excluded = true;
      else if (multiplier !== undefined) product *= multiplier.best;
    }
    if (product < model.contextCap.low) product = model.contextCap.low;
    if (product > model.contextCap.high) product = model.contextCap.high;
    return excluded ? 0 : cause.weight.best * product;
  });
  const total = weights.reduce((a, b) => a + b, 0);
  return Object.fromEntries(model.causes.map(({ id }, at) => [id, weights[at]! / total]));
}

function allWorlds(model: Model): World[] {
  const variables = [
    { id: 'cause', states: model.causes.map(({ id }) => id) },
    ...model.mechanisms.map(({ id, states }) => ({ id, states: states.map((state) => state.id) })),
  ];
  return variables.reduce<World[]>(
    (worlds, { id, states }) => worlds.flatMap((world) => states.map((state) => ({ ...world, [id]: state }))),
    [{}],
  );
}

function chanceOfMechanisms(model: Model, world: World): number {
  const cause = model.causes.find(({ id }) => id === world['cause'])!;
  return model.mechanisms.reduce((product, mechanism) => {
    const p =
      mechanism.rows === undefined
        ? (cause.states[mechanism.id] ?? mechanism.background!).p
        : rowFor(mechanism.rows, world);
    return product * p[world[mechanism.id]!]!;
  }, 1);
}

function rowFor(rows: Test['rows'], world: World): Readonly<Record<string, number>> {
  return rows.find((row) => Object.entries(row.when).every(([id, states]) => states.includes(world[id]!)))!.p;
}

function chanceOfEvidence(model: Model, world: World, facts: Facts): number {
  const cause = model.causes.find(({ id }) => id === world['cause'])!;
  const results: Pick<TestResult, 'test' | 'outcome' | 'likelihood' | 'faultActive'>[] = [];
  let product = 1;
  for (const observation of facts.observations) {
    if (observation.kind === 'result') {
      results.push(observation);
      continue;
    }
    const repair = model.repairs.find(({ id }) => id === observation.repair)!;
    const asked = repair.sameAs;
    if (asked === undefined) {
      const success = repair.cures[cause.id]?.best ?? model.goneWithoutCure.best;
      product *= observation.cured ? success : 1 - success;
    } else results.push({ test: asked.test, outcome: observation.cured ? asked.cured : asked.notCured });
  }
  const spoke = new Map<Test, number>();
  for (const test of model.tests) {
    const runs = results.filter((one) => one.test === test.id);
    const says = (run: (typeof runs)[number]) =>
      run.likelihood === undefined || new Set(test.outcomes.map(({ id }) => run.likelihood![id] ?? 0)).size > 1;
    const awake = (run: (typeof runs)[number]) => !(test.faultMustBeActive && run.faultActive === 'no');
    spoke.set(test, runs.filter((run) => says(run) && awake(run)).length);
    // what doing the test may have brought about, relative to the cause it favours most
    const odds = (id: string) => test.mayCause?.[id]?.best ?? 1;
    if (runs.length > 0) product *= odds(cause.id) / Math.max(...model.causes.map(({ id }) => odds(id)));
  }
  for (const test of model.tests) {
    const own = spoke.get(test)!;
    if (own === 0) continue;
    const chance = chanceOfRuns(
      model,
      test,
      world,
      results.filter((one) => one.test === test.id),
    );
    product *= chance ** (weightOfOne(model, facts, spoke, test) * (1 + (own - 1) * test.repeatability.best));
  }
  for (const feature of model.context) {
    const value = feature.values.find(({ id }) => id === facts.context[feature.id]);
    const asking = [...spoke].find(([test, count]) => count > 0 && questionOf(model, test.id).has(feature.id));
    if (value === undefined || asking === undefined) continue;
    // the prior counts the answer in full: what is too much is taken back, on the scale of the likeliest
    const exponent = weightOfOne(model, facts, spoke, asking[0]) - 1;
    const factor = (id: string) => ((value.multipliers[id]?.best ?? 1) || 1) ** exponent;
    product *= factor(cause.id) / Math.max(...model.causes.map(({ id }) => factor(id)));
  }
  return product;
}

/** Names that ask what this one asks, itself included. */
function questionOf(model: Model, name: string): Set<string> {
  const names = new Set([name]);
  for (let size = 0; size < names.size;) {
    size = names.size;
    for (const { a, b, kind } of model.dependentPairs) {
      if (kind === 'same-question' && (names.has(a) || names.has(b))) names.add(a).add(b);
    }
  }
  return names;
}

/** What one run of a question counts: n of them, the intake answer among them, count n / (1 + (n - 1) r). */
function weightOfOne(model: Model, facts: Facts, spoke: ReadonlyMap<Test, number>, test: Test): number {
  const names = questionOf(model, test.id);
  const told = model.context.filter(({ id, values }) => {
    const value = values.find((one) => one.id === facts.context[id]);
    return names.has(id) && Object.keys(value?.multipliers ?? {}).length > 0;
  }).length;
  const asked = [...spoke].filter(([{ id }, count]) => names.has(id) && count > 0);
  const runs = asked.reduce((sum, [, count]) => sum + count, 0) + told;
  return 1 / (1 + (runs - 1) * Math.max(...asked.map(([{ repeatability }]) => repeatability.best)));
}

/** With probability `repeatability` all runs tell one draw, else each its own. A sleeping fault says nothing; one that perhaps slept shows
 * what is shown asleep, by default the last row. */
function chanceOfRuns(
  model: Model,
  test: Test,
  world: World,
  all: readonly Pick<TestResult, 'outcome' | 'likelihood' | 'faultActive'>[],
): number {
  const runs = all.filter((run) => !(test.faultMustBeActive && run.faultActive === 'no'));
  if (runs.length === 0) return 1;
  const awake = rowFor(test.rows, world);
  const asleep = (test.asleep ?? test.rows.at(-1)!).p;
  const present = model.presentIfNotNoted.best;
  const maySleep = (run: (typeof runs)[number]) => test.faultMustBeActive && run.faultActive === 'unknown';
  const chance = (outcome: string, sleeps: boolean) =>
    sleeps ? present * awake[outcome]! + (1 - present) * asleep[outcome]! : awake[outcome]!;
  const says = (run: (typeof runs)[number], outcome: string) =>
    run.likelihood === undefined
      ? Number(run.outcome === outcome)
      : (run.likelihood[outcome] ?? 0) / Math.max(...Object.values(run.likelihood));
  const outcomes = test.outcomes.map(({ id }) => id);
  const own = runs.map((run) => outcomes.reduce((sum, o) => sum + says(run, o) * chance(o, maySleep(run)), 0));
  const independent = own.reduce((a, b) => a * b, 1);
  if (runs.length === 1) return independent;
  const surelyAwake = runs.some((run) => !maySleep(run));
  const shared = outcomes.reduce(
    (sum, o) => sum + chance(o, !surelyAwake) * runs.reduce((product, run) => product * says(run, o), 1),
    0,
  );
  const r = test.repeatability.best;
  return r * shared + (1 - r) * independent;
}
