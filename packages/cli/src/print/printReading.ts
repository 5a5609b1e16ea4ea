import type { CompiledModel } from '@faultodds/core';
import { readingLikelihood, type Reading, type ReadingLikelihood } from '@faultodds/core/readings';
import { describeReadingRemark } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** A result that was read as numbers; with the outcome that was noted beside them, if one was. */
export interface MeasuredResult {
  readonly test: string;
  readonly reading: Reading;
  readonly outcome?: string;
}

/** What the numbers of a test come to: the compared value, what it would be called where nobody said, and the rule of thumb of the trade beside it. */
export function printReading(terminal: Terminal, compiled: CompiledModel, result: MeasuredResult): void {
  for (const line of readingLines(compiled, result)) {
    terminal.write(`${foldText(line, terminal.width, '  ')}\n`);
  }
}

/** The same as sentences, for data. */
export function readingLines(compiled: CompiledModel, { test, reading, outcome }: MeasuredResult): readonly string[] {
  const said = readingLikelihood(compiled, test, reading);
  const outcomes = compiled.model.tests.find(({ id }) => id === test)?.outcomes ?? [];
  const called = said.outcomes.map((outcome) => `“${labelOf(outcomes, outcome)}”`).join(' or ');
  return [
    ...(said.compared === undefined ? [] : [`Compared value: ${withUnit(said.compared.value, said.compared.unit)}`]),
    ...(called === '' || outcome !== undefined ? [] : [`Counts as ${called}`]),
    ...(said.saysLittle ? ['These numbers hardly distinguish between the states'] : []),
    ruleLine(said),
  ]
    .map((line) => `${line}.`)
    .concat(said.remarks.map((remark) => describeReadingRemark(compiled.model, test, remark, english)));
}

const verdicts = { kept: 'met', broken: 'not met', 'not-computable': 'cannot be computed from these numbers' } as const;

function ruleLine({ ruleOfThumb: { text, verdict, value }, compared }: ReadingLikelihood): string {
  const shown = value === undefined || value === compared?.value ? '' : ` at ${withUnit(value, 'ratio')}`;
  return `Rule of thumb (“${text}”): ${verdicts[verdict]}${shown}`;
}

function withUnit(value: number, unit: string): string {
  const digits = String(Number(value.toPrecision(3)));
  return unit === 'ratio' ? digits : `${digits} ${unit}`;
}
