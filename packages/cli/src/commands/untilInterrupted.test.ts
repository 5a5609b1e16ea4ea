import { EventEmitter } from 'node:events';
import { setImmediate } from 'node:timers/promises';
import { compileModel, parseModel, runInTurns, beliefOf } from '@faultodds/core';
import { boundedSearch, compileCaseProblem } from '@faultodds/core/planning';
import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { untilInterrupted } from './untilInterrupted.ts';

const compiled = compileModel(parseModel(pumpModel()));
const problem = compileCaseProblem(compiled, beliefOf(compiled, { context: {}, observations: [] }), {});

/** The search of a plan, interrupted after so many turns. */
async function searched(turns: number): Promise<{ steps: number; listening: number[] }> {
  const process = new EventEmitter();
  const listening: number[] = [];
  let left = turns;
  const { progress } = await untilInterrupted(process, (signal) =>
    runInTurns(boundedSearch.inTurns(problem, { steps: 40, signal }), {
      pause: () => {
        left -= 1;
        if (left === 0) process.emit('SIGINT');
        listening.push(process.listenerCount('SIGINT'));
        return setImmediate();
      },
    }),
  );
  return { steps: progress.steps, listening: [...listening.slice(-1), process.listenerCount('SIGINT')] };
}

test('the first Ctrl-C ends the search with the plan it has, and the second is nobody’s but the system’s', async () => {
  const { steps, listening } = await searched(15);
  expect(listening).toEqual([0, 0]);
  expect(steps).toBeGreaterThan(0);
  expect(steps).toBeLessThan(boundedSearch.solve(problem, { steps: 40 }).progress.steps);
});

test('without one the search goes to its end, and nobody listens afterwards', async () => {
  const { steps, listening } = await searched(Infinity);
  expect(steps).toBe(boundedSearch.solve(problem, { steps: 40 }).progress.steps);
  expect(listening).toEqual([1, 0]);
});

test('work that fails leaves nobody listening', async () => {
  const process = new EventEmitter();
  await expect(untilInterrupted(process, () => Promise.reject(new RangeError('no')))).rejects.toThrow('no');
  expect(process.listenerCount('SIGINT')).toBe(0);
});
