/** One column of the rank shift picture: the ranking at one moment. */
export interface RankShiftColumn {
  readonly id: string;
  /** Under the column: `start`, `car`, `1`, `2` … */
  readonly mark: string;
  /** What was seen there, shown where there is room. */
  readonly label: string;
  /** What a screen reader says of the column: what happened and who leads. */
  readonly spoken: string;
  /** cause -> probability, for every line; height on the scale, never calculated with. */
  readonly chances: Readonly<Record<string, number>>;
  /** The most likely cause that has no line of its own. */
  readonly ceilingOfOthers: number;
}

/** One line of the rank shift picture, strongest first. */
export interface RankShiftLine {
  readonly cause: string;
  /** A, B, C … by rank now; stands at both ends of the line and in the ranking. */
  readonly letter: string;
  readonly label: string;
}

/** Even: height is proportional to probability. Stretched: height is proportional to its square root, so that rare causes can be told apart. */
export type RankShiftScale = 'even' | 'stretched';

/** The label at one end of a line. */
export interface EndLabel extends RankShiftLine {
  /** Where the line ends, pixels from the top. */
  readonly from: number;
  /** Where its label stands. */
  readonly to: number;
  /** Its probability there, in words. */
  readonly chance: string;
}
