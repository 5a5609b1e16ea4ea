import type { TargetTable } from '@faultodds/inference/sweeps';
import { sweepModel } from '../compiled/sweepModel.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { Facts } from '../evidence/facts.ts';
import { jointGivenFacts } from './jointGivenFacts.ts';
import type { JointLines } from './linearFunction.ts';
import { repairLines } from './repairLines.ts';
import type { Observation } from '../evidence/observation.ts';
import { testAsked } from '../evidence/testAsked.ts';
import { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Row } from '../model/row.ts';

/** Every number that the ranking is linear in, each with its lines. Entries of a row vary with the others of the row in proportion. */
export function jointLines(compiled: CompiledModel, facts: Facts): readonly JointLines[] {
  const joint = jointGivenFacts(compiled, facts);
  return [
    ...weightLines(compiled, joint),
    ...multiplierLines(compiled, facts, joint),
    ...stateLines(compiled, facts, joint),
    ...dependentLines(compiled, facts, joint),
    ...outcomeLines(compiled, facts, joint),
    ...repairLines(compiled, facts),
  ];
}

function weightLines({ model }: CompiledModel, joint: Float64Array): JointLines[] {
  return model.causes.flatMap(({ weight }, at) => factorLines(weight, `/causes/${at}/weight/best`, joint, at));
}

/** Context multipliers in force; one whose product is capped moves nothing and is left out. */
function multiplierLines(compiled: CompiledModel, { context, observations }: Facts, joint: Float64Array): JointLines[] {
  const { model, causeIndex, structure } = compiled;
  const { low, high } = model.contextCap;
  const asked = new Set(observations.map((observation) => testAsked(compiled, observation)));
  const isShared = (feature: string): boolean =>
    (structure.questions.get(feature) ?? []).some((name) => asked.has(name));
  const stated = model.context.flatMap((feature, f) => {
    const v = feature.values.findIndex((value) => value.id === context[feature.id]);
    return v < 0
      ? []
      : Object.entries(feature.values[v]!.multipliers).map(([cause, multiplier]) => ({
          cause,
          multiplier,
          isShared: isShared(feature.id),
          path: `/context/${f}/values/${v}/multipliers/${cause}/best`,
        }));
  });
  return stated.flatMap(({ cause, multiplier, path, ...one }) => {
    if (one.isShared) return []; // a test asks the same: the answer counts by less than itself
    const product = stated.reduce((all, other) => (other.cause === cause ? all * other.multiplier.best : all), 1);
    return product > low && product < high ? factorLines(multiplier, path, joint, causeIndex.get(cause)!) : [];
  });
}

/** Lines of a number that P(evidence, cause) of one cause is proportional to. */
function factorLines(
  { best: value, low, high }: Quantity,
  path: string,
  joint: Float64Array,
  cause: number,
): JointLines[] {
  if (joint[cause] === 0) return [];
  const slopes = new Float64Array(joint.length);
  slopes[cause] = joint[cause]! / value;
  const constants = joint.slice();
  constants[cause] = 0;
  return [{ path, value, low, high, unbounded: true, constants, slopes }];
}

/** Rows of root mechanisms: a cause's own, or the background that all others share. */
function stateLines(compiled: CompiledModel, facts: Facts, joint: Float64Array): JointLines[] {
  const { model } = compiled;
  const roots = model.mechanisms.filter((mechanism) => mechanism.background !== undefined);
  const posteriorsOf = roots.map((mechanism) => mechanism.id);
  const { posteriors } = sweepModel(compiled, {
    likelihoods: evidenceOf(compiled, facts),
    targets: [],
    posteriorsOf,
  });
  return roots.flatMap((mechanism) => {
    const m = model.mechanisms.indexOf(mechanism);
    const states = mechanism.states.map((state) => state.id);
    const table = posteriors.get(mechanism.id)!;
    const shared = model.causes.map((cause) => cause.states[mechanism.id] === undefined);
    const ofCauses = model.causes.flatMap((cause, c) => {
      const row = cause.states[mechanism.id];
      if (row === undefined || joint[c] === 0) return [];
      return rowLines(row, states, `/causes/${c}/states/${mechanism.id}/p`, joint, (at) => at === c, table);
    });
    const background = rowLines(
      mechanism.background!,
      states,
      `/mechanisms/${m}/background/p`,
      joint,
      (at) => shared[at]!,
      table,
    );
    return [...ofCauses, ...background];
  });
}

/** Lines of a row of P(state | …): `table` at [cause * states + s] holds P(state = s and the row applies | cause, evidence). */
function rowLines(
  row: Row,
  states: readonly string[],
  path: string,
  joint: Float64Array,
  applies: (cause: number) => boolean,
  table: Float64Array,
): JointLines[] {
  return states.map((state, s): JointLines => {
    const value = row.p[state]!;
    const constants = joint.slice();
    const slopes = new Float64Array(joint.length);
    for (let c = 0; c < joint.length; c += 1) {
      if (joint[c] === 0 || !applies(c)) continue;
      const here = joint[c]! * table[c * states.length + s]!;
      let rest = 0;
      for (let other = 0; other < states.length; other += 1)
        if (other !== s) rest += joint[c]! * table[c * states.length + other]!;
      // here scales with x / value, rest with (1 - x) / (1 - value), what the row does not touch stays
      slopes[c] = here / value - rest / (1 - value);
      constants[c] = joint[c]! - here - rest + rest / (1 - value);
    }
    const [low, high] = rangeOfProbability(value, row.ess);
    return { path: `${path}/${state}`, value, low, high, unbounded: false, constants, slopes };
  });
}

