/** A cycle among ids that point to other ids, first id repeated at the end; `undefined` when there is none. Ids that do not resolve are ignored. */
export function findCycle(next: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (id: string): readonly string[] | undefined => {
    if (done.has(id)) return undefined;
    const seenAt = path.indexOf(id);
    if (seenAt >= 0) return [...path.slice(seenAt), id];
    path.push(id);
    for (const to of next.get(id) ?? []) {
      const cycle = visit(to);
      if (cycle !== undefined) return cycle;
    }
    path.pop();
    done.add(id);
    return undefined;
  };
  for (const id of next.keys()) {
    const cycle = visit(id);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}
