import { EvidenceError } from '../errors/evidenceError.ts';
import { nearestId } from '../errors/nearestId.ts';
import type { CompiledModel } from '../model/compiledModel.ts';
import type { Belief } from './belief.ts';
import { sweptFactsOf } from './updateBelief.ts';

/** cause -> outcome -> P(outcome | cause, everything recorded so far), for one test; ruled-out causes are left out.
 * @throws EvidenceError `test-unknown`, `test-not-applicable` */
export function outcomeGivenCause(
  compiled: CompiledModel,
  belief: Belief,
  test: string,
): Readonly<Record<string, Readonly<Record<string, number>>>> {
  const compiledTest = compiled.tests.get(test);
  if (compiledTest === undefined) {
    throw new EvidenceError([
      {
        code: 'test-unknown',
        path: '/test',
        message: `no test '${test}'`,
        hint: nearestId(test, compiled.tests.keys()),
      },
    ]);
  }
  const swept = sweptFactsOf(compiled, belief);
  const table = swept.outcomeGivenCause.get(test);
  if (table === undefined) {
    throw new EvidenceError([
      {
        code: 'test-not-applicable',
        path: '/test',
        message: `'${test}' does not apply to this car`,
        hint: 'state the intake fact it needs',
      },
    ]);
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
