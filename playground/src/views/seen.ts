import type { TestResult } from '@faultodds/core';

/** What was seen on a test: an outcome, how strongly it speaks for each, or the numbers that were read. */
export type Seen = Pick<TestResult, 'outcome' | 'likelihood' | 'reading' | 'note'>;
