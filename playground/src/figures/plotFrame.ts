/** Where everything of a rank shift picture stands, pixels: what moves when the picture changes. Positions only, never probabilities. */
export interface PlotFrame {
  readonly width: number;
  readonly columns: readonly PlotColumn[];
}

/** One column of a frame. */
export interface PlotColumn {
  readonly id: string;
  readonly x: number;
  /** cause -> height */
  readonly ys: Readonly<Record<string, number>>;
  readonly others: number;
}

/** The frames from one to the next: a column that is new grows out of the last one before it, one that is gone is gone at once.
 * @returns share of the way, 0 to 1 -> frame */
export function betweenFrames(from: PlotFrame, to: PlotFrame): (share: number) => PlotFrame {
  const mix = (a: number, b: number, share: number): number => a + (b - a) * share;
  const origins = to.columns.map(({ id }) => from.columns.find((one) => one.id === id) ?? from.columns.at(-1));
  return (share) => ({
    width: to.width,
    columns: to.columns.map((column, at) => {
      const origin = origins[at] ?? column;
      return {
        id: column.id,
        x: mix(origin.x, column.x, share),
        ys: Object.fromEntries(
          Object.entries(column.ys).map(([cause, y]) => [cause, mix(origin.ys[cause] ?? y, y, share)]),
        ),
        others: mix(origin.others, column.others, share),
      };
    }),
  });
}
