import { autocomplete, confirm, isCancel, multiline, select, text } from '@clack/prompts';
import type { Choice, Prompter } from './prompter.ts';

const ROWS = 10;

/** Questions to the person at the terminal. Escape and Ctrl-C leave a question without an answer. */
export const clackPrompter: Prompter = {
  choose: async (message, choices) => answered(await select({ message, options: optionsOf(choices), maxItems: 14 })),
  find: async (message, choices) =>
    answered(
      await autocomplete({ message, options: optionsOf(choices), maxItems: ROWS, placeholder: 'type to search' }),
    ),
  type: async (message, suggestion, refuse) =>
    answered(await text({ message, initialValue: suggestion, validate: (given) => refuse?.(given ?? '') })),
  // an empty line is part of what is pasted: only the button ends it
  paste: async (message, suggestion) =>
    answered(
      await multiline({
        message: `${message} (Tab, then Enter, when it is all)`,
        initialValue: suggestion,
        showSubmit: true,
      }),
    ),
  confirm: async (message) => answered(await confirm({ message })),
};

function optionsOf(choices: readonly Choice[]): { value: string; label: string; hint?: string }[] {
  return choices.map((choice) => ({ ...choice }));
}

function answered<T>(answer: T): Exclude<T, symbol> | undefined {
  return isCancel(answer) ? undefined : (answer as Exclude<T, symbol>);
}
