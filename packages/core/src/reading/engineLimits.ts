/** How many cylinders an engine of a case can have. One is too few: there is no other cylinder to compare with. */
export const engineLimits: { readonly least: number; readonly most: number } = { least: 2, most: 12 };
