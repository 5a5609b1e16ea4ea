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
    found.push({
      code: 'suspect-missing',
      path: `${path}/counts/${suspect}`,
      message: `no count for cylinder ${suspect}, the suspect`,
      hint: 'count the suspect too, or name another suspect',
    });
  } else if (Object.keys(counts).length < 2) {
    found.push({
      code: 'neighbour-missing',
      path: `${path}/counts`,
      message: 'the suspect stands alone',
      hint: 'count at least one other cylinder: only the comparison says something',
    });
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
      found.push({
        code: swapped ? 'partner-missing' : 'partner-unfit',
        path: `${path}/${when}/partner`,
        message: swapped ? 'no count for the cylinder the part was swapped with' : 'the part was replaced, not swapped',
        hint: swapped ? 'count both cylinders' : 'leave the partner out',
      });
    }
    return found;
  });
}

function moreThanFirings(count: number, exposure: Exposure | undefined, path: string): Problem[] {
  if (exposure === undefined || count <= firingsOf(exposure)) return [];
  return [
    {
      code: 'count-above-firings',
      path,
      message: `found ${count} misfires in ${firingsOf(exposure)} firings of the cylinder`,
      hint: 'a cylinder fires once in two revolutions: correct the count or the exposure',
    },
  ];
}
