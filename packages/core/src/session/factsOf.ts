import type { Facts } from '../evidence/facts.ts';
import type { CaseState } from './caseState.ts';

/** The evidence of a case, for `beliefOf`.
 * @example factsOf(caseState(session)).observations.map(({ id }) => id) // ['one', 'two'] */
export function factsOf({ context, observations }: CaseState): Facts {
  return { context, observations };
}
