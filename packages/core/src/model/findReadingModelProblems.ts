import { findUnknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model, Test } from './model.ts';
import type { CountsReading, MeasuredReading, PartCountsReading, ReadingModel } from './readingModel.ts';

/** What is wrong with the numeric readings of tests: parameters that do not fit their family, rows that are no distribution or name
 * unknown states, bands and patterns that name unknown outcomes, empty ranges. */
export function findReadingModelProblems(model: Model): Problem[] {
  return model.tests.flatMap((test, t) =>
    (test.readings ?? []).flatMap((reading, r) => {
      const path = `/tests/${t}/readings/${r}`;
      const twice = (test.readings ?? []).findIndex(({ id }) => id === reading.id) !== r;
      return [
        ...(twice ? [problemFor('id-duplicate', `${path}/id`, { id: reading.id })] : []),
        ...problemsOf(model, test, reading, path),
      ];
    }),
  );
}

function problemsOf(model: Model, test: Test, reading: ReadingModel, path: string): Problem[] {
  switch (reading.kind) {
    case 'measured':
      return [
        ...distributionProblems(reading, path),
        ...rowProblems(model, reading, path),
        ...rangeProblems(reading, path),
        ...outcomeProblems(test, bandOutcomes(reading, path)),
      ];
    case 'counts':
      return outcomeProblems(test, namedOutcomes(reading.patterns, `${path}/patterns`));
    case 'part-counts':
      return outcomeProblems(test, namedOutcomes(reading.outcomes, `${path}/outcomes`));
  }
}

function distributionProblems({ distributions }: MeasuredReading, path: string): Problem[] {
  return distributions.flatMap(({ id, family, mean, sd, shape }, at) => {
    const here = `${path}/distributions/${at}`;
    const found: Problem[] = [];
    if (distributions.findIndex((other) => other.id === id) !== at) {
      found.push(problemFor('id-duplicate', `${here}/id`, { id }));
    }
    const [needed, refused] = family === 'gamma' ? (['shape', 'sd'] as const) : (['sd', 'shape'] as const);
    const given = { sd, shape };
    if (given[needed] === undefined || given[refused] !== undefined) {
      found.push(problemFor('distribution-parameters', here, { family, needed, refused }));
    }
    if (family !== 'normal' && mean <= 0) {
      found.push(problemFor('distribution-parameters/mean', `${here}/mean`, { family, mean }));
    }
    return found;
  });
}

function rowProblems(model: Model, { distributions, rows }: MeasuredReading, path: string): Problem[] {
  const statesOf = new Map(model.mechanisms.map(({ id, states }) => [id, states]));
  statesOf.set('cause', model.causes);
  const parents = [...statesOf.keys()].map((id) => ({ id }));
  const found = rows.flatMap(({ when, p }, at): Problem[] => {
    const here = `${path}/rows/${at}`;
    const sum = Object.values(p).reduce((total, share) => total + share, 0);
    const isLast = at === rows.length - 1;
    const isDefault = Object.keys(when).length === 0;
    return [
      ...Object.keys(p).flatMap((id) => findUnknownId('distribution', id, distributions, `${here}/p/${id}`)),
      ...Object.entries(when).flatMap(([parent, wanted]) => {
        const states = statesOf.get(parent);
        if (states === undefined) return findUnknownId('mechanism', parent, parents, `${here}/when/${parent}`);
        return wanted.flatMap((state, s) =>
          findUnknownId('state', state, states, `${here}/when/${parent}/${s}`, parent),
        );
      }),
      ...(Math.abs(sum - 1) > 1e-9
        ? [problemFor('row-not-one/shares', `${here}/p`, { sum: Number(sum.toPrecision(12)) })]
        : []),
      ...(isDefault && !isLast ? [problemFor('default-row-not-last', here, {})] : []),
      ...(isLast && !isDefault ? [problemFor('default-row-missing/reading', `${path}/rows`, {})] : []),
    ];
  });
  return found;
}

function rangeProblems({ limits, referenceLimits, wild, bands = [] }: MeasuredReading, path: string): Problem[] {
  const ranges = [
    { at: 'limits', low: limits.low, high: limits.high },
    ...(referenceLimits === undefined ? [] : [{ at: 'referenceLimits', ...referenceLimits }]),
    { at: 'wild', low: wild.low, high: wild.high },
    ...bands.map(({ from = -Infinity, to = Infinity }, b) => ({ at: `bands/${b}`, low: from, high: to })),
  ];
  return ranges.flatMap(({ at, low, high }) =>
    low < high ? [] : [problemFor('range-empty', `${path}/${at}`, { low, high })],
  );
}

type NamedOutcome = readonly [path: string, outcome: string];

function bandOutcomes({ bands = [], beyond = {} }: MeasuredReading, path: string): NamedOutcome[] {
  return [
    ...bands.flatMap(({ outcomes }, b) =>
      outcomes.map((outcome, o): NamedOutcome => [`${path}/bands/${b}/outcomes/${o}`, outcome]),
    ),
    ...namedOutcomes(beyond, `${path}/beyond`),
  ];
}

function namedOutcomes(
  named: CountsReading['patterns'] | PartCountsReading['outcomes'] | NonNullable<MeasuredReading['beyond']>,
  path: string,
): NamedOutcome[] {
  return Object.entries(named).map(([key, outcome]): NamedOutcome => [`${path}/${key}`, outcome]);
}

function outcomeProblems(test: Test, named: readonly NamedOutcome[]): Problem[] {
  return named.flatMap(([path, outcome]) => findUnknownId('outcome', outcome, test.outcomes, path, test.id));
}
