import type { Prompter } from './prompter.ts';

/** The cylinder that misfires, and how many there are. */
export interface Suspect {
  readonly cylinder: number;
  readonly of: number;
}

const MOST = 16;

/** Asks how many cylinders there are and which one misfires. @returns nothing when left. */
export async function askSuspect(prompter: Prompter, known?: Suspect): Promise<Suspect | undefined> {
  const number = (most: number) => (text: string) =>
    /^\d{1,2}$/.test(text.trim()) && Number(text) >= 1 && Number(text) <= most
      ? undefined
      : `A whole number from 1 to ${most}.`;
  const of = await prompter.type('How many cylinders has the engine?', `${known?.of ?? ''}`, number(MOST));
  if (of === undefined) return undefined;
  const cylinder = await prompter.type(
    'Which one misfires? (as the maker counts)',
    `${known?.cylinder ?? ''}`,
    number(Number(of)),
  );
  return cylinder === undefined ? undefined : { cylinder: Number(cylinder), of: Number(of) };
}
