import type { InferenceProblem } from '../errors/inferenceError.ts';
import type { Network, NetworkDefinition, NetworkVariable } from './network.ts';
import { NetworkError } from '../errors/networkError.ts';
import { checkNumbers } from '../errors/checkNumbers.ts';
import { checkTable } from './checkTable.ts';
import { topologicalOrder } from './topologicalOrder.ts';

/** Options of `defineNetwork`. */
export interface DefineNetworkOptions {
  /** Largest |row sum - 1| that is taken for rounding; such rows are divided by their sum. Default 1e-6: published tables print
   * six or seven digits. */
  readonly rowTolerance?: number;
}

/** Validates a network definition and copies it.
 * Rows within `rowTolerance` of one are divided by their own left-to-right sum, so that all answers are coherent.
 * @throws NetworkError with every problem found; InferenceOptionError
 * @example defineNetwork({ variables: [{ name: 'rain', states: ['yes', 'no'], table: [0.2, 0.8] }] }).variables.length // 1 */
export function defineNetwork(definition: NetworkDefinition, options: DefineNetworkOptions = {}): Network {
  checkNumbers(['/rowTolerance', options.rowTolerance, 0, 1]);
  const rowTolerance = options.rowTolerance ?? 1e-6;
  const problems: InferenceProblem[] = [];
  const report = (code: string, path: string, message: string, hint: string): void => {
    problems.push({ code, path, message, hint });
  };
  const refuse = (): never => {
    throw new NetworkError(problems as [InferenceProblem, ...InferenceProblem[]]);
  };
  const shape = '{ name: string, states: string[], parents?: string[], table: number[] }';
  const definitions = definition?.variables;
  if (!Array.isArray(definitions as unknown) || definitions.length === 0) {
    report('network-shape', '/variables', 'expected a list of at least one variable', `variables: [${shape}]`);
    return refuse();
  }
  const indexOf = new Map<string, number>();
  definitions.forEach((variable, index) => {
    const path = `/variables/${index}`;
    if (
      typeof variable?.name !== 'string' ||
      !Array.isArray(variable.states) ||
      !isList(variable.table) ||
      !(variable.parents === undefined || Array.isArray(variable.parents))
    ) {
      report('network-shape', path, `expected ${shape}`, 'see VariableDefinition');
      return;
    }
    if (variable.name === '')
      report('variable-name-empty', `${path}/name`, 'the name is empty', 'give every variable a name');
    const earlier = indexOf.get(variable.name);
    if (earlier === undefined) indexOf.set(variable.name, index);
    else
      report(
        'variable-duplicate',
        `${path}/name`,
        `'${variable.name}' is already the name of variable ${earlier}`,
        'rename one of the two',
      );
    if (variable.states.length === 0)
      report('state-missing', `${path}/states`, `'${variable.name}' has no states`, 'list at least one state');
    variable.states.forEach((state, at) => {
      if (typeof state !== 'string')
        report(
          'network-shape',
          `${path}/states/${at}`,
          `state ${at} of '${variable.name}' is not a string`,
          'states are names',
        );
      else if (variable.states.indexOf(state) !== at)
        report(
          'state-duplicate',
          `${path}/states/${at}`,
          `'${state}' occurs twice in '${variable.name}'`,
          'rename one of the two',
        );
    });
  });
  if (problems.some((problem) => problem.code === 'network-shape')) refuse();

  const variables: NetworkVariable[] = definitions.map((variable, index) => {
    const path = `/variables/${index}`;
    const parents: number[] = [];
    const given = variable.parents ?? [];
    given.forEach((name, at) => {
      const parent = indexOf.get(name);
      if (parent === undefined)
        report(
          'parent-unknown',
          `${path}/parents/${at}`,
          `'${name}', a parent of '${variable.name}', is not a variable`,
          'add the variable or correct the name',
        );
      else if (parents.includes(parent))
        report(
          'parent-duplicate',
          `${path}/parents/${at}`,
          `'${name}' is listed twice as a parent of '${variable.name}'`,
          'list it once',
        );
      else parents.push(parent);
    });
    const table =
      parents.length === given.length
        ? checkTable(
            variable,
            parents.map((parent) => definitions[parent]!),
            path,
            rowTolerance,
            report,
          )
        : new Float64Array(0);
    return {
      name: variable.name,
      index,
      states: Object.freeze([...variable.states]),
      parents: Object.freeze(parents),
      table,
    };
  });
  const order = topologicalOrder(variables);
  if (order.cycle.length > 0) {
    const names = order.cycle.map((index) => variables[index]!.name);
    report(
      'cycle',
      `/variables/${order.cycle[0]}/parents`,
      `the parents run in a circle: ${[...names, names[0]].join(' <- ')}`,
      'remove one of these arcs',
    );
  }
  if (problems.length > 0) refuse();
  return Object.freeze({
    variables: Object.freeze(variables.map((variable) => Object.freeze(variable))),
    indexOf,
    topologicalOrder: Object.freeze(order.order),
  });
}

function isList(value: unknown): boolean {
  return typeof value === 'object' && value !== null && typeof (value as { length?: unknown }).length === 'number';
}
