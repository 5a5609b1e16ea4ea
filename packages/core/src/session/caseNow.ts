import type { Advice } from '../advice/advice.ts';
import { advise } from '../advice/advise.ts';
import type { Belief } from '../belief/belief.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import type { CaseState } from './caseState.ts';
import { circumstancesOf } from './circumstancesOf.ts';
import { factsOf } from './factsOf.ts';
import { caseState, type Session } from './session.ts';

/** A case at one moment, with the belief and the advice that follow from it. */
export interface CaseNow {
  readonly session: Session;
  readonly state: CaseState;
  readonly circumstances: Required<Circumstances>;
  /** With the facts it was computed from. */
  readonly belief: Belief;
  readonly advice: Advice;
}

/** Computes belief and advice for a case as it is now.
 * @param circumstances instead of those of the case, for example with other prices.
 * @throws EvidenceError when no cause can produce what was recorded
 * @example
 * ```ts
 * const { advice } = caseNow(compiled, session);
 * advice.notNow.filter(({ reason }) => reason === 'already-done').map(({ test }) => test) // ['relative-compression', 'coil-swap']
 * ``` */
export function caseNow(
  compiled: CompiledModel,
  session: Session,
  circumstances: Required<Circumstances> = circumstancesOf(compiled, caseState(session)),
): CaseNow {
  const state = caseState(session);
  const belief = beliefOf(compiled, factsOf(state));
  return { session, state, circumstances, belief, advice: advise(compiled, belief, circumstances) };
}
