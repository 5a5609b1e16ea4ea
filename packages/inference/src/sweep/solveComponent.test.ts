import { describe, expect, test } from 'vitest';
import { combineComponents } from './combineComponents.ts';
import { eliminateComponent, factorsOf, solveComponent } from './solveComponent.ts';
import type { SweepComponent } from './sweepComponent.ts';
import { splitByRoot, type SweepFactor } from './sweepFactor.ts';

// position 0 is the root with three states; 1 and 2 are made of it and of each other, 3 stands alone with three states, 4 has two parents
const cardinalities = Int32Array.of(3, 2, 2, 3, 2);
const factor = (variables: readonly number[], values: readonly number[]): SweepFactor =>
  splitByRoot(variables, Float64Array.from(values), 1, 0, cardinalities, false);

// P(x | root): the first two root states agree
const x = (): SweepComponent => combineComponents([], factor([0, 1], [0.9, 0.1, 0.9, 0.1, 0.4, 0.6]), true);
const yGivenX = factor([1, 2], [0.7, 0.3, 0.2, 0.8]);
const xy = (): SweepComponent => combineComponents([x()], yGivenX, true);
const w = (): SweepComponent => combineComponents([], factor([3], [0.5, 0.3, 0.2]), true);
const observed = (component: SweepComponent, by: SweepFactor): SweepComponent =>
  combineComponents([component], by, false);
const solve = (component: SweepComponent) => solveComponent(component, cardinalities);

function expectClose(found: ArrayLike<number>, expected: readonly number[]): void {
  expect(found.length).toBe(expected.length);
  expected.forEach((value, k) => expect(found[k], `entry ${k}`).toBeCloseTo(value, 13));
}

describe('a joint', () => {
  test('of a family and its parent has one block per class of root states, last variable fastest', () => {
    const component = xy();
    expect(component.firstOf).toEqual(Int32Array.of(0, 2));
    const { joint, logShift, logTotal, smallest } = solve(component);
    expectClose(joint!, [0.9 * 0.7, 0.9 * 0.3, 0.1 * 0.2, 0.1 * 0.8, 0.4 * 0.7, 0.4 * 0.3, 0.6 * 0.2, 0.6 * 0.8]);
    expectClose(logTotal, [0, 0]);
    expect([...logShift]).toEqual([0, 0]);
    // the smallest of either table
    expect(smallest).toBeCloseTo(0.1 * 0.2, 15);
  });

  test('times a likelihood totals what was observed: 0.65 + 0.35 / 4 and 0.4 + 0.6 / 4', () => {
    const { joint, logTotal } = solve(observed(xy(), factor([2], [1, 0.25])));
    expectClose(joint!, [0.63, 0.0675, 0.02, 0.02, 0.28, 0.03, 0.12, 0.12]);
    expectClose(logTotal, [Math.log(0.65 + 0.35 / 4), Math.log(0.4 + 0.6 / 4)]);
  });

  test('of two components is their outer product, a new variable last, the factor over any of them', () => {
    // z is 1 with 0.1 (1 + x + w)
    const z = [0, 1].flatMap((i) => [0, 1, 2].flatMap((k) => [1 - 0.1 * (1 + i + k), 0.1 * (1 + i + k)]));
    const component = combineComponents([x(), w()], factor([1, 3, 4], z), true);
    expect(component.variables).toEqual([1, 3, 4]);
    const priors = [
      [0.9, 0.1],
      [0.4, 0.6],
    ];
    expectClose(
      solve(component).joint!,
      priors.flatMap((prior) =>
        [0, 1].flatMap((i) =>
          [0.5, 0.3, 0.2].flatMap((p, k) => [0, 1].map((s) => prior[i]! * p * z[(i * 3 + k) * 2 + s]!)),
        ),
      ),
    );
  });

  test('a likelihood that root states differ in makes classes of its own', () => {
    const component = observed(x(), factor([0, 1], [1, 0, 0, 1, 0.5, 0.5]));
    expect(component.firstOf).toEqual(Int32Array.of(0, 1, 2));
    const { joint, logTotal } = solve(component);
    expectClose(joint!, [0.9, 0, 0, 0.1, 0.2, 0.3]);
    expectClose(logTotal, [Math.log(0.9), Math.log(0.1), Math.log(0.5)]);
  });

  test('is made once', () => {
    const component = xy();
    expect(solve(component)).toBe(solve(component));
  });
});

