import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { findCycle } from './findCycle.ts';
import { findPairProblems } from './findPairProblems.ts';
import { findReadingModelProblems } from './findReadingModelProblems.ts';
import { findReferenceProblems } from './findReferenceProblems.ts';
import { findRenamingProblems } from './findRenamingProblems.ts';
import { findRowProblems } from './findRowProblems.ts';
import { findSizeProblems } from './findSizeProblems.ts';
import { findSourceProblems } from './findSourceProblems.ts';
import type { Model } from './model.ts';

/** Everything a well-shaped model can still have wrong: rows, references, sources, cycles, causes that nothing can find or cure. */
export function findModelProblems(model: Model): Problem[] {
  return [
    ...findSourceProblems(model),
    ...findReferenceProblems(model),
    ...findPairProblems(model),
    ...findRowProblems(model),
    ...findSizeProblems(model),
    ...findReadingModelProblems(model),
    ...findMultiplierProblems(model),
    ...findCertainGone(model),
    ...findCycleProblems(model),
    ...findLonelyCauses(model),
    ...findRenamingProblems(model),
  ];
}

function findMultiplierProblems(model: Model): Problem[] {
  const ofContext = model.context.flatMap((feature, f) =>
    feature.values.flatMap((value, v) =>
      Object.entries(value.multipliers)
        .filter(([, multiplier]) => multiplier.best === 0 && multiplier.definitional !== true)
        .map(([cause]) =>
          problemFor('multiplier-zero', `/context/${f}/values/${v}/multipliers/${cause}/best`, {
            feature: feature.id,
            value: value.id,
            cause,
          }),
        ),
    ),
  );
  const ofHandling = model.tests.flatMap((test, t) =>
    Object.entries(test.mayCause ?? {})
      .filter(([, multiplier]) => multiplier.best === 0)
      .map(([cause]) =>
        problemFor('multiplier-zero/handling', `/tests/${t}/mayCause/${cause}/best`, { test: test.id, cause }),
      ),
  );
  return [...ofContext, ...ofHandling];
}

/** A fault that never goes by itself, or always, would let one repair settle every case. */
function findCertainGone({ goneWithoutCure: { best } }: Model): Problem[] {
  return best > 0 && best < 1 ? [] : [problemFor('likelihood-certain', '/goneWithoutCure/best', { probability: best })];
}

function findCycleProblems(model: Model): Problem[] {
  const found: Problem[] = [];
  const accessCycle = findCycle(new Map(model.access.map((a) => [a.id, a.requires])));
  if (accessCycle !== undefined) {
    const path = `/access/${model.access.findIndex((a) => a.id === accessCycle[0])}/requires`;
    found.push(problemFor('access-cycle', path, { circle: accessCycle }));
  }
  const followCycle = findCycle(new Map(model.tests.map((t) => [t.id, (t.follows ?? []).map((look) => look.test)])));
  if (followCycle !== undefined) {
    const path = `/tests/${model.tests.findIndex((t) => t.id === followCycle[0])}/follows`;
    found.push(problemFor('follows-cycle', path, { circle: followCycle }));
  }
  const mechanismCycle = findCycle(new Map(model.mechanisms.map((m) => [m.id, m.parents ?? []])));
  if (mechanismCycle !== undefined) {
    const path = `/mechanisms/${model.mechanisms.findIndex((m) => m.id === mechanismCycle[0])}/parents`;
    found.push(problemFor('mechanism-cycle', path, { circle: mechanismCycle }));
  }
  return found;
}

/** Causes that no evidence can reach or no repair cures, and the one cause every model must have. */
function findLonelyCauses(model: Model): Problem[] {
  const found: Problem[] = [];
  const named = new Set(model.tests.flatMap((test) => test.rows.flatMap((row) => row.when['cause'] ?? [])));
  const read = new Set(model.tests.flatMap((test) => test.rows.flatMap((row) => Object.keys(row.when))));
  for (const mechanism of model.mechanisms) {
    if (read.has(mechanism.id)) for (const parent of mechanism.parents ?? []) read.add(parent);
  }
  const cured = new Set(model.repairs.flatMap((repair) => Object.keys(repair.cures)));
  model.causes.forEach((cause, at) => {
    if (!named.has(cause.id) && !Object.keys(cause.states).some((mechanism) => read.has(mechanism))) {
      found.push(problemFor('cause-unreachable', `/causes/${at}`, { cause: cause.id }));
    }
    if (!cured.has(cause.id)) {
      found.push(problemFor('cause-not-cured', `/causes/${at}`, { cause: cause.id }));
    }
  });
  if (!model.causes.some((cause) => cause.id === 'not-listed')) {
    found.push(problemFor('not-listed-missing', '/causes', {}));
  }
  if (model.repairs.filter((repair) => repair.referral === true).length !== 1) {
    found.push(problemFor('referral-missing', '/repairs', {}));
  }
  return found;
}
