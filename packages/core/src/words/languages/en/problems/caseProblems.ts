import type { Found } from '../../../../errors/foundIn.ts';
import type { Worded } from '../../../worded.ts';
import { problemParts } from './problemParts.ts';

const { found, nearest } = problemParts;

/** Problems of a case, of its results and of questions about it: by key, what is wrong and what to do about it. */
export const caseProblems = {
  'format-unknown': (p: { format: Found }): Worded => [
    `${p.format.kind === 'nothing' ? 'no format is stated' : `found format ${found(p.format)}`}, expected 'faultodds-case'`,
    'give a saved case',
  ],
  'version-unknown': (p: { version: Found; newest: number }): Worded => [
    `${p.version.kind === 'nothing' ? 'no version is stated' : `found version ${found(p.version)}`}, expected a whole number from 1 to ${p.newest}`,
    `versions are whole numbers from 1 to ${p.newest}`,
  ],
  'version-unknown/newer': (p: { version: number; newest: number }): Worded => [
    `the case was saved in version ${p.version} of the format, this program reads versions up to ${p.newest}`,
    'use a newer faultodds to open it',
  ],
  'model-other': (p: { made: ModelParts; here: ModelParts }): Worded => [
    `the case was made with the model '${p.made.id}', version ${p.made.version}; this is the model '${p.here.id}', version ${p.here.version}`,
    `open it with the model '${p.made.id}'`,
  ],
  'key-unsafe': (p: { key: string }): Worded => [`'${p.key}' is not a key of a case`, 'remove it'],
  'case-full': (p: { most: number }): Worded => [
    `the case has ${p.most} entries, which is the limit`,
    'save it and continue in a new case',
  ],
  'id-taken': (p: { id: string }): Worded => [
    `observation id '${p.id}' is already used`,
    'every observation needs a unique id, even after a retraction',
  ],
  'observation-unknown/to-retract': (p: { id: string; nearest: string | undefined }): Worded => [
    `no observation '${p.id}' to retract`,
    nearest(p.nearest),
  ],
  'context-needed': (p: { observation: string; test: string }): Worded => [
    `result '${p.observation}' of '${p.test}' needs the intake fact as it is`,
    `retract '${p.observation}' first`,
  ],
  'cylinder-unknown/engine': (p: { cylinder: number; cylinders: number }): Worded => [
    `no cylinder ${p.cylinder} in an engine of ${p.cylinders}`,
    `cylinders are numbered from 1 to ${p.cylinders}: correct one of the two`,
  ],
  'engine-differs/suspect': (p: { observation: string; read: number; suspect: number }): Worded => [
    `result '${p.observation}': read with cylinder ${p.read} as the suspect, but cylinder ${p.suspect} misfires`,
    `retract '${p.observation}' first`,
  ],
  'engine-differs/cylinders': (p: { observation: string; cylinder: string; cylinders: number }): Worded => [
    `result '${p.observation}': no cylinder ${p.cylinder} in an engine of ${p.cylinders}`,
    `retract '${p.observation}' first`,
  ],
  'test-not-applicable': (p: { test: string; needs: readonly (readonly string[])[] }): Worded => [
    `'${p.test}' does not apply to this car`,
    `it needs the intake fact ${p.needs.map((all) => all.join(' and ')).join(', or ')}`,
  ],
  'test-not-applicable/now': (p: { test: string }): Worded => [
    `'${p.test}' does not apply to this car`,
    'answer the intake question it needs',
  ],
  'outcome-missing': (): Worded => ['neither an outcome nor a likelihood nor a reading', 'give exactly one of them'],
  'outcome-missing/both': (): Worded => ['both an outcome and a likelihood', 'give exactly one of them'],
  'outcome-missing/reading': (): Worded => [
    'both a reading and a likelihood',
    'the likelihood follows from the reading: leave it out',
  ],
  'outcome-contradicts-reading': (p: { outcome: string; called: readonly string[] }): Worded => [
    `the number does not count as '${p.outcome}'${p.called.length > 0 ? ` but as ${p.called.join(' or ')}` : ''}`,
    'leave the outcome out, or correct the number',
  ],
  'likelihood-invalid': (p: { value: number; most: number }): Worded => [
    `found ${p.value}`,
    `relative likelihoods lie between 0 and ${p.most}`,
  ],
  'likelihood-invalid/none': (): Worded => [
    'no outcome has a likelihood above 0',
    'give the relative likelihood of each outcome, as in 3 to 1',
  ],
  'evidence-impossible': (): Worded => [
    'no cause of this model can produce what was recorded',
    'retract the result you trust least; the intake facts may also rule out too much',
  ],
  'evidence-impossible/context': (): Worded => [
    'the intake facts rule out every cause',
    'clear one of them, or answer what the causes require',
  ],
  'belief-of-another-model': (p: { id: string }): Worded => [
    `a belief of another model: they differ in '${p.id}'`,
    'call beliefOf with this model and the facts of the case',
  ],
  'row-not-one/table': (p: { sum: number }): Worded => [
    `sums to ${p.sum}, expected 1`,
    'the probabilities of all possibilities sum to 1',
  ],
  'stakes-invalid': (p: { value: number; range: 'positive' | 'not-negative' | 'share' }): Worded => [
    `found ${p.value}, expected a number ${ranges[p.range]}`,
    `give a finite number ${ranges[p.range]}`,
  ],
} as const;

const ranges = { positive: 'above 0', 'not-negative': 'not negative', share: 'between 0 and 1' } as const;

/** Which model a case was made with, or is opened with. */
interface ModelParts {
  readonly id: string;
  readonly version: number;
}
