import type { Found } from '../../../../errors/foundIn.ts';

/** Small pieces the sentences about problems are made of. */
export const problemParts = {
  found: (found: Found): string => {
    switch (found.kind) {
      case 'text':
        return `'${found.text}'`;
      case 'plain':
        return found.text;
      case 'list':
        return `a list of ${found.length}`;
      case 'object':
        return 'an object';
      case 'function':
        return 'a function';
      case 'nothing':
        return 'undefined';
    }
  },
  /** What was found where facts have a shape of their own. */
  foundKind: (kind: string): string => (kind === 'list' ? 'a list' : kind),
  /** Parts of facts, by what should stand there. */
  factsPart: {
    facts: 'an object with `context` and `observations`',
    context: 'an object, intake feature to answer',
    list: 'a list',
    object: 'an object',
    cured: 'true or false',
    kind: `'result' or 'repair-tried'`,
    faultActive: `'yes', 'no' or 'unknown'`,
    likelihood: 'an object, outcome to number',
    number: 'a number',
    string: 'a string',
  },
  /** Hint for an id that does not resolve. */
  nearest: (id: string | undefined): string =>
    id === undefined ? 'add it, or correct the reference' : `did you mean '${id}'?`,
  or: (parts: readonly string[]): string => parts.join(' or '),
} as const;
