/** The label of an id in one of the model's lists; the id itself when the list does not hold it. */
export function nameOf(list: readonly { readonly id: string; readonly label: string }[], id: string): string {
  return list.find((one) => one.id === id)?.label ?? id;
}
