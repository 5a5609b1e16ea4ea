import { observationsFromCodes, parseTroubleCodes } from '@faultodds/core/codes';
import { describeCodeRemark, describeObservation, describeUnusedCode } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { CommandError } from '../terminal/commandError.ts';
import { describeMalformed } from '../print/describeMalformed.ts';
import { loadModel } from '../read/loadModel.ts';
import { printCodes } from '../print/printCodes.ts';
import { printJson } from '../print/printJson.ts';
import { readBytes } from '../files/readBytes.ts';
import type { Terminal } from '../terminal/terminal.ts';
import { textOf } from '../files/textOf.ts';

/** Options of `faultodds codes`. */
export interface CodesOptions {
  readonly cylinder: number;
  readonly of: number;
  readonly bank?: '1' | '2';
  /** The list is all that the modules hold. Default false. */
  readonly complete?: boolean;
  readonly json?: boolean;
  readonly model?: string;
}

/** Prints what a list of trouble codes says about one cylinder. @param pieces the list; `-` alone reads standard input.
 * @throws CommandError there is no code in it, or no such cylinder */
export async function codes(terminal: Terminal, pieces: readonly string[], options: CodesOptions): Promise<void> {
  const { cylinder, of, bank, complete = false, json = false } = options;
  if (cylinder > of) throw new CommandError(`there is no cylinder ${cylinder} among ${of}`);
  const text = pieces.length === 1 && pieces[0] === '-' ? textOf(await readBytes('-'), '-') : pieces.join(' ');
  const { codes: found, malformed } = parseTroubleCodes(text);
  const [first] = malformed;
  if (found.length === 0 && (first !== undefined || !complete)) {
    throw new CommandError(
      first === undefined ? 'the list is empty; with --complete that is a result' : describeMalformed(first),
    );
  }
  const { model, compiled } = await loadModel(options.model);
  const read = observationsFromCodes(compiled, found, {
    suspectCylinder: cylinder,
    cylinders: of,
    listIsComplete: complete,
    ...(bank === undefined ? {} : { bank: bank === '1' ? 1 : 2 }),
  });
  if (!json) {
    printCodes(terminal, model, read, malformed);
    return;
  }
  const document = {
    format: 'faultodds-codes',
    version: 1,
    cylinder,
    of,
    observations: read.observations.map((one) => ({ ...one, what: describeObservation(model, one, english) })),
    kept: read.kept.map((one) => ({ ...one, what: describeUnusedCode(one, english) })),
    malformed: malformed.map((one) => ({ text: one.text, at: one.at, hint: one.hint, what: describeMalformed(one) })),
    remarks: read.remarks.map((one) => ({ ...one, what: describeCodeRemark(one, english) })),
  };
  printJson(terminal, document);
}
