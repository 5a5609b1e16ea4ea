import type { Language } from '../languages/language.ts';

/** The label of an id in one of the model's lists; the id itself when the list does not hold it. Two causes at once (`a + b`) are
 * named one after the other. */
export function nameOf(
  list: readonly { readonly id: string; readonly label: string }[],
  id: string,
  { messages }: Language,
): string {
  const [first = id, second] = id.split(' + ').map((part) => list.find((one) => one.id === part)?.label ?? part);
  return second === undefined ? first : messages.bothCauses({ first, second });
}
