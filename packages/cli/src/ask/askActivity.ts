import type { CaseEvent, Model, ResultEvidence } from '@faultodds/core';
import type { Prompter } from '../terminal/prompter.ts';

/** Asks whether the fault was there, where the test needs it. @returns the result to record; nothing when left. */
export async function askActivity(
  prompter: Prompter,
  { id: test, faultMustBeActive }: Model['tests'][number],
  result: ResultEvidence & { readonly id: string },
): Promise<CaseEvent[] | undefined> {
  const answer = faultMustBeActive
    ? await prompter.choose('Was the misfire present during the test?', [
        { value: 'yes', label: 'Yes' },
        { value: 'no', label: 'No', hint: 'the result then has no effect' },
        { value: 'unknown', label: 'Not known' },
      ])
    : 'yes';
  const faultActive = (['yes', 'no', 'unknown'] as const).find((one) => one === answer);
  if (faultActive === undefined) return undefined;
  return [{ kind: 'result-recorded', test, ...result, ...(faultActive === 'yes' ? {} : { faultActive }) }];
}
