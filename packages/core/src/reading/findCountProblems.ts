import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { PartCountsReading } from '../model/readingModel.ts';
import { firingsOf } from './firingsOf.ts';
import type { CountsOfCylinders, CountsOfPart, Exposure } from './reading.ts';

/** What is wrong with misfire counts: no suspect, nobody to compare with, more misfires than firings. */
export function findCountProblems({ counts, suspect, exposure }: CountsOfCylinders, path: string): Problem[] {
  const found = Object.entries(counts).flatMap(([cylinder, count]) =>
    moreThanFirings(count, exposure, `${path}/counts/${cylinder}`),
  );
  if (!Object.hasOwn(counts, suspect)) {
    found.push(problemFor('suspect-missing/counts', `${path}/counts/${suspect}`, { suspect }));
  } else if (Object.keys(counts).length < 2) {
    found.push(problemFor('neighbour-missing/counts', `${path}/counts`, {}));
  }
  return found;
}

/** What is wrong with counts before and after: a partner missing where the part was swapped, more misfires than firings. */
export function findPartCountProblems(model: PartCountsReading, reading: CountsOfPart, path: string): Problem[] {
  const swapped = model.outcomes.follows !== undefined;
  return (['before', 'after'] as const).flatMap((when) => {
    const { suspect, partner, exposure } = reading[when];
    const found = moreThanFirings(suspect, exposure, `${path}/${when}/suspect`);
    if (partner !== undefined) found.push(...moreThanFirings(partner, exposure, `${path}/${when}/partner`));
    if (swapped !== (partner !== undefined)) {
      found.push(problemFor(swapped ? 'partner-missing' : 'partner-unfit', `${path}/${when}/partner`, {}));
    }
    return found;
  });
}

function moreThanFirings(count: number, exposure: Exposure | undefined, path: string): Problem[] {
  if (exposure === undefined || count <= firingsOf(exposure)) return [];
  return [problemFor('count-above-firings', path, { count, firings: firingsOf(exposure) })];
}
