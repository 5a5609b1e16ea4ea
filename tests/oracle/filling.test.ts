// The likelihoods of the compression tests under impaired valve motion, against a physical model of filling that shares nothing with
// them (fillCylinder.ts, sources there). Range taken for "opens too little": a tenth to nine tenths of the inlet lift lost to play, or the
// whole lift scaled down to a twentieth, cranked at 150 to 300 rpm (common practice for a warm engine: 200-250).
import { describe, expect, test } from 'vitest';
import { parseModel, type ConditionalRow, type MeasuredReading, type Test } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { fillCylinder, type ValveFault } from './fillCylinder.ts';

const model = parseModel(misfire);
const testOf = (id: string): Test => model.tests.find((one) => one.id === id)!;
const rowOf = (rows: readonly ConditionalRow[], when: object): ConditionalRow =>
  rows.find((row) => JSON.stringify(row.when) === JSON.stringify(when))!;
const chance = (id: string, when: object, ...outcomes: string[]): number =>
  outcomes.reduce((sum, outcome) => sum + rowOf(testOf(id).rows, when).p[outcome]!, 0);
/** Mean of the reading under one row, by its distributions. */
const meanReading = (id: string, when: object): number => {
  const { rows, distributions } = testOf(id).readings![0] as MeasuredReading;
  return Object.entries(rowOf(rows, when).p).reduce(
    (sum, [named, share]) => sum + share * distributions.find((one) => one.id === named)!.mean,
    0,
  );
};

const PLAY = [0.1, 0.25, 0.5, 0.75, 0.9].map((inletPlay): ValveFault => ({ inletPlay }));
const SCALED = [0.5, 0.25, 0.1, 0.05].map((inletLift): ValveFault => ({ inletLift }));
const REDUCED = [...PLAY, ...SCALED];

const gauge = (rpm: number, fault: ValveFault = {}): number => fillCylinder(rpm, fault).compression - 1e5;
const ratios = (rpm: number, faults: readonly ValveFault[]): number[] => {
  const sound = gauge(rpm);
  return faults.map((fault) => gauge(rpm, fault) / sound);
};

// Published check F4 of the reference folder. Tolerance there 2e-3 relative; here also 1e-3 absolute, for the near-zero efficiencies.
describe('the filling model gives the reference figures', () => {
  test.each([
    [225, { inletLift: 1 }, 0.922236, 18.2596],
    [225, { inletLift: 0.5 }, 0.935258, 18.5895],
    [225, { inletLift: 0.05 }, 0.945682, 19.7131],
    [225, { inletLift: 0.02 }, 0.774295, 17.7401],
    [225, { inletLift: 0.01 }, 0.403911, 9.97835],
    [225, { inletLift: 0 }, -0.022987, 0.823655],
    [2000, { inletLift: 1 }, 0.957952, 19.3635],
    [2000, { inletLift: 0.1 }, 0.46148, 11.1918],
    [6000, { inletLift: 0.25 }, 0.446961, 10.4065],
    [225, { inletPlay: 0.9 }, 0.697098, 16.7447],
    [800, { inletPlay: 0.75 }, 0.770274, 18.0759],
    [6000, { inletPlay: 0.5 }, 0.595215, 13.5345],
    [225, { exhaustLift: 0.25 }, 0.922163, 18.2596],
    [225, { exhaustLift: 0 }, 0.92274, 18.2597],
  ])('%d rpm, %j', (rpm, fault, efficiency, bar) => {
    const found = fillCylinder(rpm, fault);
    expect(Math.abs(found.volumetricEfficiency - efficiency)).toBeLessThan(1e-3 + 2e-3 * Math.abs(efficiency));
    expect(Math.abs(found.compression / 1e5 / bar - 1)).toBeLessThan(2e-3);
  });

  // Heywood 6.3 and Taylor: filling is flat below an inlet Mach index of about 0.5-0.6 and falls steeply above
  test('filling is flat below an inlet Mach index of one half and falls steeply above', () => {
    const slow = fillCylinder(2000, { inletLift: 0.5 });
    const fast = fillCylinder(6000, { inletLift: 0.25 });
    expect(slow.machIndex).toBeLessThan(0.5);
    expect(slow.volumetricEfficiency).toBeGreaterThan(0.9);
    expect(fast.machIndex).toBeGreaterThan(1.5);
    expect(fast.volumetricEfficiency).toBeLessThan(0.5);
  });
});

