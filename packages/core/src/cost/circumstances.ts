/** Prices of work and parts. */
export interface Prices {
  /** Currency code shown with every amount, e.g. `EUR`; the model's own unit by default. */
  readonly currency: string;
  readonly labourPerHour: number;
  /** Model units of parts and consumables times this give amounts in `currency`. Default 1. */
  readonly partsFactor: number;
  /** What opening the engine counts for, in `currency`, beyond its price where it proves needless: time, risk, trust. Nobody is paid it;
   * it weighs when steps are chosen. Default: the model's amount times `partsFactor`. */
  readonly needlessOpening?: number;
}

/** What advice depends on besides the evidence: prices, equipment at hand, access that is open. */
export interface Circumstances {
  /** Default: the model's own labour rate and unit. */
  readonly prices?: Prices;
  /** Equipment at hand. Default: everything. */
  readonly equipment?: readonly string[];
  /** Access operations already open (what they require is open too). Default: none. */
  readonly openAccess?: readonly string[];
}
