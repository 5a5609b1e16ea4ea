// Laws of the shipped repairs: what they cost, what asks the same question as a test, and what one job cures.
import {
  advise,
  beliefOf,
  compileModel,
  loadCase,
  parseModel,
  type CaseEvent,
  type Observation,
} from '@faultodds/core';
import { lintModel } from '@faultodds/core/authoring';
import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';

const model = parseModel(misfire);
const compiled = compileModel(model);
const tried = (id: string, repair: string, cured: boolean): Observation => ({
  kind: 'repair-tried',
  id,
  repair,
  cured,
});
const rankingOf = (observations: readonly Observation[]): ReadonlyMap<string, number> =>
  new Map(
    beliefOf(compiled, { context: {}, observations }).ranking.map(({ cause, probability }) => [cause, probability]),
  );

test('no repair takes less than opening and closing what it needs', () => {
  expect(lintModel(compiled).filter(({ code }) => code === 'repair-below-access')).toEqual([]);
});

describe('a repair and the test of its kind', () => {
  // a test that renews or relearns something says so by its outcomes; it stands for the repairs of what it cures more often than not
  const trials = model.tests.filter(({ outcomes }) => {
    const ids = outcomes.map(({ id }) => id);
    return ids.includes('misfire-gone') && ids.includes('misfire-stays');
  });
  const ofOneKind = trials.flatMap((trial) =>
    trial.rows.flatMap(({ when, p }) =>
      p['misfire-gone']! < 0.5
        ? []
        : (when['cause'] ?? []).flatMap((cause) =>
            model.repairs.filter(({ cures }) => cause in cures).map((repair) => ({ trial: trial.id, repair })),
          ),
    ),
  );

  test('there is one for plug, coil, injector and crank pattern', () => {
    expect(trials.map(({ id }) => id).sort()).toEqual([
      'coil-replaced',
      'crank-relearn',
      'injector-replaced',
      'plug-replaced',
    ]);
    expect(new Set(ofOneKind.map(({ trial }) => trial)).size).toBe(trials.length);
  });

  test('say that they ask the same question', () => {
    const silent = ofOneKind.filter(
      ({ trial, repair: { sameAs } }) =>
        sameAs?.test !== trial || sameAs.cured !== 'misfire-gone' || sameAs.notCured !== 'misfire-stays',
    );
    expect(silent.map(({ trial, repair }) => `${repair.id} as ${trial}`)).toEqual([]);
  });

  test.each(
    [...new Map(ofOneKind.map((one) => [one.repair.id, one])).values()].map(({ trial, repair }) => [repair.id, trial]),
  )('%s did not cure: as much as %s saying so, and not once more when both are entered', (repair, trial) => {
    const asTest = results([trial, 'misfire-stays']);
    const asRepair = [tried('done', repair, false)];
    const once = rankingOf(asTest);
    const twice = rankingOf([...asTest, ...results([trial, 'misfire-stays']).map((one) => ({ ...one, id: 'again' }))]);
    const both = rankingOf([...asTest, ...asRepair]);
    const repaired = rankingOf(asRepair);
    for (const [cause, probability] of once) {
      expect(repaired.get(cause)).toBeCloseTo(probability, 12);
      expect(both.get(cause)).toBeCloseTo(twice.get(cause)!, 12);
    }
  });
});

describe('one job behind one access is one repair', () => {
  test('valves, seats and what else an overhauled head puts right are cured by one repair', () => {
    const overhaul = model.repairs.find(({ id }) => id === 'overhaul-head')!;
    expect(Object.keys(overhaul.cures)).toEqual(
      expect.arrayContaining([
        'exhaust-valve-burnt',
        'intake-valve-leak',
        'valve-seat',
        'gasket-coolant',
        'gasket-adjacent',
      ]),
    );
  });

  test.each(['overhaul-head', 'replace-head'])('a seat found after %s is not a case for the specialist', (done) => {
    const seen = results(
      ['cranking-compression', 'low'],
      ['leak-down', 'to-exhaust'],
      ['borescope-cylinder', 'valve-edge-or-seat-damage'],
      ['borescope-second-look', 'seat-damaged'],
    );
    const after = advise(
      compiled,
      beliefOf(compiled, { context: {}, observations: [...seen, tried('done', done, false)] }),
      {},
    );
    expect(after.best.kind).not.toBe('refer');
    const before = advise(compiled, beliefOf(compiled, { context: {}, observations: seen }), {});
    expect(before.best).toMatchObject({ kind: 'repair', repair: 'overhaul-head' });
  });
});

test('a saved case that renewed valves, a seat or a piston has done the one job', () => {
  const was = ['renew-valves', 'renew-valve-seat', 'renew-piston-and-rings', 'renew-piston-or-engine'];
  const events = was.map((repair, at): CaseEvent => ({ kind: 'repair-tried', id: `r${at}`, repair, cured: false }));
  const saved = {
    format: 'faultodds-case',
    version: 3,
    id: 'old',
    title: 'Invented',
    model: { id: 'misfire', version: 1, hash: '1cf01d7b084ccf24' },
    events,
  };
  const { content, notices } = loadCase(compiled, saved);
  expect(content.events.map((event) => (event.kind === 'repair-tried' ? event.repair : event.kind))).toEqual([
    'overhaul-head',
    'overhaul-head',
    'renew-pistons',
    'renew-pistons',
  ]);
  expect(notices.filter(({ kind }) => kind === 'event-unplaced')).toEqual([]);
});
