import { sweepModel } from './sweepModel.ts';
import type { CompiledModel } from './compiledModel.ts';

/** How well each test tells pairs of causes apart before anything else is known. */
export interface Separation {
  /** Total variation distance of the outcomes of a test under two causes: 0 alike, 1 never alike. */
  readonly between: (test: number, a: number, b: number) => number;
  /** The test that separates two causes best, among those given (default: all). */
  readonly best: (
    a: number,
    b: number,
    among?: readonly number[],
  ) => { readonly test: number; readonly distance: number };
}

/** Prepares separations of all tests: one sweep. Causes and tests by index in the model's order. */
export function compileSeparation(compiled: CompiledModel): Separation {
  const { testList } = compiled;
  const { targets } = sweepModel(compiled, { likelihoods: [], targets: testList.map((test) => test.table) });
  const tables = testList.map(({ test }) => targets.get(test.id)!);
  const everyTest = testList.map((_, at) => at);
  const between = (test: number, a: number, b: number): number => {
    const table = tables[test]!;
    const outcomes = testList[test]!.outcomes.length;
    let sum = 0;
    for (let o = 0; o < outcomes; o += 1) sum += Math.abs(table[a * outcomes + o]! - table[b * outcomes + o]!);
    return sum / 2;
  };
  return {
    between,
    best: (a, b, among = everyTest) => {
      let best = { test: -1, distance: 0 };
      for (const test of among) {
        const distance = between(test, a, b);
        if (distance > best.distance) best = { test, distance };
      }
      return best;
    },
  };
}
