import { loadCase, type CaseEvent } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { createCaseStore } from './caseStore.svelte.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';

test('one more result asks the kernel no more on the page itself after two hundred results than after two', () => {
  const shipped = loadKnowledge(misfire, []);
  const { sweep } = shipped.compiled as unknown as { readonly sweep: object };
  let sweeps = 0;
  const compiled = Object.defineProperty({ ...shipped.compiled }, 'sweep', {
    get() {
      sweeps += 1;
      return sweep;
    },
  });
  const always = shipped.model.tests.filter(({ appliesWhen }) => appliesWhen === undefined);
  const event = (at: number): CaseEvent => {
    const { id, outcomes } = always[at % always.length]!;
    const likelihood = Object.fromEntries(outcomes.map((outcome, nth) => [outcome.id, nth === at % 2 ? 1 : 0.9]));
    return { kind: 'result-recorded', id: `r${at}`, test: id, likelihood };
  };
  const asked = (results: number): number => {
    const document = { format: 'faultodds-case', version: 3, id: 'long', title: 'Invented', events: [] as CaseEvent[] };
    document.events = Array.from({ length: results }, (_, at) => event(at));
    const store = createCaseStore({ ...shipped, compiled }, loadCase(compiled, document), () => undefined);
    const { belief } = store.now;
    // what the moments say does not matter here, only that they are known
    store.takeHistory({ facts: belief.facts, moments: Array.from({ length: results + 1 }, () => belief) });
    sweeps = 0;
    expect(store.record(event(results))).toBe(true);
    expect(store.now.history?.moments).toHaveLength(results + 2);
    return sweeps;
  };
  // the belief once; the advice once for a result that would call for a follow-up, at most: after two hundred results none waits
  const looks = shipped.model.tests.flatMap(({ follows = [] }) => follows.flatMap(({ outcomes }) => outcomes));
  expect(asked(2)).toBeLessThanOrEqual(1 + looks.length);
  expect(asked(200)).toBe(1);
});
