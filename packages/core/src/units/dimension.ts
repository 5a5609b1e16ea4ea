/** What a gauge, meter or scope shows. Each has its units, see `unitsOf`. */
export type Dimension =
  'pressure' | 'percent' | 'ratio' | 'angle' | 'length' | 'time' | 'resistance' | 'speed' | 'temperature' | 'relative';
