/** The label of an id; the id itself where the list does not hold it. */
export function labelOf(list: readonly { readonly id: string; readonly label: string }[], id: string): string {
  return list.find((one) => one.id === id)?.label ?? id;
}
