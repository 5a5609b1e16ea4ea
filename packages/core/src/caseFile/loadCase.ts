import { atLeastOne } from '../errors/atLeastOne.ts';
import { CaseError } from '../errors/caseError.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Model } from '../model/model.ts';
import { modelIdentity, type ModelIdentity } from '../model/modelIdentity.ts';
import { makeNamesToday } from '../model/makeNamesToday.ts';
import type { CaseDocument } from '../session/caseDocument.ts';
import type { CaseNotice } from '../session/caseNotice.ts';
import { caseSchema } from '../session/caseSchema.ts';
import { findUnsafeKeys } from './findUnsafeKeys.ts';
import { findVersionProblems } from './findVersionProblems.ts';
import { migrateCase } from './migrateCase.ts';
import { matchEvents } from './matchEvents.ts';
import type { Session } from '../session/session.ts';
import { startCase } from '../session/startCase.ts';

/** A saved case of any version so far, made with any version of this model, checked and ready to be continued. Undo goes back through its
 * events.
 *
 * Names of earlier versions of the model are read as those of today (`renamed`). What the model does not know has no effect and is kept:
 * it is in `content.unplaced`, is saved again, and is reported in `notices`, as is a model that differs.
 * @throws CaseError with every problem found; nothing is half-loaded. Codes: `format-unknown`, `version-unknown`, `key-unsafe`,
 * `model-other`, those of the shape (`type-wrong`, `value-missing`, `key-unknown`, …) and those of events that contradict each other
 * (`id-taken`, `observation-unknown`, `engine-differs`, …), under `/events/<n>`.
 * @example
 * ```ts
 * const events = [{ kind: 'result-recorded', id: 'one', test: 'hum', outcome: 'silent' }];
 * const opened = loadCase(pump, { format: 'faultodds-case', version: 3, id: 'case-1', title: 'No water', events });
 * caseState(opened).observations; // [{ kind: 'result', id: 'one', test: 'hum', outcome: 'silent' }]
 * ``` */
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
  return openDocument(compiled, checked.data as CaseDocument);
}

function openDocument(compiled: CompiledModel, document: CaseDocument): Session {
  const { model } = compiled;
  const { id, title, demo, model: made } = document;
  const differs = made === undefined ? [] : findOtherModel(model, made);
  const facts = demo === undefined ? undefined : { ...demo, trueCause: causeToday(model, demo.trueCause) };
  const started = startCase(facts === undefined ? { id, title } : { id, title, demo: facts });
  const { session, problems, damaged, notices } = matchEvents(compiled, started, document);
  const unknown = facts === undefined ? [] : findUnknownId('cause', facts.trueCause, model.causes, '/demo/trueCause');
  const all = [...unknown, ...problems];
  if (damaged && atLeastOne(all)) throw new CaseError(all);
  const ofCause: CaseNotice[] =
    facts === undefined || unknown.length === 0
      ? []
      : [{ kind: 'cause-unknown', cause: facts.trueCause, problems: unknown }];
  return { ...session, notices: [...differs, ...ofCause, ...notices] };
}

/** That a case was made with this model in another state.
 * @throws CaseError `model-other` it was made with another one */
function findOtherModel(model: Model, made: ModelIdentity): CaseNotice[] {
  const here = modelIdentity(model);
  if (!makeNamesToday(model)({ model: made.id }).some((name) => 'model' in name && name.model === here.id)) {
    throw new CaseError([problemFor('model-other', '/model/id', { made, here })]);
  }
  const same = made.id === here.id && made.version === here.version && made.hash === here.hash;
  return same ? [] : [{ kind: 'model-differs', made, here }];
}

function causeToday(model: Model, cause: string): string {
  const [name, ...others] = makeNamesToday(model)({ cause });
  return others.length === 0 && name !== undefined && 'cause' in name ? name.cause : cause;
}
