/** One variable as an author writes it. `table` holds P(variable | parents): length = product of the numbers of states of the parents and
 * of the variable; parents in the order given, the state of the variable fastest. */
export interface VariableDefinition {
  readonly name: string;
  readonly states: readonly string[];
  /** Names of the parents; none when left out. */
  readonly parents?: readonly string[];
  readonly table: ArrayLike<number>;
}

/** A Bayesian network as an author writes it; `defineNetwork` makes a `Network` of it. */
export interface NetworkDefinition {
  readonly variables: readonly VariableDefinition[];
}

/** One variable of a validated network. */
export interface NetworkVariable {
  readonly name: string;
  /** Position in `Network.variables`. */
  readonly index: number;
  /** In the author's order. */
  readonly states: readonly string[];
  /** Positions of the parents, in the author's order. */
  readonly parents: readonly number[];
  /** P(variable | parents), every row summing to one; parents in order, own state fastest. Borrowed: do not write into it. */
  readonly table: Float64Array;
}

/** A validated network. Made by `defineNetwork` only. */
export interface Network {
  readonly variables: readonly NetworkVariable[];
  /** name -> position in `variables`. */
  readonly indexOf: ReadonlyMap<string, number>;
  /** Positions, every parent before its children. */
  readonly topologicalOrder: readonly number[];
}
