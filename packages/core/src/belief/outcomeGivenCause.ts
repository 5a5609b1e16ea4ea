import { EvidenceError } from '../errors/evidenceError.ts';
import { unknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Belief } from './belief.ts';
import { sweptFactsOf } from './beliefOf.ts';

/** cause -> outcome -> P(outcome | cause, everything recorded so far), for one test; ruled-out causes are left out.
 * @throws EvidenceError `test-unknown`, `test-not-applicable`
 * @example outcomeGivenCause(pump, beliefOf(pump, { context: {}, observations: [] }), 'fuse-look')['fuse-blown'] // { whole: 0.01, blown: 0.99 } */
export function outcomeGivenCause(
  compiled: CompiledModel,
  belief: Belief,
  test: string,
): Readonly<Record<string, Readonly<Record<string, number>>>> {
  const compiledTest = compiled.tests.get(test);
  if (compiledTest === undefined) {
    throw new EvidenceError([unknownId('test', test, compiled.tests.keys(), '/test')]);
  }
  const swept = sweptFactsOf(compiled, belief);
  const table = swept.outcomeGivenCause.get(test);
  if (table === undefined) {
    throw new EvidenceError([problemFor('test-not-applicable/now', '/test', { test })]);
  }
  const { outcomes } = compiledTest;
  const possible = compiled.causes.flatMap((cause, c) => (swept.prior[c]! > 0 ? [{ cause, c }] : []));
  return Object.fromEntries(
    possible.map(({ cause, c }) => [
      cause,
      Object.fromEntries(outcomes.map((outcome, o) => [outcome, table[c * outcomes.length + o]!])),
    ]),
  );
}
