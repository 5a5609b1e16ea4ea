import type { Dimension } from '../../../../units/dimension.ts';
import { plural } from '../../../plural.ts';
import type { Worded } from '../../../worded.ts';

const misfires = (count: number): string => plural('en', count, { one: 'misfire', other: 'misfires' });

/** Problems of readings, trouble codes and monitor responses: by key, what is wrong and what to do about it. */
export const readingProblems = {
  'reading-not-possible': (p: { test: string; outcomes: readonly string[] }): Worded => [
    `'${p.test}' has no numeric reading`,
    `give an outcome: ${p.outcomes.join(', ')}`,
  ],
  'kind-unfit': (p: { measure: string; test: string; kind: string; kinds: readonly string[] }): Worded => [
    `'${p.measure}' of '${p.test}' is not read as '${p.kind}'`,
    `give it as ${p.kinds.join(' or ')}`,
  ],
  'unit-unknown': (p: { unit: string; dimension: Dimension; symbols: readonly string[] }): Worded => [
    `'${p.unit}' is not a unit of ${p.dimension === 'relative' ? 'this reading' : p.dimension}`,
    `use ${p.symbols.join(', ')}`,
  ],
  'reading-implausible': (p: ImplausibleParts): Worded => [
    `found ${p.value} ${p.unit}, expected ${p.low} to ${p.high} ${p.canonical}`,
    'check the sign and the decimal point',
  ],
  'reading-implausible/unit': (p: ImplausibleParts & { other: string }): Worded => [
    `found ${p.value} ${p.unit}, expected ${p.low} to ${p.high} ${p.canonical}`,
    `is it ${p.other} instead of ${p.unit}?`,
  ],
  'reading-implausible/gauges': (p: { pressure: number; supply: number; unit: string }): Worded => [
    `${p.pressure} ${p.unit} of cylinder pressure at ${p.supply} ${p.unit} of supply pressure`,
    'are the two gauges exchanged?',
  ],
  'reference-zero': (): Worded => ['nothing to compare with', 'the reference reading is above 0'],
  'suspect-missing': (p: { suspect: number; read: readonly string[] }): Worded => [
    `no value for cylinder ${p.suspect}, the suspect (read: ${p.read.join(', ') || 'none'})`,
    'read the suspect too, or name another suspect',
  ],
  'suspect-missing/counts': (p: { suspect: number }): Worded => [
    `no count for cylinder ${p.suspect}, the suspect`,
    'count the suspect too, or name another suspect',
  ],
  'suspect-differs': (p: { read: number; suspect: number }): Worded => [
    `read with cylinder ${p.read} as the suspect, but cylinder ${p.suspect} misfires`,
    'correct this, or the engine',
  ],
  'cylinder-unknown': (p: { cylinder: string; cylinders: number }): Worded => [
    `no cylinder ${p.cylinder} in an engine of ${p.cylinders}`,
    `cylinders are numbered from 1 to ${p.cylinders}: correct this, or the engine`,
  ],
  'neighbour-missing': (): Worded => [
    'only the suspect was read',
    'read at least one other cylinder: only the comparison counts',
  ],
  'neighbour-missing/counts': (): Worded => [
    'only the suspect was read',
    'count at least one other cylinder: only the comparison counts',
  ],
  'neighbour-zero': (): Worded => ['every other cylinder reads 0', 'check the gauge: there is nothing to compare with'],
  'neighbour-zero/half': (p: { cylinders: readonly string[] }): Worded => [
    `half of the other cylinders or more read 0 (${p.cylinders.join(', ')}): too few are left to compare with`,
    'read again; if it remains 0, that is another fault: follow it first, or leave that cylinder out here and compare with the rest',
  ],
  'nominal-zero': (): Worded => ['nothing to compare with', "the maker's figure is above 0"],
  'partner-missing': (): Worded => ['no count for the cylinder the part was swapped with', 'count both cylinders'],
  'partner-unfit': (): Worded => ['the part was replaced, not swapped', 'leave the partner out'],
  'count-above-firings': (p: { count: number; firings: number }): Worded => [
    `found ${p.count} ${misfires(p.count)} in ${p.firings} firings of the cylinder`,
    'a cylinder fires once in two revolutions: correct the count or the exposure',
  ],

  'code-malformed': (p: { text: string }): Worded => [
    `'${p.text}' is not a code`,
    'a code looks like P0301: P, C, B or U, and four digits',
  ],
  'code-malformed/repaired': (p: { text: string; code: string }): Worded => [
    `'${p.text}' is not a code`,
    `did you mean ${p.code}?`,
  ],
  'code-malformed/length': (p: { text: string; digits: number }): Worded => [
    `'${p.text}' is not a code`,
    `a code has a letter and four digits, this one ${p.digits}`,
  ],
  'code-malformed/first-digit': (p: { text: string }): Worded => [
    `'${p.text}' is not a code`,
    'the first digit of a code is 0 to 3',
  ],
  'code-malformed/letter': (p: { text: string }): Worded => [
    `'${p.text}' is not a code`,
    `is the letter missing: P${p.text}?`,
  ],
  'list-too-long': (p: { most: number }): Worded => [
    `the list is longer than ${p.most} characters`,
    'what follows was not read: paste only the codes',
  ],
  'hex-malformed': (p: { found: string }): Worded => [`found '${p.found}'`, 'hexadecimal digits and spaces only'],
  'not-a-monitor-response': (p: { byte: string }): Worded => [
    `begins with ${p.byte === '' ? 'nothing' : p.byte}`,
    'a response to service $06 begins with 46',
  ],
  'record-cut-short': (p: { bytes: number }): Worded => [
    `${p.bytes} ${plural('en', p.bytes, { one: 'byte', other: 'bytes' })} left`,
    'each test takes nine bytes: is the response complete?',
  ],
  'other-monitor': (p: { byte: string }): Worded => [
    `monitor $${p.byte} is not a misfire monitor`,
    'misfire monitors are $A1 to $AD',
  ],
  'other-test': (p: { byte: string }): Worded => [
    `test $${p.byte} is defined by the maker`,
    'counts are tests $0B and $0C',
  ],
  'other-unit': (p: { byte: string }): Worded => [`unit $${p.byte} is not a count`, 'counts have unit $24'],
} as const;

/** What a number that cannot be is said with; `canonical` is the unit of the limits. */
interface ImplausibleParts {
  readonly value: number;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly canonical: string;
}
