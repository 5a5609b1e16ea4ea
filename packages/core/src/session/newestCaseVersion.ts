/** The version of the case format that is written today; every older one loads. */
export const newestCaseVersion = 3;
