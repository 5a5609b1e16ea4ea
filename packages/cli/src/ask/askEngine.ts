import { engineLimits, type Engine } from '@faultodds/core/readings';
import type { Prompter } from '../terminal/prompter.ts';

const { least, most } = engineLimits;

/** Asks how many cylinders there are and which one misfires. @param options.known offered as the answer. @param options.optional whether an
 * empty line means that it is not known. @returns nothing when left, or not known. */
export async function askEngine(
  prompter: Prompter,
  { known, optional = false }: { readonly known?: Engine | undefined; readonly optional?: boolean } = {},
): Promise<Engine | undefined> {
  const number = (from: number, to: number, orEmpty: boolean) => (text: string) =>
    (orEmpty && text.trim() === '') || (/^\d{1,2}$/.test(text.trim()) && Number(text) >= from && Number(text) <= to)
      ? undefined
      : `A whole number from ${from} to ${to}.`;
  const cylinders = await prompter.type(
    `How many cylinders does the engine have?${optional ? ' (empty: not known)' : ''}`,
    `${known?.cylinders ?? ''}`,
    number(least, most, optional),
  );
  if (cylinders === undefined || cylinders.trim() === '') return undefined;
  const suspect = await prompter.type(
    `Which one misfires? (numbered as by the maker${optional ? '; empty: not known' : ''})`,
    `${known?.suspect ?? ''}`,
    number(1, Number(cylinders), optional),
  );
  if (suspect === undefined || suspect.trim() === '') return undefined;
  const bank = known !== undefined && known.suspect === Number(suspect) ? known.bank : undefined;
  return { cylinders: Number(cylinders), suspect: Number(suspect), ...(bank === undefined ? {} : { bank }) };
}
