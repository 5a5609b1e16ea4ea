import { beliefOf, caseState, factsOf, type Facts } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { compiled, demos, model } from '../scenarios/misfireCases.ts';

// A test that needs the fault, made while nobody noted whether it was there: what is believed lies between what is believed after the same
// result with the fault present and after one while it slept, for every test, outcome and cause, at intake and at the end of worked cases.
const needing = model.tests.filter(({ faultMustBeActive }) => faultMustBeActive);
const ROUNDING = 1e-12;

const situations: readonly (readonly [string, Facts])[] = [
  ['nothing is known', { context: {}, observations: [] }],
  ...['demo-03', 'demo-07', 'demo-11'].map((id) => [id, factsOf(caseState(demos.get(id)!))] as const),
];

describe.each(situations)('%s', (_, facts) => {
  test.each(needing.map(({ id }) => [id] as const))('%s', (id) => {
    // what is on record of it would share its error: only the rest
    const names = compiled.structure.questions.get(id) ?? [id];
    const rest = facts.observations.filter((one) => one.kind !== 'result' || !names.includes(one.test));
    const { outcomes, appliesWhen } = model.tests.find((one) => one.id === id)!;
    const context = { ...facts.context, ...appliesWhen?.[0] };
    for (const { id: outcome } of outcomes) {
      const [active, unknown, asleep] = (['yes', 'unknown', 'no'] as const).map((faultActive) => {
        const result = { kind: 'result', id: 'asked', test: id, outcome, faultActive } as const;
        return beliefOf(compiled, { context, observations: [...rest, result] }).posterior;
      });
      for (const [cause, p] of Object.entries(unknown!)) {
        const [low, high] = [active![cause]!, asleep![cause]!].sort((a, b) => a - b);
        expect(p, `${outcome}, ${cause}`).toBeGreaterThanOrEqual(low! - ROUNDING);
        expect(p, `${outcome}, ${cause}`).toBeLessThanOrEqual(high! + ROUNDING);
      }
    }
  });
});

test('a new part, and no misfire where it may have slept, says little: it was 71.5 % for the coil against 70.6 with the fault surely there', () => {
  const coil = (faultActive: 'yes' | 'unknown' | 'no'): number =>
    beliefOf(compiled, {
      context: {},
      observations: [{ kind: 'result', id: 'r', test: 'coil-replaced', outcome: 'misfire-gone', faultActive }],
    }).posterior['coil-weak']!;
  expect(coil('unknown')).toBeLessThan((coil('yes') + coil('no')) / 2);
  expect(coil('unknown')).toBeGreaterThan(coil('no'));
});
