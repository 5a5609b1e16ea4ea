// The data of priors/ against the trade reference it was written from, number by number, exactly; where a second reading departs from
// it on purpose, against the table of corrections, which names both numbers.
import { describe, expect, test } from 'vitest';
import { parseModel, textIn, type ConditionalRow, type Model, type Quantity, type Row } from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';
import { conditionOf, CORRECTED, corrections, correctedRow, correctedRows, reasons } from './corrections.ts';
import { correctedAccess, correctedCautions, correctionsOfCautions } from './correctionsOfCautions.ts';
import { addedRepairs, correctedOpening, correctedQuantity, correctedRepairs } from './correctionsOfRepairs.ts';
import { readDossier, type Distribution, type Dossier, type DossierRow, type Number3 } from './readDossier.ts';

const found = readDossier();

// Causes, tests and sources the data holds beyond the dossier (priors/README.md, "Beyond the dossier").
const ADDED_CAUSES: readonly string[] = [];
const ADDED_TESTS = ['cylinder-retard'];
const CONFIRMING = 'confirm';
const ADDED_MECHANISMS = ['spark_reserve', 'injector_scatter', 'port_deposits', 'cam_scatter'];
const ADDED_PAIRS = 17;
// harmless states, each second in its mechanism
const MILD: Readonly<Record<string, string>> = { sealing: 'slight_leak', valve_motion: 'slightly_uneven' };
const ADDED_SOURCES = ['definition', CORRECTED, 'third-reading'];
// Answers that let a one-answer feature be denied; they move nothing.
const ADDED_ANSWERS = ['no', 'fewer-than-eight', 'elsewhere', 'regular', 'steady'];

const quantity = ({ best, low, high, ess, source }: Number3, scale = 1): Quantity => ({
  best: times(best, scale),
  low: times(low, scale),
  high: times(high, scale),
  ess,
  source,
  // zero effective cases is how the dossier marks what is true by definition
  ...(ess === 0 ? { definitional: true } : {}),
});
const times = (value: number, scale: number): number => Number((value * scale).toFixed(9));
const row = ({ p, ess, source }: DossierRow): Row => ({ p, ess, source });
const conditionalRow = (from: DossierRow): ConditionalRow => ({
  when: Object.fromEntries(Object.entries(from.when ?? {}).map(([key, value]) => [key, [value].flat()])),
  ...row(from),
});
const byId = <T extends { id: string }>(list: readonly T[], id: string): T => {
  const found = list.find((item) => item.id === id);
  if (found === undefined) throw new Error(`'${id}' is missing`);
  return found;
};
const sorted = (ids: readonly string[]): string[] => [...ids].sort();
const ids = (list: readonly { readonly id: string }[]): string[] => sorted(list.map(({ id }) => id));
const plain = (text: string): string => text.toLowerCase().replace(/[.;]$/, '');

