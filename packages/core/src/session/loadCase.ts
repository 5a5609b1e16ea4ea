import { atLeastOne } from '../errors/atLeastOne.ts';
import { CaseError } from '../errors/caseError.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { findUnknownId } from '../errors/findUnknownId.ts';
import { problemsOfSchema } from '../errors/problemsOfSchema.ts';
import type { CompiledModel } from '../model/compiledModel.ts';
import { appendEvent } from './appendEvent.ts';
import type { CaseDocument } from './caseDocument.ts';
import { caseSchema } from './caseSchema.ts';
import { findEventProblems } from './findEventProblems.ts';
import { findUnsafeKeys } from './findUnsafeKeys.ts';
import { findVersionProblems } from './findVersionProblems.ts';
import { migrateCase } from './migrateCase.ts';
import type { Session } from './session.ts';
import { startCase } from './startCase.ts';

/** A saved case of any version so far, checked against its format and against the model, ready to go on. Undo goes back through its events.
 * @throws CaseError with every problem found; nothing is half-loaded. Codes: `format-unknown`, `version-unknown`, `key-unsafe`,
 * those of the shape (`type-wrong`, `value-missing`, `key-unknown`, …) and those of `recordEvent`, under `/events/<n>`. */
export function loadCase(compiled: CompiledModel, input: unknown): Session {
  const refused = findVersionProblems(input);
  if (atLeastOne(refused)) throw new CaseError(refused);
  const unsafe = findUnsafeKeys(input);
  if (atLeastOne(unsafe)) throw new CaseError(unsafe);
  const newest = migrateCase(input);
  const checked = caseSchema.safeParse(newest);
  if (!checked.success) {
    const problems = problemsOfSchema(checked.error, newest);
    if (atLeastOne(problems)) throw new CaseError(problems);
  }
  return replay(compiled, checked.data as CaseDocument);
}

function replay(compiled: CompiledModel, { id, title, demo, events }: CaseDocument): Session {
  let session = startCase(demo === undefined ? { id, title } : { id, title, demo });
  const problems: Problem[] = [];
  if (demo !== undefined) {
    problems.push(...findUnknownId('cause', demo.trueCause, compiled.model.causes, '/demo/trueCause'));
  }
  events.forEach((event, at) => {
    const found = findEventProblems(compiled.model, session.content, event);
    problems.push(...found.map((problem) => ({ ...problem, path: `/events/${at}${problem.path}` })));
    if (found.length === 0) session = appendEvent(compiled, session, event);
  });
  if (atLeastOne(problems)) throw new CaseError(problems);
  return session;
}
