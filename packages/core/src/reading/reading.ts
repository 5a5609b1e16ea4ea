/** Numbers as they were read, with their unit. `measure` names the reading of the test it belongs to; cylinders are named by their
 * number as the maker counts them. Made by `parseReading`. */
export type Reading = MeasuredValues | CountsOfCylinders | CountsOfPart;

/** What an instrument showed. */
export type MeasuredValues = PerCylinderReading | SingleReading | PairReading | TrimReading;

/** One quantity on several cylinders. Neighbours may be missing, the suspect not. */
export interface PerCylinderReading {
  readonly kind: 'per-cylinder';
  readonly measure: string;
  /** cylinder -> value. */
  readonly values: Readonly<Record<string, number>>;
  readonly unit: string;
  readonly suspect: number;
  /** Temperature of each winding, for resistances; a cylinder left out counts as 20 degrees C. */
  readonly temperatures?: { readonly values: Readonly<Record<string, number>>; readonly unit: string };
  /** The maker's figure, in `unit` (resistances: at 20 degrees C). Compared with where no neighbour was read. */
  readonly nominal?: number;
}

/** One number: a reading of the suspect alone, or the compared value itself (a ratio, a difference) when that is what was noted. */
export interface SingleReading {
  readonly kind: 'single';
  readonly measure: string;
  readonly value: number;
  readonly unit: string;
}

/** A reading and the one it is compared with, on the suspect: snap and cranking pressure, wet and dry, cylinder and supply pressure. */
export interface PairReading {
  readonly kind: 'pair';
  readonly measure: string;
  readonly value: number;
  readonly reference: number;
  readonly unit: string;
}

/** Fuel trim of the suspect's bank, in per cent: more fuel is positive. */
export interface TrimReading {
  readonly kind: 'trim';
  readonly measure: string;
  readonly short: number;
  readonly long: number;
}

/** How much was run while counting. `firings` are those of each cylinder: one in two revolutions of a four-stroke engine. */
export interface Exposure {
  readonly amount: number;
  readonly unit: 'revolutions' | 'firings';
}

/** Misfire counts of the cylinders over one exposure. A cylinder that was not counted is left out. */
export interface CountsOfCylinders {
  readonly kind: 'counts';
  readonly measure: string;
  /** cylinder -> misfires. */
  readonly counts: Readonly<Record<string, number>>;
  readonly suspect: number;
  /** Absent when it is not known: then only the shares count. */
  readonly exposure?: Exposure;
}

/** Misfires of the suspect and of the cylinder the part was swapped with, over one exposure. */
export interface CountOfPart {
  readonly suspect: number;
  /** Left out where the part was replaced, not swapped. */
  readonly partner?: number;
  readonly exposure: Exposure;
}

/** Misfire counts before and after a part was swapped or replaced. */
export interface CountsOfPart {
  readonly kind: 'part-counts';
  readonly measure: string;
  readonly before: CountOfPart;
  readonly after: CountOfPart;
}
