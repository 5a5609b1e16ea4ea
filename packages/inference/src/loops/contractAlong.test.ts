import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contractAlong } from './contractAlong.ts';

/** Loops innermost first: how often, and the steps in the result and both factors (0: summed out, or not among the factor's variables). */
const loops = fc.array(
  fc.record({ n: fc.integer({ min: 1, max: 9 }), inD: fc.boolean(), inA: fc.boolean(), inB: fc.boolean() }),
  { minLength: 0, maxLength: 4 },
);

test('equals the sum of products entry by entry, whatever the order of loops and whichever is summed out', () => {
  fc.assert(
    fc.property(loops, fc.integer(), (nest, seed) => {
      const steps = { d: [0, 0], a: [0, 0], b: [0, 0] };
      const sizes = { d: 1, a: 1, b: 1 };
      nest.forEach(({ n, inD, inA, inB }, k) => {
        for (const [name, isIn] of [
          ['d', inD],
          ['a', inA],
          ['b', inB],
        ] as const) {
          steps[name][k] = isIn ? sizes[name] : 0;
          if (isIn) sizes[name] *= n;
        }
      });
      const number = (at: number): number => (((at + 1) * 7919 + seed) % 1009) / 1009;
      const a = Float64Array.from({ length: sizes.a + 3 }, (_, at) => number(at));
      const b = Float64Array.from({ length: sizes.b + 5 }, (_, at) => number(at + 31));
      const expected = new Float64Array(sizes.d + 2);
      const walk = (k: number, d: number, i: number, j: number): void => {
        if (k < 0) expected[d]! += a[i]! * b[j]!;
        else
          for (let r = 0; r < nest[k]!.n; r += 1)
            walk(k - 1, d + r * steps.d[k]!, i + r * steps.a[k]!, j + r * steps.b[k]!);
      };
      walk(nest.length - 1, 2, 3, 5);
      const dst = new Float64Array(sizes.d + 2);
      const ints = (list: number[]): Int32Array => Int32Array.from({ length: nest.length + 2 }, (_, k) => list[k] ?? 0);
      const n = Int32Array.from({ length: nest.length + 2 }, (_, k) => nest[k]?.n ?? 0);
      contractAlong(dst, 2, a, 3, b, 5, n, ints(steps.d), ints(steps.a), ints(steps.b), nest.length);
      dst.forEach((value, at) => expect(Math.abs(value - expected[at]!)).toBeLessThan(1e-9 + 1e-12 * expected[at]!));
    }),
    { numRuns: 400 },
  );
});
