import type { Facts, Model, Observation } from '@faultodds/core';
import { createRandom } from '../randomNetwork.ts';

type Random = () => number;
type Quantity = Model['labourPerHour'];
type ConditionalRow = Model['tests'][number]['rows'][number];
interface States {
  readonly id: string;
  readonly states: readonly { readonly id: string; readonly label: string }[];
}

const source = 'random';
const upTo = (random: Random, most: number): number => Math.floor(random() * (most + 1));
const range = (count: number): number[] => Array.from({ length: count }, (_, at) => at);
const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const named = (id: string): { id: string; label: string } => ({ id, label: id });
const quantity = (best: number): Quantity => ({ best, low: best, high: best, ess: 5, source });

/** A random, valid model of a few causes: root and dependent mechanisms, first-match rows over mechanisms and the cause, context that
 * multiplies and rules out, repairs that overlap, access behind access. The same seed gives the same model. */
export function randomModel(seed: number): Model {
  const random = createRandom(seed);
  const causeIds = [...range(2 + upTo(random, 3)).map((at) => `c${at}`), 'not-listed'];
  const causeStates: States = { id: 'cause', states: causeIds.map(named) };

  const roots = range(upTo(random, 3)).map((at) => ({ ...withStates(random, `m${at}`), background: undefined }));
  const dependent: Model['mechanisms'][number][] = [];
  for (const at of range(roots.length === 0 ? 0 : upTo(random, 2))) {
    const own = withStates(random, `d${at}`);
    const parents = pick(random, [...roots, ...dependent], 1 + upTo(random, 1));
    dependent.push({
      ...own,
      parents: parents.map((one) => one.id),
      rows: firstMatchRows(random, parents, own.states, 3),
    });
  }
  const mechanisms: Model['mechanisms'] = [
    ...roots.map(({ id, label, states }) => ({ id, label, states, background: row(random, states) })),
    ...dependent,
  ];

  const tests = range(2 + upTo(random, 3)).map((at): Model['tests'][number] => {
    const outcomes = range(2 + upTo(random, 1)).map((o) => named(`o${o}`));
    const own = firstMatchRows(random, pick(random, [...mechanisms, causeStates], 2), outcomes, 3);
    // the first test tells every cause apart, so that none is beyond all evidence
    const rows =
      at > 0
        ? own
        : [...causeIds.map((id): ConditionalRow => ({ when: { cause: [id] }, ...row(random, outcomes) })), own.at(-1)!];
    return {
      id: `t${at}`,
      label: `t${at}`,
      category: 'any',
      how: 'any',
      outcomes,
      rows,
      ...(at > 0 && random() < 0.2 ? { appliesWhen: [{ f0: 'v0' }, { f1: 'v1' }] } : {}),
      minutes: quantity(1 + upTo(random, 40)),
      consumables: quantity(upTo(random, 10)),
      equipment: [],
      access: oneOf(random, ['none', 'a0', 'a1', 'a2']),
      cautions: [],
      faultMustBeActive: random() < 0.5,
      ...(random() < 0.3 ? { asleep: row(random, outcomes) } : {}),
      ...(at > 0 && random() < 0.15 ? { mayCause: { [oneOf(random, causeIds)]: quantity(1 + random()) } } : {}),
      repeatability: quantity(random() < 0.3 ? 0 : random() * 0.95),
    };
  });

  const repairs = causeIds.slice(0, -1).map((id, at): Model['repairs'][number] => ({
    ...repair(random, `fix-${id}`, random() < 0.3 ? [id, oneOf(random, causeIds)] : [id]),
    ...(at === 0 && random() < 0.5 ? { sameAs: { test: 't0', cured: 'o0', notCured: 'o1' } } : {}),
  }));
  return {
    format: 'faultodds-model',
    version: 1,
    id: `random-${seed}`,
    title: 'Random',
    premise: 'Random.',
    currencyUnit: 'unit',
    labourPerHour: quantity(40 + upTo(random, 80)),
    sources: [{ id: source, kind: 'judgement', text: `seed ${seed}` }],
    contextCap: { low: 0.1, high: 8, ess: 1, source },
    contextOverlaps: [],
    context: ['f0', 'f1'].map((id) => ({
      id,
      label: id,
      question: id,
      values: range(2).map((v) => ({
        id: `v${v}`,
        label: `v${v}`,
        why: 'random',
        multipliers: multipliers(random, causeIds),
      })),
    })),
    causeGroups: [named('all')],
    causes: causeIds.map((id, at) => ({
      id,
      label: id,
      group: 'all',
      description: id,
      customerFeels: id,
      ifDrivenOn: id,
      driving: 'as-usual',
      weight: quantity(0.5 + random() * 20),
      ...(at === 1 && random() < 0.4 ? { requires: { f1: 'v1' } } : {}),
      activeFraction: quantity(0.1 + 0.9 * random()),
      states: Object.fromEntries(roots.filter(() => random() < 0.6).map((root) => [root.id, row(random, root.states)])),
    })),
    mechanisms,
    testCategories: [named('any')],
    tests,
    repairs: [...repairs, { ...repair(random, 'hand-over', ['not-listed']), referral: true }],
    access: ['none', 'a0', 'a1', 'a2'].map((id, at, all) => ({
      id,
      label: id,
      requires: at > 1 ? [all[at - 1]!] : [],
      openMinutes: quantity(at === 0 ? 0 : upTo(random, 30)),
      closeMinutes: quantity(at === 0 ? 0 : upTo(random, 30)),
      parts: quantity(at === 0 ? 0 : upTo(random, 15)),
      cautions: [],
      cautionsClosing: [],
    })),
    equipment: [],
    cautions: [],
    plausibleFrom: quantity(0.05),
    goneWithoutCure: quantity(0.01 + (seed % 20) / 100),
    presentIfNotNoted: quantity(0.1 + (seed % 17) / 20),
    leastRepairMinutes: quantity(1 + (seed % 12)),
    needlessOpening: quantity(0),
    dependentPairs: sameQuestions(random, tests.length),
    verification: {
      cautions: [],
      order: [],
      similarConditions: { rpmWithin: 0, loadWithinPercent: 0, sameWarmUpState: false, source },
      rule: { text: 'any', source },
      checks: [{ when: {}, label: 'any', exposure: 'any', minutes: quantity(upTo(random, 30)), distanceKm: 0, source }],
      accept: { countsPer1000Firings: quantity(0), monitorRun: 'any', source },
    },
    valveFaultSigns: [],
    fillingLimit: { formula: 'any', assumption: 'any', limit: 0, source, rows: [] },
    reasoningErrors: [],
    glossary: [],
  };
}

