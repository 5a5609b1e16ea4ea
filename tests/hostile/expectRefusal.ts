import { FaultoddsError } from '@faultodds/core';
import { expect } from 'vitest';

/** What came of an attempt: it was accepted, or refused as it should be. */
export type Verdict = 'accepted' | 'refused';

const before = Object.getOwnPropertyNames(Object.prototype).sort().join();

/** Runs something on bad input. Either it works, or it throws an error of the class it promises, each problem with a code, a JSON Pointer
 * and a hint; any other exception fails the test, and so does a changed `Object.prototype`. */
export function verdictOn(
  what: string,
  kind: abstract new (...args: never[]) => FaultoddsError,
  act: () => unknown,
): Verdict {
  try {
    act();
    return 'accepted';
  } catch (error) {
    if (!(error instanceof kind)) {
      throw new Error(`${what}: expected ${kind.name}, got ${error instanceof Error ? error.stack : String(error)}`, {
        cause: error,
      });
    }
    expect(error.problems.length, what).toBeGreaterThan(0);
    // of a list of twenty thousand mistakes a few will do
    for (const problem of [...error.problems.slice(0, 5), ...error.problems.slice(-2)]) {
      expect(problem.code, what).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(problem.path, what).toMatch(/^(\/([^~/]|~0|~1)*)*$/);
      expect(problem.hint.length, what).toBeGreaterThan(0);
      // what was found is quoted, not repeated at length
      expect(problem.message.length, what).toBeLessThan(1_000);
    }
    expect(error.path).toBe(error.problems[0]!.path);
    return 'refused';
  } finally {
    expect(Object.getOwnPropertyNames(Object.prototype).sort().join(), what).toBe(before);
    expect(({} as { polluted?: unknown }).polluted, what).toBeUndefined();
  }
}
