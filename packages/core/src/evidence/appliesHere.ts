import type { Test } from '../model/model.ts';
import type { Context } from './facts.ts';
import { fulfils } from './fulfils.ts';

/** Whether a test makes sense on this car: one of its requirements is fulfilled, or it has none. */
export function appliesHere(test: Test, context: Context): boolean {
  return test.appliesWhen === undefined || test.appliesWhen.some((requirement) => fulfils(context, requirement));
}