describe('a class that is impossible', () => {
  test('has zeros and the logarithm of nothing; the others are not touched', () => {
    const { joint, logTotal } = solve(observed(x(), factor([0, 1], [0, 0, 1, 1, 0, 0])));
    // the third has another x, so a class of its own
    expectClose(joint!, [0, 0, 0.9, 0.1, 0, 0]);
    expect([...logTotal]).toEqual([-Infinity, 0, -Infinity]);
  });

  test('in logarithms too', () => {
    const tiny = factor([0, 1], [0, 0, 1e-260, 1, 0, 0]);
    const { joint, logShift, logTotal } = solve(observed(x(), tiny));
    expect([...joint!.subarray(0, 2)]).toEqual([0, 0]);
    expect(logShift[0]).toBe(0);
    expect(logTotal[0]).toBe(-Infinity);
    expect(logTotal[1]).toBeCloseTo(Math.log(0.1), 13);
  });
});

describe('small numbers', () => {
  const small = factor([2], [1e-70, 2e-70]);

  test('a class of small total is scaled to one and the logarithm kept', () => {
    const once = observed(xy(), small);
    const { joint, logShift, logTotal, smallest } = solve(once);
    // first class: y is 0 with 0.65; total (0.65 + 2 * 0.35) 1e-70
    const total = Math.log(1.35) + Math.log(1e-70);
    expectClose(joint!.subarray(0, 4), [0.63 / 1.35, 0.54 / 1.35, 0.02 / 1.35, 0.16 / 1.35]);
    expect(logShift[0]).toBeCloseTo(total, 12);
    expect(logTotal[0]).toBeCloseTo(total, 12);
    expect(smallest / 2e-72).toBeCloseTo(1, 12);
    // what comes on top starts from there
    const twice = solve(observed(once, factor([2], [0.5, 1])));
    expect(twice.logTotal[0]).toBeCloseTo(Math.log(0.65 * 0.5 + 0.35 * 2) + Math.log(1e-70), 12);
    const again = solve(observed(once, small));
    expect(again.logTotal[0]).toBeCloseTo(Math.log(0.65 + 4 * 0.35) + 2 * Math.log(1e-70), 11);
  });

  test('a total above 1e-60 is left as it is', () => {
    const { logShift } = solve(observed(xy(), factor([2], [1e-59, 2e-59])));
    expect([...logShift]).toEqual([0, 0]);
  });

  test('where they could leave the range of doubles the product is made in logarithms, its largest entry one', () => {
    // 1e-280 of everything; the parts' smallest multiply to 2e-282
    const four = [small, small, small, small].reduce((component, by) => observed(component, by), xy());
    const { joint, logShift, logTotal, smallest } = solve(four);
    // first class: 0.63, 0.27 * 16, 0.02, 0.08 * 16
    expectClose(joint!.subarray(0, 4), [0.63 / 4.32, 1, 0.02 / 4.32, 1.28 / 4.32]);
    expect(logShift[0]).toBeCloseTo(Math.log(4.32) + 4 * Math.log(1e-70), 10);
    expect(logTotal[0]).toBeCloseTo(Math.log(0.65 + 0.35 * 16) + 4 * Math.log(1e-70), 10);
    // the smallest entry: of the first class
    expect(smallest).toBeCloseTo(0.02 / 4.32, 13);
    expect(logTotal[1]).toBeCloseTo(Math.log(0.4 + 0.6 * 16) + 4 * Math.log(1e-70), 10);
  });

  test('that weigh each other up are not lost', () => {
    // 150 for one state, 150 as strongly for the other: nothing is learnt
    const towards = [factor([1], [1, 1e-4]), factor([1], [1e-4, 1])];
    const component = Array.from({ length: 300 }, (_, k) => towards[k % 2]!).reduce(observed, x());
    const { joint, logTotal } = solve(component);
    expect(joint![0]! / joint![1]!).toBeCloseTo(9, 9);
    expect(joint![2]! / joint![3]!).toBeCloseTo(4 / 6, 9);
    expect(logTotal[0]! / (150 * Math.log(1e-4))).toBeCloseTo(1, 12);
  });

  test('an entry that is lost makes the smallest nothing', () => {
    // e^-900 beside 1
    const far = [factor([1], [1, 1e-200]), factor([1], [1, 1e-200])].reduce(observed, x());
    const { joint, smallest } = solve(far);
    expect(joint![1]).toBe(0);
    expect(smallest).toBe(0);
  });
});

