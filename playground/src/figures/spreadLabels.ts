/** Moves label centres apart so that none overlap, each as near to where it wants to be as its neighbours allow.
 * @param wanted centres, in any order, pixels. @param room height of each label. @param extent lowest and highest edge allowed.
 * @returns centres in the order given. Crowding beyond the extent is shared evenly from its start.
 * Method: pool adjacent violators (isotonic regression with unit gaps). */
export function spreadLabels(
  wanted: readonly number[],
  room: number,
  extent: readonly [number, number],
): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const blocks: { members: number[]; centre: number }[] = [];
  for (const index of order) {
    let block = { members: [index], centre: clamp(wanted[index]!, 1) };
    let above = blocks.at(-1);
    while (above && block.centre - above.centre < (room * (above.members.length + block.members.length)) / 2) {
      blocks.pop();
      const members = [...above.members, ...block.members];
      block = { members, centre: clamp(wish(members), members.length) };
      above = blocks.at(-1);
    }
    blocks.push(block);
  }
  const placed: number[] = [];
  for (const { members, centre } of blocks)
    members.forEach((index, k) => (placed[index] = centre + (k - (members.length - 1) / 2) * room));
  return placed;

  function wish(members: readonly number[]): number {
    const starts = members.map((index, k) => wanted[index]! - (k - (members.length - 1) / 2) * room);
    return starts.reduce((sum, start) => sum + start, 0) / starts.length;
  }
  function clamp(centre: number, size: number): number {
    const half = (size * room) / 2;
    return Math.max(extent[0] + half, Math.min(extent[1] - half, centre));
  }
}
