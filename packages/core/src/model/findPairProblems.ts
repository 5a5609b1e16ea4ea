import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import { nearestId } from '../validation/nearestId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from './model.ts';

/** What is wrong with pairs of evidence that hang together: names that are neither test nor intake fact, a thing paired with itself, one
 * pair given twice, a question that a test is to share with what asks none. */
export function findPairProblems(model: Model): Problem[] {
  const isTest = (name: string): boolean => model.tests.some(({ id }) => id === name);
  const isFeature = (name: string): boolean => model.context.some(({ id }) => id === name);
  const dependent = model.dependentPairs.flatMap(({ a, b, kind }, at): Problem[] => {
    const path = `/dependentPairs/${at}`;
    const first = model.dependentPairs.findIndex((other) => hasSameParts(other, { a, b }));
    const noTest =
      kind === 'same-question'
        ? [a, b].find((name) => !isTest(name) && (!isFeature(name) || ![a, b].some(isTest)))
        : undefined;
    return [
      ...nameProblems(model, { a, b }, path),
      ...(first < at ? [problemFor('pair-twice', path, { a, b })] : []),
      ...(noTest === undefined ? [] : [problemFor('pair-no-test', `${path}/kind`, { name: noTest })]),
    ];
  });
  return [
    ...dependent,
    ...model.contextOverlaps.flatMap((pair, at) => nameProblems(model, pair, `/contextOverlaps/${at}`)),
  ];
}

interface Pair {
  readonly a: string;
  readonly b: string;
}

function hasSameParts(one: Pair, { a, b }: Pair): boolean {
  return (one.a === a && one.b === b) || (one.a === b && one.b === a);
}

function nameProblems(model: Model, { a, b }: Pair, path: string): Problem[] {
  return [
    ...unknownName(model, a, `${path}/a`),
    ...unknownName(model, b, `${path}/b`),
    ...(a === b ? [problemFor('pair-with-itself', path, { name: a })] : []),
  ];
}

/** A test or an intake feature, or one answer to it as `feature:value`. */
function unknownName({ tests, context }: Model, name: string, path: string): Problem[] {
  const [id = '', value] = name.split(':');
  const feature = context.find((one) => one.id === id);
  if (value !== undefined && feature !== undefined) return findUnknownId('value', value, feature.values, path, id);
  if (value === undefined && (feature !== undefined || tests.some((test) => test.id === id))) return [];
  const known = [...tests, ...context].map((one) => one.id);
  return [problemFor('pair-part-unknown', path, { name, nearest: nearestId(id, known) })];
}