describe.skipIf(found === undefined)('the data encodes the dossier', () => {
  const dossier = (found ?? {}) as Dossier;
  const model: Model = parseModel(misfire);
  const statesOf = (mechanism: string) => byId(model.mechanisms, mechanism).states.map(({ id }) => id);

  test('nothing is left out and nothing is slipped in', () => {
    expect(ids(model.causes)).toEqual(sorted([...ids(dossier.causes), ...ADDED_CAUSES]));
    const { roots, dependent } = dossier.mechanisms;
    expect(ids(model.mechanisms)).toEqual(sorted([...ids([...roots, ...dependent]), ...ADDED_MECHANISMS]));
    const found = model.tests.filter(({ category }) => category !== CONFIRMING);
    expect(ids(found)).toEqual(sorted([...ids(dossier.tests), ...ADDED_TESTS]));
    expect(ids(model.access)).toEqual(ids(dossier.access));
    expect(ids(model.context)).toEqual(ids(dossier.context.features));
    expect(ids(model.cautions)).toEqual(sorted([...Object.keys(dossier.cautions), ...correctionsOfCautions.added]));
    expect(ids(model.sources)).toEqual(sorted([...ids(dossier.sources), ...ADDED_SOURCES]));
    expect([
      dossier.causes.length,
      model.mechanisms.length,
      dossier.tests.length,
      model.access.length,
      model.context.length,
      model.dependentPairs.length,
      model.glossary.length,
      model.reasoningErrors.length,
      demoCases.length,
    ]).toEqual([36, 10 + ADDED_MECHANISMS.length, 46, 16, 21, 33 + ADDED_PAIRS, 59, 14, 12]);
  });

  test('labour, cap, overlaps and sources', () => {
    expect(model.labourPerHour).toEqual(quantity(dossier.units.labourRate));
    expect(model.contextCap).toEqual(dossier.context.cap);
    expect(model.contextOverlaps).toEqual(dossier.context.overlaps.map(([a, b]) => ({ a, b })));
    for (const source of dossier.sources) expect(byId(model.sources, source.id)).toEqual(source);
  });

  test('every context multiplier', () => {
    for (const feature of dossier.context.features) {
      const encoded = byId(model.context, feature.id);
      const known = feature.values.map(({ value }) => value);
      const added = encoded.values.filter(({ id }) => !known.includes(id));
      expect(
        added.every(({ id, multipliers }) => ADDED_ANSWERS.includes(id) && Object.keys(multipliers).length === 0),
      ).toBe(true);
      expect(encoded.values.length).toBeGreaterThan(1);
      for (const { value, multipliers } of feature.values) {
        const expected = Object.entries(multipliers).map(([cause, number]) => [cause, quantity(number)]);
        expect(byId(encoded.values, value).multipliers, `${feature.id}: ${value}`).toEqual(
          Object.fromEntries(expected),
        );
      }
    }
  });

  test('every cause: words, weight, activity and mechanism states', () => {
    for (const cause of dossier.causes) {
      const encoded = byId(model.causes, cause.id);
      // what comes of driving on is told in sentences of its own (knowledgeSafety.test.ts)
      const { ifDrivenOn: _, driving: __, ...rest } = encoded;
      expect(rest, cause.id).toEqual({
        id: cause.id,
        label: cause.label,
        group: cause.group,
        description: cause.description,
        customerFeels: cause.customerFeels,
        ...(cause.requires === null ? {} : { requires: cause.requires }),
        weight: quantity(cause.weight),
        activeFraction: quantity(cause.activeFraction),
        states: Object.fromEntries(
          Object.entries(cause.states).map(([mechanism, from]) => [
            mechanism,
            correctedRow(row(from), statesOf(mechanism), 'causes', cause.id, mechanism),
          ]),
        ),
      });
    }
  });

  test('every mechanism: background rows and conditional rows in their order', () => {
    for (const { id, label, states, background } of dossier.mechanisms.roots) {
      const encoded = byId(model.mechanisms, id);
      expect([encoded.label, encoded.states.map((state) => state.id), encoded.background]).toEqual([
        label,
        MILD[id] === undefined ? states : states.toSpliced(1, 0, MILD[id]),
        correctedRow(row(background), statesOf(id), 'mechanisms', id, 'background'),
      ]);
    }
    for (const { id, label, states, parents, rows } of dossier.mechanisms.dependent) {
      const encoded = byId(model.mechanisms, id);
      expect([encoded.label, encoded.states.map((state) => state.id), encoded.parents]).toEqual([
        label,
        states,
        parents,
      ]);
      expect(encoded.rows).toEqual(correctedRows(rows.map(conditionalRow), states, 'mechanisms', id));
    }
  });

  test('every test: rows in their order, prices, tools, access, repeatability', () => {
    for (const from of dossier.tests) {
      const encoded = byId(model.tests, from.id);
      expect(encoded.rows, from.id).toEqual(
        correctedRows(from.rows.map(conditionalRow), from.outcomes, 'tests', from.id),
      );
      expect(
        {
          label: encoded.label,
          category: encoded.category,
          outcomes: encoded.outcomes.map(({ id }) => id),
          minutes: encoded.minutes,
          consumables: encoded.consumables,
          repeatability: encoded.repeatability,
          equipment: encoded.equipment,
          access: encoded.access,
          faultMustBeActive: encoded.faultMustBeActive,
          appliesWhen: encoded.appliesWhen ?? null,
        },
        from.id,
      ).toEqual({
        label: from.label,
        category: from.category,
        outcomes: from.outcomes,
        minutes: quantity(from.time, 60),
        consumables: quantity(from.consumables),
        repeatability: quantity(from.repeatability),
        equipment: from.tools,
        access: correctedAccess[from.id] ?? from.access,
        faultMustBeActive: from.faultMustBeActive,
        appliesWhen: from.appliesWhen?.anyOf ?? null,
      });
      // cautions may be added, never dropped; what was wrong for the place has another in its place
      expect(encoded.cautions, from.id).toEqual(expect.arrayContaining([...correctedCautions(from.id, from.cautions)]));
    }
  });

  test('every correction names the number that the dossier has, another one, and a reason', () => {
    const keys = corrections.map(({ kind, id, place }) => `${kind} ${id} ${place}`);
    expect(new Set(keys).size).toBe(corrections.length);
    for (const { kind, id, place, at, dossier: theirs, ours, reason } of corrections) {
      const where = `${kind} ${id} ${place}`;
      expect(Object.keys(reasons), where).toContain(reason);
      expect(ours, where).not.toEqual(theirs);
      expect(at === undefined, where).toBe(theirs !== undefined);
      const printed =
        kind === 'causes'
          ? byId(dossier.causes, id).states[place]
          : place === 'background'
            ? byId(dossier.mechanisms.roots, id).background
            : (kind === 'tests' ? byId(dossier.tests, id) : byId(dossier.mechanisms.dependent, id)).rows.find(
                (from) => conditionOf(conditionalRow(from)) === place,
              );
      expect(printed === undefined ? undefined : Object.values(printed.p), where).toEqual(theirs);
    }
  });

  test('every reading: distributions and the rule of thumb beside them', () => {
    for (const { id, reading } of dossier.tests) {
      if (reading === null) continue;
      const readings = byId(model.tests, id).readings ?? [];
      const { unit: _, rule, ruleSource, ...states } = reading;
      // the reading of the dossier stands first; the others were added (priors/README.md, "Beyond the dossier")
      const [first] = readings;
      if (first?.kind === 'counts') {
        const { healthy, fault } = first.rates;
        for (const [state, rate] of Object.entries({ healthy, fault })) {
          const { mean, shape, source } = (states as Record<string, Distribution>)[state]!;
          expect({ mean: rate.mean, shape: rate.shape, source: rate.source }, `${id} ${state}`).toEqual({
            mean,
            shape,
            source,
          });
        }
      } else {
        if (first?.kind !== 'measured') throw new Error(`${id} has no measured reading`);
        // rpm drops differ from engine to engine: judged as a ratio to the neighbours' 80 rpm
        const scale = id === 'power-balance' ? 1 / 80 : 1;
        for (const [state, { dist, mean, sd, shape, source }] of Object.entries(
          states as Record<string, Distribution>,
        )) {
          const { label: __, ess, ...found } = byId(first.distributions, state);
          expect(found, `${id} ${state}`).toEqual({
            id: state,
            family: dist,
            mean: times(mean, scale),
            ...(sd === undefined ? {} : { sd: times(sd, scale) }),
            ...(shape === undefined ? {} : { shape }),
            source,
          });
          expect(ess).toBe(8);
        }
      }
      expect(plain(first.ruleOfThumb.text)).toContain(plain(rule));
      expect(ruleSource.split(' ')[0]).toBe(first.ruleOfThumb.source);
    }
  });

  test('every cause keeps a repair with the dossier hours, parts, access and chance of success, or their corrections', () => {
    for (const { id, repair } of dossier.causes) {
      const corrected = correctedRepairs[id];
      const wanted = {
        minutes: correctedQuantity(quantity(repair.workHours, 60), corrected?.minutes),
        parts: correctedQuantity(quantity(repair.parts), corrected?.parts),
        access: corrected?.access ?? repair.access,
        success: quantity(repair.success),
      };
      const candidates = model.repairs
        .filter((one) => id in one.cures && !(one.id in addedRepairs))
        .map(({ minutes, parts, access, cures }) => ({ minutes, parts, access, success: cures[id] }));
      expect(candidates, id).toContainEqual(wanted);
      // a job that cures a cause besides its own does so with that cause's own chance
      for (const { success } of candidates) expect(success).toEqual(wanted.success);
    }
    for (const [id, chances] of Object.entries(addedRepairs)) {
      const { cures } = byId(model.repairs, id);
      expect(Object.fromEntries(Object.entries(cures).map(([cause, { best }]) => [cause, best]))).toEqual(chances);
    }
    expect(model.repairs.filter(({ referral }) => referral === true).map(({ id }) => id)).toEqual([
      'refer-to-specialist',
    ]);
  });

  test('every corrected price has the number of the dossier beside it, and another one', () => {
    const three = ({ best, low, high }: Number3, scale = 1) => [best, low, high].map((value) => times(value, scale));
    for (const [id, { minutes, parts, access }] of Object.entries(correctedRepairs)) {
      const { repair } = byId(dossier.causes, id);
      if (minutes !== undefined) expect(three(repair.workHours, 60), id).toEqual(minutes.dossier);
      if (parts !== undefined) expect(three(repair.parts), id).toEqual(parts.dossier);
      expect(access, id).not.toEqual(repair.access);
      for (const one of [minutes, parts]) if (one !== undefined) expect(one.ours, id).not.toEqual(one.dossier);
    }
    for (const [id, { open, close }] of Object.entries(correctedOpening)) {
      const { openHours, closeHours } = byId(dossier.access, id);
      expect([three(openHours, 60), three(closeHours, 60)], id).toEqual([open.dossier, close.dossier]);
    }
  });

  test('every access operation', () => {
    for (const { id, label, requires, openHours, closeHours, parts, cautions } of dossier.access) {
      const { cautions: ours, cautionsClosing: _, engine: __, opensEngine: ___, ...rest } = byId(model.access, id);
      expect(ours).toEqual(expect.arrayContaining(cautions));
      expect(rest).toEqual({
        id,
        label,
        requires,
        openMinutes: correctedQuantity(quantity(openHours, 60), correctedOpening[id]?.open),
        closeMinutes: correctedQuantity(quantity(closeHours, 60), correctedOpening[id]?.close),
        parts: quantity(parts),
      });
    }
  });

  test('cautions, dependent pairs, glossary, reasoning errors', () => {
    for (const [id, theirs] of Object.entries(dossier.cautions)) {
      const ours = textIn(byId(model.cautions, id).text, 'en');
      const isReworded = (correctionsOfCautions.reworded as readonly string[]).includes(id);
      expect(ours === theirs, id).toBe(!isReworded);
    }
    // the one pair that names intake facts names them by their id here
    const encoded = model.dependentPairs.slice(0, -ADDED_PAIRS);
    expect(encoded.map(({ a, b, shared, note }) => ({ a, b, shared, note }))).toEqual(
      dossier.dependentPairs.map(({ a, b, shared, treatment }) => ({
        a,
        b: b === 'intake pattern' ? 'pattern' : b,
        shared,
        note: treatment,
      })),
    );
    expect(Object.fromEntries(model.glossary.map(({ term, meaning }) => [term, meaning]))).toEqual(dossier.glossary);
    expect(model.reasoningErrors).toEqual(dossier.reasoningErrors);
  });

  test('proof of the repair', () => {
    const { verification } = model;
    const { table, tableEss, accept, order, similarConditions, rule } = dossier.verification;
    expect(verification.order.map(plain)).toEqual(order.map(plain));
    expect(verification.similarConditions).toEqual(similarConditions);
    expect(verification.rule).toEqual(rule);
    expect(verification.accept.countsPer1000Firings.best).toBe(accept.countsPer1000Firings);
    expect(plain(verification.accept.monitorRun)).toBe(plain(accept.monitorRun));
    const encoded = verification.checks.map(({ when, minutes, distanceKm, days }) => [
      Object.values(when).flat().join(' or ').replaceAll('comes-and-goes', 'comes and goes') || 'always present',
      minutes.best,
      minutes.ess,
      distanceKm,
      days,
    ]);
    const expected = table.map(({ pattern, hours, km, days }) => [pattern, times(hours, 60), tableEss, km, days]);
    expect(encoded).toHaveLength(expected.length);
    expect(encoded).toEqual(expect.arrayContaining(expected));
  });

  test('signs of valve faults and the filling limit', () => {
    const { cases, machIndex } = dossier.physics;
    const words = (signs: object): string[] => Object.values(signs).map(plain);
    expect(model.valveFaultSigns.map(words)).toEqual(
      cases.map(({ note, ...signs }) =>
        // the model has no room for a note: it joins the last column
        words({
          ...signs,
          inCylinder: [signs['inCylinder'], ...(note === undefined ? [] : [note])].join('; '),
          source: 'judgement',
        }),
      ),
    );
    const { limit, ...rest } = machIndex;
    expect(model.fillingLimit).toEqual({ ...rest, limit: limit.value, source: limit.source });
  });

  // what they cost is held against the dossier in demoCosts.test.ts: here what a drive closes is paid again
  test('demo cases: intake facts, results in order and lesson', () => {
    const encoded = demoCases as readonly {
      id: string;
      title: string;
      demo: object;
      events: Record<string, string>[];
    }[];
    for (const { id, title, context, steps, trueCause, lesson } of dossier.demoCases) {
      const found = byId(encoded, id);
      expect(found.title).toBe(title);
      expect(found.demo).toMatchObject({ invented: true, trueCause, lesson });
      // the dossier names no engine; the cases state one where their text does
      expect(found.events.filter(({ kind }) => kind !== 'engine-set')).toEqual([
        ...Object.entries(context).map(([feature, value]) => ({ kind: 'context-set', feature, value })),
        ...steps.map(({ test: of, outcome }, at) => ({
          kind: 'result-recorded',
          id: `r${at + 1}`,
          test: of,
          outcome,
          faultActive: 'yes',
        })),
      ]);
    }
  });
});