/** Random facts about a model, at most `most` observations: intake answers, results named or by likelihood, repeats, sleeping faults,
 * repairs tried. Only what the model accepts. */
export function randomFacts(model: Model, seed: number, most = 6): Facts {
  const random = createRandom(seed ^ 0x9e3779b9);
  const context = Object.fromEntries(
    model.context.filter(() => random() < 0.4).map((feature) => [feature.id, oneOf(random, feature.values).id]),
  );
  const applicable = model.tests.filter(
    (one) =>
      one.appliesWhen === undefined ||
      one.appliesWhen.some((r) => Object.entries(r).every(([f, v]) => context[f] === v)),
  );
  const observations = range(upTo(random, most)).map((at): Observation => {
    if (random() < 0.15)
      return { kind: 'repair-tried', id: `r${at}`, repair: oneOf(random, model.repairs).id, cured: random() < 0.1 };
    const { id: test, outcomes } = oneOf(random, applicable);
    const faultActive = oneOf(random, ['yes', 'yes', 'no', 'unknown'] as const);
    const seen =
      random() < 0.25
        ? { likelihood: Object.fromEntries(outcomes.map((outcome) => [outcome.id, 0.05 + random() * 5])) }
        : { outcome: oneOf(random, outcomes).id };
    return { kind: 'result', id: `r${at}`, test, faultActive, ...seen };
  });
  return { context, observations };
}

/** Some tests ask what another or the intake asks. */
function sameQuestions(random: Random, tests: number): Model['dependentPairs'] {
  const pair = (a: string, b: string) => ({ a, b, kind: 'same-question', shared: 'any', note: 'any' }) as const;
  return [
    ...(random() < 0.4 ? [pair('t1', 't0')] : []),
    ...(random() < 0.3 ? [pair(oneOf(random, ['t0', 't1']), 'f0')] : []),
    ...(tests > 2 && random() < 0.3 ? [pair('t2', 't1')] : []),
  ];
}

function withStates(random: Random, id: string): States & { readonly label: string } {
  return { id, label: id, states: range(2 + upTo(random, 1)).map((s) => named(`s${s}`)) };
}

function row(random: Random, states: States['states']): { p: Record<string, number>; ess: number; source: string } {
  const raw = states.map(() => 0.02 + random());
  const sum = raw.reduce((a, b) => a + b, 0);
  return { p: Object.fromEntries(states.map(({ id }, at) => [id, raw[at]! / sum])), ess: 5, source };
}

function firstMatchRows(
  random: Random,
  parents: readonly States[],
  states: States['states'],
  most: number,
): ConditionalRow[] {
  const conditional = range(upTo(random, most)).map((): ConditionalRow => {
    const used = pick(random, parents, 1 + upTo(random, parents.length - 1));
    const when = used.map((one) => [one.id, pick(random, one.states, 1 + upTo(random, 1)).map(({ id }) => id)]);
    return { when: Object.fromEntries(when), ...row(random, states) };
  });
  return [...conditional, { when: {}, ...row(random, states) }];
}

function pick<T>(random: Random, list: readonly T[], count: number): T[] {
  const left = [...list];
  return range(Math.min(count, list.length)).map(() => left.splice(Math.floor(random() * left.length), 1)[0]!);
}

function multipliers(random: Random, causes: readonly string[]): Record<string, Quantity> {
  const entries = causes.slice(0, -1).flatMap((id, at): [string, Quantity][] => {
    if (random() < 0.5) return [];
    if (at > 0 && random() < 0.15) return [[id, { ...quantity(0), definitional: true }]];
    return [[id, quantity(0.05 + random() * 6)]];
  });
  return Object.fromEntries(entries);
}

function repair(random: Random, id: string, cures: readonly string[]): Model['repairs'][number] {
  return {
    id,
    label: id,
    cures: Object.fromEntries(cures.map((cause) => [cause, quantity(0.3 + 0.69 * random())])),
    minutes: quantity(upTo(random, 300)),
    parts: quantity(upTo(random, 200)),
    access: random() < 0.6 ? [oneOf(random, ['a0', 'a1', 'a2'])] : [],
    cautions: [],
  };
}
