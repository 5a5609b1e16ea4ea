type Labelled = readonly { readonly id: string; readonly label: string }[];

/** The label of an id; the id itself where the list does not hold it. Two causes at once (`a + b`) are named with "and". */
export function labelOf(list: Labelled, id: string): string {
  const labels = id.split(' + ').map((part) => list.find((one) => one.id === part)?.label ?? part);
  return labels.join(' and ');
}
