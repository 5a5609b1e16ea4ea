import type { Worded } from '../../../worded.ts';
import { problemParts } from './problemParts.ts';

const { nearest } = problemParts;

/** Problems of a model: by key, what is wrong and what to do about it. */
export const modelProblems = {
  'two-cause-share-missing': (): Worded => [
    'the model does not say how often two causes act at once',
    'give twoCauseShare, a share of such faults with its range',
  ],
  'source-unknown/listed': (p: { id: string; sources: readonly string[] }): Worded => [
    `no source '${p.id}'`,
    `add it to sources, or use one of ${p.sources.join(', ')}`,
  ],
  'range-disordered': (p: { low: number; best: number; high: number }): Worded => [
    `best ${p.best} lies outside ${p.low} to ${p.high}`,
    'low <= best <= high',
  ],
  'range-disordered/cap': (p: { low: number; high: number }): Worded => [
    `the cap ${p.low} to ${p.high} does not contain 1, the multiplier of a cause that no answer concerns`,
    'low <= 1 <= high',
  ],
  'range-empty': (p: { low: number; high: number }): Worded => [
    `from ${p.low} to ${p.high}`,
    'the low end comes first',
  ],
  'id-duplicate': (p: { id: string }): Worded => [`'${p.id}' occurs twice`, 'ids are unique within their list'],
  'distribution-parameters': (p: { family: string; needed: string; refused: string }): Worded => [
    `a ${p.family} distribution is given by mean and ${p.needed}`,
    `give "${p.needed}", leave out "${p.refused}"`,
  ],
  'distribution-parameters/mean': (p: { family: string; mean: number }): Worded => [
    `found ${p.mean}, a ${p.family} distribution has a mean above 0`,
    'use a normal one, or another mean',
  ],
  'row-not-one': (p: { of: string; sum: number; last: string | undefined; would: number }): Worded => [
    `P(${p.of}) sums to ${p.sum}, expected 1`,
    `if the other entries are right, '${p.last}' is ${p.would}`,
  ],
  'row-not-one/shares': (p: { sum: number }): Worded => [`sums to ${p.sum}, expected 1`, 'correct one share'],
  'row-key-missing': (p: { state: string }): Worded => [`no probability for '${p.state}'`, `add "${p.state}"`],
  'row-key-unknown': (p: { state: string; states: readonly string[] }): Worded => [
    `'${p.state}' is not a state here`,
    `states are ${p.states.join(', ')}`,
  ],
  'likelihood-certain': (p: { probability: number }): Worded => [
    `a likelihood of ${p.probability} could never be corrected by evidence`,
    'use a small or a large number instead',
  ],
  'default-row-missing': (p: { of: string }): Worded => [
    `'${p.of}' has no default row`,
    'end with a row whose `when` is {}',
  ],
  'default-row-missing/reading': (): Worded => ['no default row', 'end with a row whose `when` is {}'],
  'default-row-not-last': (): Worded => ['rows after this one are never used', 'move the `{}` row to the end'],
  'mechanism-rows': (p: { id: string }): Worded => [
    `'${p.id}' needs either a background row or parents with rows`,
    'roots have `background`, dependent mechanisms `parents` and `rows`',
  ],
  'mechanism-dependent': (p: { id: string }): Worded => [
    `'${p.id}' depends on other mechanisms, not on a cause`,
    'name the mechanisms it depends on instead',
  ],
  'mechanism-unknown/here': (p: { id: string; nearest: string | undefined }): Worded => [
    `no mechanism '${p.id}' here`,
    nearest(p.nearest),
  ],
  'value-unknown/of-feature': (p: { feature: string; value: string; nearest: string | undefined }): Worded => [
    `'${p.feature}' has no value '${p.value}'`,
    nearest(p.nearest),
  ],
  'state-unknown/of-mechanism': (p: { mechanism: string; state: string; nearest: string | undefined }): Worded => [
    `'${p.mechanism}' has no state '${p.state}'`,
    nearest(p.nearest),
  ],
  'pair-part-unknown': (p: { name: string; nearest: string | undefined }): Worded => [
    `'${p.name}' is neither a test nor an intake feature`,
    nearest(p.nearest),
  ],
  'pair-with-itself': (p: { name: string }): Worded => [
    `'${p.name}' is paired with itself`,
    'a test that is run again shares its error by its `repeatability`: remove the pair',
  ],
  'pair-twice': (p: { a: string; b: string }): Worded => [
    `'${p.a}' and '${p.b}' are a pair already`,
    'join the two: one kind, one note',
  ],
  'pair-no-test': (p: { name: string }): Worded => [
    `'${p.name}' is neither a test nor an intake question that a test asks too`,
    'use `same-fact` where an intake answer states what a test shows',
  ],
  'mechanism-cycle': (p: { circle: readonly string[] }): Worded => [
    `mechanism depends on itself: ${p.circle.join(' -> ')}`,
    'remove one of these parents',
  ],
  'access-cycle': (p: { circle: readonly string[] }): Worded => [
    `access needs itself: ${p.circle.join(' -> ')}`,
    'remove one of these prerequisites',
  ],
  'follows-cycle': (p: { circle: readonly string[] }): Worded => [
    `test waits for itself: ${p.circle.join(' -> ')}`,
    'let the first look follow nothing',
  ],
  'renamed-circle': (p: { circle: readonly string[] }): Worded => [
    `renamings lead in a circle: ${p.circle.join(' -> ')}`,
    'the last of them must be a name of today: remove the one that leads back',
  ],
  'renamed-twice': (p: { name: string }): Worded => [
    `'${p.name}' is renamed twice`,
    'an earlier name is renamed once: join the two or remove one',
  ],
  'renamed-in-use': (p: { name: string }): Worded => [
    `'${p.name}' is an earlier name and the model still has it`,
    'give the current part a name that was never used before, or remove the renaming',
  ],
  'access-too-many': (p: { count: number; most: number }): Worded => [
    `found ${p.count} access operations, at most ${p.most} are possible`,
    'join operations that are always done together',
  ],
  'table-too-large': (p: { of: string; entries: number; most: number }): Worded => [
    `'${p.of}' needs a table of ${p.entries} entries, at most ${p.most} are possible`,
    'let it depend on fewer mechanisms, or on one that summarises them',
  ],
  'table-too-large/rows': (p: { of: string; rows: number; most: number }): Worded => [
    `'${p.of}' has ${p.rows} rows, at most ${p.most} are possible`,
    'join rows that are alike',
  ],
  'tree-too-wide': (p: { entries: number }): Worded => [
    `too many results and tests depend on each other: a table of ${p.entries} entries would be needed`,
    'record fewer results, or let the tests of the model depend on fewer mechanisms',
  ],
  'not-computable': (p: { code: string; at: string; found: string }): Worded => [
    `nothing can be computed from this: ${p.found} (${p.code} at ${p.at})`,
    'check the model with parseModel; were its numbers changed since?',
  ],
  'multiplier-zero': (p: { feature: string; value: string; cause: string }): Worded => [
    `'${p.feature}: ${p.value}' rules out '${p.cause}' by a multiplier of 0`,
    'only where the part does not exist: say `"definitional": true`, else use a small number',
  ],
  'multiplier-zero/handling': (p: { test: string; cause: string }): Worded => [
    `doing '${p.test}' would rule out '${p.cause}'`,
    'leave the cause out when the test does not cause it',
  ],
  'cause-unreachable': (p: { cause: string }): Worded => [
    `no test can speak for or against '${p.cause}'`,
    'give it a mechanism that a test reads, or a test row that names it',
  ],
  'cause-not-cured': (p: { cause: string }): Worded => [
    `no repair cures '${p.cause}'`,
    'add it to the `cures` of a repair',
  ],
  'not-listed-missing': (): Worded => [
    `no cause 'not-listed'`,
    'every model must allow for a cause that it does not list',
  ],
  'referral-missing': (): Worded => [
    'expected exactly one repair with `"referral": true`',
    'the referral ends every plan',
  ],
  'number-unknown': (): Worded => [
    'there is no number here that can be changed',
    'give the path of a best estimate or of a probability in a row',
  ],
  'number-out-of-range/probability': (p: { value: number }): Worded => [
    `found ${p.value}`,
    'a probability lies between 0 and 1',
  ],
  'number-out-of-range/estimate': (p: { value: number }): Worded => [
    `found ${p.value}`,
    'an estimate is finite and not negative',
  ],
} as const;
