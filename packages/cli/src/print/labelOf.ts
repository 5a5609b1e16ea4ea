type Labelled = readonly { readonly id: string; readonly label: string }[];

/** The label of an id; the id itself where the list does not hold it. Two causes at once (`a + b`) are named with "and". */
export function labelOf(list: Labelled, id: string): string {
  const [first = id, ...others] = id.split(' + ').map((part) => list.find((one) => one.id === part)?.label ?? part);
  return [first, ...others.map(lowerFirst)].join(' and ');
}

// an abbreviation keeps its capitals
function lowerFirst(label: string): string {
  return /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}
