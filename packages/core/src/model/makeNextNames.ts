import type { OutcomeNames, PartName, Renaming } from './renaming.ts';

/** What one renaming makes of a name; nothing where none is about it. */
export type NextNames = (name: PartName) => readonly PartName[] | undefined;

/** One step along the renamings of a model. A part of a renamed part keeps its own id, unless it has a renaming of its own. */
export function makeNextNames(renamed: readonly Renaming[]): NextNames {
  const byName = new Map(renamed.map((one) => [keyOfName(one.was), one]));
  return (name) => {
    const own = byName.get(keyOfName(name));
    if (own !== undefined) return each(own.is);
    const whole = byName.get(keyOfName(wholeOf(name)));
    if (whole === undefined) return undefined;
    return whole.is === undefined ? [] : [{ ...name, ...whole.is } as PartName];
  };
}

/** A text for every name, equal for equal ones, as a person would write it: `coil-swap: stays`. */
export function keyOfName(name: PartName | OutcomeNames): string {
  if ('test' in name) {
    if ('outcome' in name) return `test ${name.test}: ${name.outcome}`;
    if ('reading' in name) return `test ${name.test}, reading ${name.reading}`;
    return `test ${name.test}`;
  }
  if ('feature' in name) return `feature ${name.feature}${'value' in name ? `: ${name.value}` : ''}`;
  return Object.entries(name)[0]!.join(' ');
}

/** The test of an outcome or reading, the feature of a value; anything else itself. */
function wholeOf(name: PartName): PartName {
  return 'test' in name ? { test: name.test } : 'feature' in name ? { feature: name.feature } : name;
}

function each(name: Renaming['is']): readonly PartName[] {
  if (name === undefined) return [];
  return 'outcomes' in name ? name.outcomes.map((outcome) => ({ test: name.test, outcome })) : [name];
}
