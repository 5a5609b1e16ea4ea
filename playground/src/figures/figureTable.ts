/** The data of a figure as a table; the first cell of every row heads it. */
export interface FigureTable {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
