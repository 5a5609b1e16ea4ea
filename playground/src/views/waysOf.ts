import type { Test } from '@faultodds/core';
import { isFilledByCodes } from '@faultodds/core/codes';

/** A way to record a result other than choosing its outcome. */
export type Way = 'numbers' | 'monitor' | 'codes' | 'unsure';

/** The other ways a test can be recorded, the most telling first. */
export function waysOf(test: Test): readonly Way[] {
  const ways: Way[] = [];
  if ((test.readings?.length ?? 0) > 0) ways.push('numbers');
  if (test.readings?.some(({ kind }) => kind === 'counts')) ways.push('monitor');
  if (isFilledByCodes(test.id)) ways.push('codes');
  if (test.outcomes.length > 1) ways.push('unsure');
  return ways;
}
