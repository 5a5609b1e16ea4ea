import { findUnknownId } from '../validation/findUnknownId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from './model.ts';
import type { PartName } from './renaming.ts';

/** Why a model has no part of a name: nothing when it has. @param path JSON Pointer of the name. */
export function findPartProblems(model: Model, name: PartName, path: string): Problem[] {
  if ('test' in name) {
    const test = model.tests.find(({ id }) => id === name.test);
    if (test === undefined) return findUnknownId('test', name.test, model.tests, `${path}/test`);
    if ('outcome' in name) return findUnknownId('outcome', name.outcome, test.outcomes, `${path}/outcome`, test.id);
    if ('reading' in name)
      return findUnknownId('reading', name.reading, test.readings ?? [], `${path}/reading`, test.id);
    return [];
  }
  if ('feature' in name) {
    const feature = model.context.find(({ id }) => id === name.feature);
    if (feature === undefined) return findUnknownId('feature', name.feature, model.context, `${path}/feature`);
    return 'value' in name ? findUnknownId('value', name.value, feature.values, `${path}/value`, feature.id) : [];
  }
  if ('cause' in name) return findUnknownId('cause', name.cause, model.causes, `${path}/cause`);
  if ('repair' in name) return findUnknownId('repair', name.repair, model.repairs, `${path}/repair`);
  if ('access' in name) return findUnknownId('access', name.access, model.access, `${path}/access`);
  if ('equipment' in name) return findUnknownId('equipment', name.equipment, model.equipment, `${path}/equipment`);
  return findUnknownId('model', name.model, [model], `${path}/model`);
}
