/** Events a case holds at most: far above any real one. What can be recorded can be saved, and what is saved loads. */
export const mostEvents = 2_000;
