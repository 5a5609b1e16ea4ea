import type { Found } from '../../../../errors/foundIn.ts';
import type { Worded } from '../../../worded.ts';
import { problemParts } from './problemParts.ts';

const { found, foundKind, factsPart, nearest, or } = problemParts;
type FactsPart = keyof (typeof problemParts)['factsPart'];

const idHint = `ids are lower-case letters, digits, - and _, not 'constructor'`;

/** Problems of shape, whatever the file: by key, what is wrong and what to do about it. `expected` is a JSON type. */
export const shapeProblems = {
  'key-unknown': (p: { key: string }): Worded => [`unknown property '${p.key}'`, 'check the spelling, or remove it'],
  'value-missing': (p: { expected: string }): Worded => [`missing, expected ${p.expected}`, 'add it'],
  'value-missing/listed': (p: { values: readonly Found[] }): Worded => [
    `missing, expected ${or(p.values.map(found))}`,
    'use one of the values listed',
  ],
  'value-missing/facts': (p: { expected: FactsPart }): Worded => [
    `missing, expected ${factsPart[p.expected]}`,
    'add it',
  ],
  'type-wrong': (p: { found: Found; expected: string }): Worded => [
    `found ${found(p.found)}, expected ${p.expected}`,
    `write a ${p.expected}`,
  ],
  'type-wrong/facts': (p: { found: string; expected: FactsPart }): Worded => [
    `found ${foundKind(p.found)}, expected ${factsPart[p.expected]}`,
    `write ${factsPart[p.expected]}`,
  ],
  'type-wrong/case': (): Worded => ['this is not an object', 'give a saved case, as parsed JSON'],
  'value-unknown/listed': (p: { found: Found; values: readonly Found[] }): Worded => [
    `found ${found(p.found)}, expected ${or(p.values.map(found))}`,
    'use one of the values listed',
  ],
  'too-small': (p: { found: Found; least: string }): Worded => [
    `found ${found(p.found)}, expected at least ${p.least}`,
    'raise or complete it',
  ],
  'too-big': (p: { found: Found; most: string }): Worded => [
    `found ${found(p.found)}, expected at most ${p.most}`,
    'lower or shorten it',
  ],
  'number-out-of-list': (p: { found: Found; most: string }): Worded => [
    `found ${found(p.found)}, expected a position from 0 to ${p.most}`,
    'count from 0',
  ],
  'id-malformed': (p: { found: Found }): Worded => [`found ${found(p.found)}`, idHint],
  'id-malformed/key': (p: { key: string }): Worded => [`key '${p.key}' is not an id`, idHint],
  'value-invalid': (p: { found: Found }): Worded => [
    `found ${found(p.found)}`,
    'compare with the JSON Schema of this format',
  ],
  'kind-unknown': (p: { found: Found }): Worded => [`found ${found(p.found)}`, 'use one of the documented kinds'],
  /** An id that does not resolve. `kind` is a noun of the model; the code is `<kind>-unknown`. */
  unknown: (p: { kind: string; id: string; of?: string | undefined; nearest?: string | undefined }): Worded => [
    `no ${p.kind} '${p.id}'${p.of === undefined ? '' : ` of '${p.of}'`}`,
    nearest(p.nearest),
  ],
} as const;