describe('cranking compression with valves that open too little', () => {
  const cranked = [150, 225, 300].flatMap((rpm) => ratios(rpm, REDUCED));

  test('an inlet that opens too little hardly lowers the cranking pressure', () => {
    expect(Math.min(...cranked)).toBeGreaterThan(0.85);
    expect(Math.max(...cranked)).toBeLessThan(1.15);
  });

  test('the mean reading of the model lies within the predicted range', () => {
    const mean = meanReading('cranking-compression', { valve_motion: ['intake_reduced'] });
    expect(mean).toBeGreaterThan(Math.min(...cranked) - 0.02);
    expect(mean).toBeLessThan(Math.max(...cranked));
  });

  test('the chance of passing lies between that of nineteen twentieths of the lift lost and that of a sound cylinder', () => {
    // every predicted ratio passes the 75 % rule; with 95 % lost it fails, so a model that holds a few such cases passes a little less
    expect(cranked.every((ratio) => ratio >= 0.75)).toBe(true);
    const nearlyShut = ratios(225, [{ inletPlay: 0.95 }])[0]!;
    expect(nearlyShut).toBeLessThan(0.75);
    const passes = chance('cranking-compression', { valve_motion: ['intake_reduced'] }, 'normal', 'marginal');
    const whenSound = chance('cranking-compression', {}, 'normal', 'marginal');
    const shareNearlyShut = 0.1; // of the range of play, nine tenths to all: an even prior over lost lift
    expect(passes).toBeGreaterThanOrEqual((1 - shareNearlyShut) * whenSound);
    expect(passes).toBeLessThanOrEqual(whenSound);
  });

  test('an exhaust that opens too little, or not at all, leaves the reading as it is', () => {
    const predicted = ratios(225, [{ exhaustLift: 0.25 }, { exhaustLift: 0 }]);
    for (const ratio of predicted) expect(ratio).toBeCloseTo(1, 2);
    for (const state of ['exhaust_reduced', 'exhaust_shut']) {
      // real readings stand a little under the highest of several sound ones
      expect(meanReading('cranking-compression', { valve_motion: [state] })).toBeGreaterThan(0.85);
      expect(chance('cranking-compression', { valve_motion: [state] }, 'normal', 'marginal')).toBeGreaterThan(0.85);
    }
  });

  test('an inlet that does not open pumps nothing', () => {
    const [predicted] = ratios(225, [{ inletLift: 0 }]);
    expect(predicted).toBeLessThan(0.02);
    expect(meanReading('cranking-compression', { valve_motion: ['intake_shut'] })).toBeLessThan(0.25);
    expect(chance('cranking-compression', { valve_motion: ['intake_shut'] }, 'normal', 'marginal')).toBeLessThan(0.1);
  });
});

describe('running compression with an inlet that opens too little', () => {
  // low at snap: below 0.64 of cranking where 0.8 is sound
  const LOW = 0.64 / 0.8;
  const faults = [0.25, 0.5, 0.6, 0.75, 0.9]
    .map((inletPlay): ValveFault => ({ inletPlay }))
    .concat([0.5, 0.35, 0.25, 0.1, 0.05].map((inletLift): ValveFault => ({ inletLift })));
  const shareLow = (rpm: number): number => {
    const found = ratios(rpm, faults);
    return found.filter((ratio) => ratio < LOW).length / found.length;
  };

  test('the chance of a low snap reading lies between what 2000 and 5000 rpm predict', () => {
    const charge = model.mechanisms.find(({ id }) => id === 'charge')!;
    const filling = rowOf(charge.rows!, { valve_motion: ['intake_reduced'] }).p;
    const rows: Record<string, object> = {
      full: {},
      reduced: { charge: ['reduced'] },
      starved: { charge: ['starved'] },
      diluted: { charge: ['diluted'] },
    };
    const low = Object.entries(filling).reduce(
      (sum, [state, share]) => sum + share * chance('running-compression', rows[state]!, 'low-at-snap'),
      0,
    );
    expect(low).toBeGreaterThan(shareLow(2000));
    expect(low).toBeLessThan(shareLow(5000));
  });

  test('the readings of reduced and of starved filling are filling ratios that the range holds', () => {
    const found = [2000, 4000, 6000].flatMap((rpm) => ratios(rpm, faults));
    for (const state of ['reduced', 'starved']) {
      const ratio = meanReading('running-compression', { charge: [state] }) / meanReading('running-compression', {});
      expect(ratio).toBeGreaterThan(Math.min(...found));
      expect(ratio).toBeLessThan(Math.max(...found));
    }
  });

  test('at idle speed half of the lift still fills the cylinder, which a cranking pass cannot exclude either', () => {
    expect(ratios(800, [{ inletPlay: 0.5 }])[0]).toBeGreaterThan(0.95);
    expect(ratios(6000, [{ inletPlay: 0.5 }])[0]).toBeLessThan(0.7);
  });
});
