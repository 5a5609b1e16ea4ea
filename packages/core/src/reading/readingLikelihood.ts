import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import { ReadingError } from '../errors/readingError.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Test } from '../model/model.ts';
import type { MeasuredReading, ReadingModel } from '../model/readingModel.ts';
import { applyRuleOfThumb, type RuleResult } from './applyRuleOfThumb.ts';
import { bandOf, outcomeBeyond } from './bandOf.ts';
import { comparedValue } from './comparedValue.ts';
import type { CountsSupport } from './countsSupport.ts';
import { findReadingProblems } from './findReadingProblems.ts';
import { logSupportOfReading } from './logSupportOfReading.ts';
import type { CountsOfCylinders, CountsOfPart, MeasuredValues, Reading } from './reading.ts';
import { supportOfCounts } from './supportOfCounts.ts';
import { supportOfPartCounts } from './supportOfPartCounts.ts';

/** What a reading says, before any case: for showing it at the field where it is entered. */
export interface ReadingLikelihood {
  readonly test: string;
  readonly measure: string;
  /** The compared value and its unit; absent for counts. */
  readonly compared?: { readonly value: number; readonly unit: string };
  /** For each distribution (measured) or outcome (counts), how strongly the reading supports it: 1 says nothing for a distribution;
   * counts are relative to the best supported outcome. */
  readonly support: readonly { readonly id: string; readonly label: string; readonly likelihood: number }[];
  /** The rows of the model, first match first, and the likelihood of the reading under each; none for counts. */
  readonly rows: readonly { readonly when: Readonly<Record<string, readonly string[]>>; readonly likelihood: number }[];
  /** What outcome the number would be called: one, several when it leaves open which, none when the model does not say. */
  readonly outcomes: readonly string[];
  readonly ruleOfThumb: RuleResult;
  /** The best supported alternative is less than three times as likely as the worst one (counts: as the second): too little to say anything.
   * Source of the three: Kass & Raftery 1995, JASA 90:773-795, "not worth more than a bare mention". */
  readonly saysLittle: boolean;
  readonly remarks: readonly ReadingRemark[];
}

/** Something about the entry itself that a reader should know. */
export type ReadingRemark =
  /** These cylinders were not compared with: they stand far above the others, or read 0. */
  | { readonly kind: 'set-aside'; readonly cylinders: readonly string[] }
  /** The compared value lies beyond what the distributions cover: it counts as `outcome`, or says nothing. */
  | { readonly kind: 'beyond-range'; readonly outcome?: string }
  /** Another cylinder than the suspect misfires, or did before the swap: the counts say nothing about this one. */
  | { readonly kind: 'elsewhere' }
  /** No exposure was noted: only the shares speak. */
  | { readonly kind: 'exposure-unknown' };

const BARE_MENTION = 3;

/** What a reading of a test says: the compared value, the likelihood under each row of the model, the outcome it would be called, and the
 * rule of thumb of the trade beside it.
 * @throws EvidenceError `test-unknown` @throws ReadingError as `parseReading` does, when the reading is none of this test.
 * @example
 * ```ts
 * const fed = readingLikelihood(compiled, 'leak-down', { kind: 'pair', measure: 'leakage', value: 5, reference: 8, unit: 'bar' });
 * fed.compared // { value: 37.5, unit: '%' }
 * ``` */
export function readingLikelihood(compiled: CompiledModel, test: string, reading: Reading): ReadingLikelihood {
  const known = compiled.model.tests.find(({ id }) => id === test);
  if (known === undefined) {
    const unknown = findUnknownId('test', test, compiled.model.tests, '/test');
    throw new EvidenceError([unknown[0]!]);
  }
  const problems = findReadingProblems(known, reading);
  if (atLeastOne(problems)) throw new ReadingError(problems);
  const model = known.readings?.find(({ id }) => id === reading.measure);
  return { test, measure: reading.measure, ...judge(known, model!, reading) };
}

type Judged = Omit<ReadingLikelihood, 'test' | 'measure'>;

function judge(test: Test, model: ReadingModel, reading: Reading): Judged {
  switch (model.kind) {
    case 'measured':
      return judgeMeasured(model, reading as MeasuredValues);
    case 'counts':
      return judgeCounts(test, model, reading, supportOfCounts(model, reading as CountsOfCylinders));
    case 'part-counts':
      return judgeCounts(test, model, reading, supportOfPartCounts(model, reading as CountsOfPart));
  }
}

function judgeCounts(
  { outcomes }: Test,
  { ruleOfThumb }: ReadingModel,
  reading: Reading,
  { byOutcome, elsewhere }: CountsSupport,
): Judged {
  const support = outcomes.map(({ id, label }) => ({ id, label, likelihood: byOutcome[id] ?? 0 }));
  const [first, second] = support.toSorted((a, b) => b.likelihood - a.likelihood);
  const saysLittle = first!.likelihood < BARE_MENTION * second!.likelihood;
  const remarks: ReadingRemark[] = [];
  if (elsewhere) remarks.push({ kind: 'elsewhere' });
  if (reading.kind === 'counts' && reading.exposure === undefined) remarks.push({ kind: 'exposure-unknown' });
  return {
    support,
    rows: [],
    outcomes: saysLittle ? [] : [first!.id],
    ruleOfThumb: applyRuleOfThumb(ruleOfThumb, reading),
    saysLittle,
    remarks,
  };
}

function judgeMeasured(model: MeasuredReading, reading: MeasuredValues): Judged {
  const { value, setAside, byCylinder } = comparedValue(model, reading);
  const logs = logSupportOfReading(model, value);
  const support = model.distributions.map(({ id, label }, d) => ({ id, label, likelihood: Math.exp(logs[d]!) }));
  const likelihoodOf = new Map(support.map(({ id, likelihood }) => [id, likelihood]));
  const rows = model.rows.map(({ when, p }) => ({
    when,
    likelihood: Object.entries(p).reduce((sum, [id, share]) => sum + share * (likelihoodOf.get(id) ?? 0), 0),
  }));
  const likelihoods = rows.map(({ likelihood }) => likelihood);
  const beyond = outcomeBeyond(model, value);
  const outside = value < model.wild.low || value > model.wild.high;
  const remarks: ReadingRemark[] = [];
  if (setAside.length > 0) remarks.push({ kind: 'set-aside', cylinders: setAside });
  if (outside)
    remarks.push(beyond === undefined ? { kind: 'beyond-range' } : { kind: 'beyond-range', outcome: beyond });
  return {
    compared: { value, unit: model.unit },
    support,
    rows,
    outcomes: beyond === undefined ? bandOf(model, value) : [beyond],
    ruleOfThumb: applyRuleOfThumb(model.ruleOfThumb, reading, value, byCylinder),
    saysLittle: beyond === undefined && Math.max(...likelihoods) < BARE_MENTION * Math.min(...likelihoods),
    remarks,
  };
}
