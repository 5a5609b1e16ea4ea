/** A dash per rank: with the letters at both ends no line is told apart by colour alone. The first two are told apart by the accent. */
export const lineDashes: readonly string[] = ['', '', '9 4', '2 4', '12 3 2 3', '5 5', '1 3', '14 4'];