describe('summed down', () => {
  test('to some variables it is their share of the joint', () => {
    const found = eliminateComponent(observed(xy(), factor([2], [1, 0.25])), [1], cardinalities);
    expect(found.variables).toEqual([1]);
    expect([0, 2].map((r) => found.classOf[r])).toEqual([0, 1]);
    expectClose(found.blocks.subarray(0, 4), [0.6975, 0.04, 0.31, 0.24]);
  });

  test('in logarithms where parts together leave the range of doubles: the largest is one', () => {
    const small = factor([2], [1e-140, 2e-140]);
    const found = eliminateComponent(observed(observed(xy(), small), small), [1], cardinalities);
    // first class: x is 0 with 0.63 + 0.27 * 4, 1 with 0.02 + 0.08 * 4; second 0.28 + 0.48, 0.12 + 1.92
    expectClose(found.blocks, [1, 0.34 / 1.71, 0.76 / 2.04, 1]);
    expect(found.size).toBe(2);
    expect(found.logs![0]).toBeCloseTo(Math.log(1.71) + 2 * Math.log(1e-140), 10);
    expect(found.logs![1]).toBeCloseTo(Math.log(2.04) + 2 * Math.log(1e-140), 10);
    // an impossible class says nothing
    const none = factor([0, 1], [0, 0, 1e-260, 1, 0, 0]);
    const half = eliminateComponent(observed(x(), none), [], cardinalities);
    expect([...half.blocks]).toEqual([0, 1, 0]);
    expect(half.logs![0]).toBe(0);
    expect(half.logs![1]).toBeCloseTo(Math.log(0.1), 12);
  });
});

describe('a chain of sixteen, too large to be multiplied out', () => {
  // two states each, the next like the last with 0.9; 2^16 configurations
  const sixteen = Int32Array.from({ length: 17 }, (_, v) => (v === 0 ? 3 : 2));
  const of = (variables: readonly number[], values: readonly number[]): SweepFactor =>
    splitByRoot(variables, Float64Array.from(values), 1, 0, sixteen, false);
  const chainOf = (length: number): SweepComponent => {
    let component = combineComponents([], of([0, 1], [0.75, 0.25, 0.75, 0.25, 0.4, 0.6]), true);
    for (let v = 2; v <= length; v += 1)
      component = combineComponents([component], of([v - 1, v], [0.9, 0.1, 0.1, 0.9]), true);
    return component;
  };
  // like the first with (1 + 0.8^15) / 2
  const like = (1 + 0.8 ** 15) / 2;
  const firstOfLast = [0.75 * like + 0.25 * (1 - like), 0.4 * like + 0.6 * (1 - like)];

  test('has totals but no joint', () => {
    const { joint, logTotal, logShift, smallest } = solveComponent(observed(chainOf(16), of([16], [1, 0.5])), sixteen);
    expect(joint).toBeNull();
    expect(smallest).toBe(0);
    expectClose(
      logTotal,
      firstOfLast.map((p) => Math.log(p + (1 - p) / 2)),
    );
    expect(logShift).toEqual(logTotal);
  });

  test('a chain of fourteen in two classes, 2^15, has one', () => {
    expect(solveComponent(chainOf(14), sixteen).joint).toHaveLength(2 ** 15);
    expect(solveComponent(chainOf(15), sixteen).joint).toBeNull();
  });

  test('its distribution is got from the largest part that was multiplied out and what came after', () => {
    const whole = chainOf(16);
    expect(factorsOf(whole, sixteen).map(({ variables }) => variables)).toEqual([
      Array.from({ length: 14 }, (_, k) => k + 1),
      [14, 15],
      [15, 16],
    ]);
    const found = eliminateComponent(whole, [16], sixteen);
    firstOfLast.forEach((p, c) => {
      const at = found.classOf[whole.firstOf[c]!]! * 2;
      expect(found.blocks[at]).toBeCloseTo(p, 12);
      expect(found.blocks[at + 1]).toBeCloseTo(1 - p, 12);
    });
  });

  test('its totals keep small scales', () => {
    const tiny = of([16], [1e-80, 0.5e-80]);
    const component = [tiny, tiny].reduce(observed, chainOf(16));
    const { logTotal } = solveComponent(component, sixteen);
    firstOfLast.forEach((p, c) => expect(logTotal[c]).toBeCloseTo(Math.log(p + (1 - p) / 4) + 2 * Math.log(1e-80), 10));
  });
});
