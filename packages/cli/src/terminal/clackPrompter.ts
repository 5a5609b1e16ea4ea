import { autocomplete, confirm, isCancel, multiline, multiselect, select, text } from '@clack/prompts';
import type { Choice, Prompter } from './prompter.ts';
import { visibleText } from './visibleText.ts';

const ROWS = 10;

/** Questions to the person at the terminal. Escape and Ctrl-C leave a question without an answer. What comes from a file is made visible:
 * labels, hints and suggestions. */
export const clackPrompter: Prompter = {
  choose: async (message, choices, at) =>
    answered(
      await select({
        message: visibleText(message),
        options: optionsOf(choices),
        maxItems: 14,
        ...(at === undefined ? {} : { initialValue: at }),
      }),
    ),
  chooseSeveral: async (message, choices, chosen) =>
    answered(
      await multiselect({
        message: visibleText(message),
        options: optionsOf(choices),
        initialValues: [...chosen],
        required: false,
        maxItems: 14,
      }),
    ),
  find: async (message, choices) =>
    answered(
      await autocomplete({
        message: visibleText(message),
        options: optionsOf(choices),
        maxItems: ROWS,
        placeholder: 'type to search',
      }),
    ),
  type: async (message, suggestion, refuse) =>
    answered(
      await text({
        message: visibleText(message),
        initialValue: visibleText(suggestion),
        validate: (given) => {
          const wrong = refuse?.(given ?? '');
          return wrong === undefined ? undefined : visibleText(wrong);
        },
      }),
    ),
  // an empty line is part of what is pasted: only the button ends it
  paste: async (message, suggestion) =>
    answered(
      await multiline({
        message: `${visibleText(message)} (to finish: Tab, then Enter)`,
        initialValue: visibleText(suggestion),
        showSubmit: true,
      }),
    ),
  confirm: async (message) => answered(await confirm({ message: visibleText(message) })),
};

function optionsOf(choices: readonly Choice[]): { value: string; label: string; hint?: string }[] {
  return choices.map(({ value, label, hint }) => ({
    value,
    label: visibleText(label),
    ...(hint === undefined ? {} : { hint: visibleText(hint) }),
  }));
}

function answered<T>(answer: T): Exclude<T, symbol> | undefined {
  return isCancel(answer) ? undefined : (answer as Exclude<T, symbol>);
}
