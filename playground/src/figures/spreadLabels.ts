/** Moves label centres apart so that none overlap, each as near to where it wants to be as its neighbours allow.
 * @param wanted centres, in any order, pixels. @param rooms height of each label. @param extent lowest and highest edge allowed.
 * @returns centres in the order given. When all of them need more room than there is they run over the end.
 * Method: pool adjacent violators (isotonic regression with gaps). */
export function spreadLabels(
  wanted: readonly number[],
  rooms: readonly number[],
  extent: readonly [number, number],
): readonly number[] {
  const room = (index: number): number => rooms[index] ?? 0;
  const want = (index: number): number => wanted[index] ?? 0;
  const blocks: Block[] = [];
  for (const index of wanted.map((_, at) => at).sort((a, b) => want(a) - want(b) || a - b)) {
    let block = stack([index]);
    for (let above = blocks.at(-1); above && above.start + above.size > block.start; above = blocks.at(-1)) {
      blocks.pop();
      block = stack([...above.members, ...block.members]);
    }
    blocks.push(block);
  }
  const placed: number[] = [];
  for (const { members, start } of blocks) {
    let edge = start;
    for (const index of members) {
      placed[index] = edge + room(index) / 2;
      edge += room(index);
    }
  }
  return placed;

  /** Labels that touch, where the mean of their wishes puts them. */
  function stack(members: readonly number[]): Block {
    let size = 0;
    let wishes = 0;
    for (const index of members) {
      wishes += want(index) - room(index) / 2 - size;
      size += room(index);
    }
    const start = Math.max(extent[0], Math.min(extent[1] - size, wishes / members.length));
    return { members, size, start };
  }
}

interface Block {
  readonly members: readonly number[];
  readonly size: number;
  readonly start: number;
}
