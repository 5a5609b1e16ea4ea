// What can hurt somebody: facts of the trade that instructions and cautions of the knowledge have to hold. Common practice, from memory,
// no single source; the vehicle maker's procedure comes first.
import { drivingAdvice, stepFactsOf, beliefOf, type Step } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { compiled, model } from './misfireCases.ts';

const of = (step: Step, openAccess: readonly string[] = []): readonly string[] =>
  stepFactsOf(compiled, {}, { openAccess }, step).cautions;
const look = (id: string, openAccess?: readonly string[]) => of({ kind: 'test', test: id }, openAccess);
const repair = (id: string) => of({ kind: 'repair', repair: id });
const how = (id: string): string => model.tests.find((one) => one.id === id)!.how;

describe('what was missing stands at its step', () => {
  test.each([
    ['fire', ['cranking-compression', 'wet-compression', 'wiggle', 'injector-feed-measured', 'bridge-inspection']],
    ['high-voltage', ['injector-drive', 'noise-listening']],
    ['rotating-parts', ['isolate-egr-pcv', 'trim-pattern', 'power-balance']],
    [
      'catalyst-heat',
      [
        'misfire-counters',
        'coil-swap',
        'plug-swap',
        'injector-swap',
        'plug-replaced',
        'coil-replaced',
        'injector-replaced',
        'cylinder-retard',
      ],
    ],
    ['timing-loss', ['bearing-cap-bolts']],
    ['exhaust-gas', ['coil-feed-measured', 'injector-feed-measured']],
    ['hot-parts', ['coil-feed-measured', 'injector-feed-measured']],
    ['coolant-hot', ['leak-down']],
    ['hydraulic-lock', ['wet-compression', 'coolant-seep-watched', 'borescope-second-look']],
    ['battery-shorts', ['relative-compression', 'coil-feed-measured']],
  ])('%s', (caution, tests) => {
    for (const id of tests) expect(look(id), id).toContain(caution);
  });

  test('fire and the jet through the skin wherever the manifold or an injector comes off', () => {
    for (const { id, access } of model.repairs) {
      if (!access.some((one) => ['manifold-off', 'injector-out', 'head-off'].includes(one))) continue;
      expect(repair(id), id).toEqual(expect.arrayContaining(['fire', 'fuel-jet', 'fuel-leak-check']));
    }
  });

  test('hot parts and open holes stay when the plug is out already', () => {
    for (const id of ['leak-down', 'running-compression', 'borescope-cylinder', 'plug-reading']) {
      expect(look(id, ['plug-out']), id).toEqual(expect.arrayContaining(['hot-parts', 'dropped-objects']));
    }
  });

  test('every drive that proves: second person, leak check, ventilation', () => {
    expect(of({ kind: 'proof-drive' })).toEqual(
      expect.arrayContaining(['road-test', 'fuel-leak-check', 'exhaust-gas', 'catalyst-heat']),
    );
  });

  test('closing has cautions of its own', () => {
    const closing = (access: string) => of({ kind: 'close-access', access }, [access]);
    expect(closing('injector-out')).toContain('fuel-leak-check');
    expect(closing('camshaft-out')).toEqual(expect.arrayContaining(['cap-sequence', 'turn-twice', 'tools-counted']));
    expect(closing('head-off')).toEqual(expect.arrayContaining(['turn-twice', 'hydraulic-lock']));
  });

  test('an engine that starts by itself, springs under load, a carried engine, dust', () => {
    expect(look('rotate-and-watch')).toContain('self-starting');
    for (const id of ['renew-valve-spring', 'renew-camshaft', 'renew-lifter'])
      expect(repair(id)).toContain('stored-force');
    for (const id of ['renew-flexplate', 'renew-cam-sensor-or-phaser']) {
      expect(repair(id), id).toEqual(expect.arrayContaining(['engine-support', 'eyes-lungs']));
    }
  });
});

test('no text is wrong for its place', () => {
  for (const one of model.tests) {
    if (one.cautions.includes('disable-fuel-ignition')) expect(one.how, one.id).toMatch(/crank/i);
    if (one.cautions.includes('turn-by-hand')) expect(one.cautions, one.id).not.toContain('disable-fuel-ignition');
  }
  for (const { id, access } of model.repairs) {
    if (access.includes('head-off')) expect(repair(id), id).toContain('heavy-head');
  }
  expect(repair('clean-intake-ports')).not.toContain('compressed-air');
  expect(repair('clean-intake-ports')).toContain('eyes-lungs');
});

test.each([
  ['leak-down', [/cap/i, /cold/i, /bar and ratchet/i, /low pressure/i, /let it turn/i]],
  ['combustion-gas-coolant', [/start cold/i, /face away/i, /never dip/i, /stop the engine when the level rises/i]],
  ['bearing-cap-bolts', [/mark every bolt/i, /cannot be checked again/i, /renewed/i]],
  ['lobe-pair-angle', [/evenly firing in-line/i, /V engine/, /half of that in cam degrees/i]],
  ['running-compression', [/bleed it, read it at snap throttle, bleed it again/i]],
  ['wet-compression', [/all plugs out/i]],
  ['misfire-counters', [/save codes and frozen data first/i]],
  ['coil-swap', [/save codes and frozen data first/i]],
  ['injector-current', [/50 to 65 V/, /100 to 200 V/, /hold their charge/]],
  ['injector-feed-measured', [/50 to 65 V/, /100 to 200 V/, /hold their charge/]],
])('how %s is done hurts nobody', (id, parts) => {
  for (const part of parts) expect(how(id)).toMatch(part);
});

test('every caution, and what comes of driving on, stands in both languages, in sentences', () => {
  const texts = [
    ...model.cautions.map(({ id, text }) => [id, text] as const),
    ...model.causes.map(({ id, ifDrivenOn }) => [id, ifDrivenOn] as const),
  ];
  for (const [id, text] of texts) {
    if (typeof text === 'string') expect.fail(`${id} is in one language`);
    for (const one of [text.en, text.de ?? '']) {
      expect(one, id).toMatch(/\.$/);
      expect(one.split(' ').length, id).toBeGreaterThan(7);
    }
    expect(text.de, id).not.toBe(text.en);
  }
});

describe('whether it may be driven', () => {
  const after = (...found: (readonly [string, string])[]) =>
    drivingAdvice(model, beliefOf(compiled, { context: {}, observations: results(...found) }));

  test('a worn plug leads at intake: the shortest way', () => {
    expect(after().driving).toBe('shortest-way');
  });

  test('the gravest cause of 5 % decides, not the leader', () => {
    const belief = beliefOf(compiled, {
      context: {},
      observations: results(['cranking-compression', 'near-zero']),
    });
    const told = drivingAdvice(model, belief);
    expect(told.driving).toBe('stop');
    expect(told.probability).toBeGreaterThanOrEqual(model.plausibleFrom.best);
    expect(told.cause).not.toBe(belief.ranking[0]!.cause);
  });
});
