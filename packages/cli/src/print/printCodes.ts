import type { Model } from '@faultodds/core';
import type { CodeObservations, MalformedCode } from '@faultodds/core/codes';
import { describeCodeRemark, describeObservation, describeUnusedCode } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { describeMalformed } from './describeMalformed.ts';
import { foldText } from '../terminal/foldText.ts';
import { paint } from '../terminal/paint.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** What a list of codes says: the results it makes, the codes that say nothing here and why, and what is no code at all. */
export function printCodes(
  terminal: Terminal,
  model: Model,
  { observations, kept, remarks }: CodeObservations,
  malformed: readonly MalformedCode[],
): void {
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  const heading = (text: string): void => terminal.write(`${paint(terminal, 'strong', text)}\n`);
  if (malformed.length > 0) heading('Not understood');
  for (const piece of malformed) paragraph(describeMalformed(piece));
  heading(observations.length === 0 ? 'No result: no code concerns this cylinder' : 'Results');
  for (const observation of observations) {
    const from = observation.note === undefined ? '' : ` (${observation.note})`;
    paragraph(`${describeObservation(model, observation, english)}${from}`);
  }
  if (kept.length > 0) heading('Not used here');
  for (const code of kept) paragraph(describeUnusedCode(code, english));
  if (remarks.length > 0) heading('Note');
  for (const remark of remarks) paragraph(describeCodeRemark(remark, english));
}
