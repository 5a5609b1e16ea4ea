import {
  readingLikelihood,
  type CompiledModel,
  type Reading,
  type ReadingLikelihood,
  type ReadingRemark,
} from '@faultodds/core';
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
    ...said.remarks.map((remark) => describeRemark(remark, outcomes)),
  ].map((line) => `${line}.`);
}

const verdicts = { kept: 'met', broken: 'not met', 'not-computable': 'cannot be computed from these numbers' } as const;

function ruleLine({ ruleOfThumb: { text, verdict, value }, compared }: ReadingLikelihood): string {
  const shown = value === undefined || value === compared?.value ? '' : ` at ${withUnit(value, 'ratio')}`;
  return `Rule of thumb (“${text}”): ${verdicts[verdict]}${shown}`;
}

function describeRemark(remark: ReadingRemark, outcomes: readonly { id: string; label: string }[]): string {
  switch (remark.kind) {
    case 'set-aside':
      return `Left out of the comparison, because far above the others or 0: cylinder ${remark.cylinders.join(', ')}`;
    case 'beyond-range':
      return remark.outcome === undefined
        ? 'Outside the range that the model covers: it has no effect'
        : `Beyond the usual range: it counts as “${labelOf(outcomes, remark.outcome)}”`;
    case 'elsewhere':
      return 'Another cylinder misfires, or did before: these counts say nothing about this one';
    case 'exposure-unknown':
      return 'It is not known over how long misfires were counted: only the shares of the cylinders count';
  }
}

function withUnit(value: number, unit: string): string {
  const digits = String(Number(value.toPrecision(3)));
  return unit === 'ratio' ? digits : `${digits} ${unit}`;
}
