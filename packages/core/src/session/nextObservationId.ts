import { observationIdsOf } from './observationIdsOf.ts';
import type { Session } from './session.ts';

/** The first of r1, r2, … that no observation of this case ever had, retracted and unplaced ones included.
 * @example
 * ```ts
 * const later = recordEvent(compiled, session, { kind: 'result-recorded', id: 'r1', test: 'plug-swap', outcome: 'stays' });
 * nextObservationId(later) // 'r2'
 * ``` */
export function nextObservationId({ content }: Session): string {
  const taken = observationIdsOf(content);
  let number = 1;
  while (taken.has(`r${number}`)) number += 1;
  return `r${number}`;
}
