import type { Problem } from '../errors/faultoddsError.ts';
import { findCycle } from './findCycle.ts';
import { findReadingModelProblems } from './findReadingModelProblems.ts';
import { findReferenceProblems } from './findReferenceProblems.ts';
import { findRowProblems } from './findRowProblems.ts';
import { findSizeProblems } from './findSizeProblems.ts';
import { findSourceProblems } from './findSourceProblems.ts';
import type { Model } from './model.ts';

/** Everything a well-shaped model can still have wrong: rows, references, sources, cycles, causes that nothing can find or cure. */
export function findModelProblems(model: Model): Problem[] {
  return [
    ...findSourceProblems(model),
    ...findReferenceProblems(model),
    ...findRowProblems(model),
    ...findSizeProblems(model),
    ...findReadingModelProblems(model),
    ...findMultiplierProblems(model),
    ...findCycleProblems(model),
    ...findLonelyCauses(model),
  ];
}

function findMultiplierProblems(model: Model): Problem[] {
  const zero = (path: string, message: string): Problem => ({
    code: 'multiplier-zero',
    path,
    message,
    hint: 'only where the part does not exist: say `"definitional": true`, else use a small number',
  });
  const ofContext = model.context.flatMap((feature, f) =>
    feature.values.flatMap((value, v) =>
      Object.entries(value.multipliers)
        .filter(([, multiplier]) => multiplier.best === 0 && multiplier.definitional !== true)
        .map(([cause]) =>
          zero(
            `/context/${f}/values/${v}/multipliers/${cause}/best`,
            `'${feature.id}: ${value.id}' rules out '${cause}' by a multiplier of 0`,
          ),
        ),
    ),
  );
  const ofHandling = model.tests.flatMap((test, t) =>
    Object.entries(test.mayCause ?? {})
      .filter(([, multiplier]) => multiplier.best === 0)
      .map(([cause]) => ({
        ...zero(`/tests/${t}/mayCause/${cause}/best`, `doing '${test.id}' would rule out '${cause}'`),
        hint: 'leave the cause out when the test does not bring it about',
      })),
  );
  return [...ofContext, ...ofHandling];
}

function findCycleProblems(model: Model): Problem[] {
  const found: Problem[] = [];
  const accessCycle = findCycle(new Map(model.access.map((a) => [a.id, a.requires])));
  if (accessCycle !== undefined) {
    found.push({
      code: 'access-cycle',
      path: `/access/${model.access.findIndex((a) => a.id === accessCycle[0])}/requires`,
      message: `access needs itself: ${accessCycle.join(' -> ')}`,
      hint: 'remove one of these prerequisites',
    });
  }
  const mechanismCycle = findCycle(new Map(model.mechanisms.map((m) => [m.id, m.parents ?? []])));
  if (mechanismCycle !== undefined) {
    found.push({
      code: 'mechanism-cycle',
      path: `/mechanisms/${model.mechanisms.findIndex((m) => m.id === mechanismCycle[0])}/parents`,
      message: `mechanism depends on itself: ${mechanismCycle.join(' -> ')}`,
      hint: 'remove one of these parents',
    });
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
      found.push({
        code: 'cause-unreachable',
        path: `/causes/${at}`,
        message: `no test can speak for or against '${cause.id}'`,
        hint: 'give it a mechanism that a test reads, or a test row that names it',
      });
    }
    if (!cured.has(cause.id)) {
      found.push({
        code: 'cause-not-cured',
        path: `/causes/${at}`,
        message: `no repair cures '${cause.id}'`,
        hint: 'add it to the `cures` of a repair',
      });
    }
  });
  if (!model.causes.some((cause) => cause.id === 'not-listed')) {
    found.push({
      code: 'not-listed-missing',
      path: '/causes',
      message: `no cause 'not-listed'`,
      hint: 'every model must be able to say "something it does not know"',
    });
  }
  if (model.repairs.filter((repair) => repair.referral === true).length !== 1) {
    found.push({
      code: 'referral-missing',
      path: '/repairs',
      message: 'expected exactly one repair with `"referral": true`',
      hint: 'the referral ends every plan',
    });
  }
  return found;
}