/** Rows of mechanisms that depend on mechanisms. */
function dependentLines(compiled: CompiledModel, facts: Facts, joint: Float64Array): JointLines[] {
  const { model, structure } = compiled;
  const likelihoods = evidenceOf(compiled, facts);
  return model.mechanisms.flatMap((mechanism, m) => {
    const matches = structure.mechanismMatches[m];
    const { rows } = mechanism;
    if (matches === undefined || rows === undefined) return [];
    const states = mechanism.states.map((state) => state.id);
    const count = states.length;
    // which row applies and which state holds, as one child of the parents and the mechanism itself
    const table = new Float64Array(matches.rowOf.length * count * rows.length * count);
    matches.rowOf.forEach((row, configuration) => {
      for (let s = 0; s < count; s += 1) table[(configuration * count + s) * rows.length * count + row * count + s] = 1;
    });
    const target: TargetTable = {
      id: 'row',
      parents: [...matches.parents, mechanism.id],
      states: rows.length * count,
      table,
    };
    const swept = sweepModel(compiled, { likelihoods, targets: [target] }).targets.get('row')!;
    return rows.flatMap((row, r) => {
      const ofRow = new Float64Array(joint.length * count);
      for (let c = 0; c < joint.length; c += 1) {
        for (let s = 0; s < count; s += 1) ofRow[c * count + s] = swept[(c * rows.length + r) * count + s]!;
      }
      return rowLines(row, states, `/mechanisms/${m}/rows/${r}/p`, joint, () => true, ofRow);
    });
  });
}

/** Rows of the tests on record whose question was asked once, by no other test and at intake. */
function outcomeLines(compiled: CompiledModel, facts: Facts, joint: Float64Array): JointLines[] {
  return facts.observations.flatMap((observation) => {
    const id = testAsked(compiled, observation);
    const compiledTest = compiled.tests.get(id);
    const names = compiled.structure.questions.get(id) ?? [id];
    const runs = facts.observations.filter((other) => names.includes(testAsked(compiled, other)));
    const isShared = runs.length > 1 || names.some((name) => Object.hasOwn(facts.context, name));
    if (compiledTest === undefined || isShared) return [];
    return testLines(compiled, facts, joint, compiledTest, observation);
  });
}

function testLines(
  compiled: CompiledModel,
  facts: Facts,
  joint: Float64Array,
  compiledTest: CompiledTest,
  observation: Observation,
): JointLines[] {
  const { test, index, outcomes } = compiledTest;
  const active = test.faultMustBeActive && observation.kind === 'result' ? (observation.faultActive ?? 'yes') : 'yes';
  if (active === 'no') return [];
  const outcomeOf = observedOutcome(compiled, observation);
  if (outcomeOf === undefined) return []; // entered as a likelihood or a reading: no single number of the row stands for it
  const matches = compiled.structure.testMatches[index]!;
  const rows = test.rows;
  const table = new Float64Array(matches.rowOf.length * rows.length);
  matches.rowOf.forEach((row, configuration) => {
    table[configuration * rows.length + row] = 1;
  });
  const others = { context: facts.context, observations: facts.observations.filter((other) => other !== observation) };
  const target: TargetTable = { id: 'row', parents: matches.parents, states: rows.length, table };
  const applies = sweepModel(compiled, {
    likelihoods: evidenceOf(compiled, others),
    targets: [target],
  }).targets.get('row')!;
  const outcome = outcomes[outcomes.indexOf(outcomeOf)]!;
  const awake = active === 'yes' ? 1 : compiled.model.presentIfNotNoted.best;
  /** Share of P(outcome | cause, the rest) that each row contributes per unit of its entry; asleep it is the last that shows, or a row of its own. */
  const perUnit = (c: number, r: number): number =>
    awake * applies[c * rows.length + r]! + (test.asleep === undefined && r === rows.length - 1 ? 1 - awake : 0);
  const ofSleep = test.asleep === undefined ? 0 : (1 - awake) * test.asleep.p[outcome]!;
  return rows.map((row, r): JointLines => {
    const value = row.p[outcome]!;
    const slopes = new Float64Array(joint.length);
    const constants = joint.slice();
    for (let c = 0; c < joint.length; c += 1) {
      if (joint[c] === 0) continue;
      const total = rows.reduce((sum, other, o) => sum + perUnit(c, o) * other.p[outcome]!, ofSleep);
      slopes[c] = (joint[c]! * perUnit(c, r)) / total;
      constants[c] = joint[c]! - slopes[c]! * value;
    }
    const [low, high] = rangeOfProbability(value, row.ess);
    return { path: `/tests/${index}/rows/${r}/p/${outcome}`, value, low, high, unbounded: false, constants, slopes };
  });
}

function observedOutcome({ model }: CompiledModel, observation: Observation): string | undefined {
  if (observation.kind === 'result') return observation.reading === undefined ? observation.outcome : undefined;
  const { sameAs } = model.repairs.find((repair) => repair.id === observation.repair) ?? {};
  return sameAs === undefined ? undefined : observation.cured ? sameAs.cured : sameAs.notCured;
}
