import type { InferenceProblem } from '../errors/inferenceError.ts';
import type { Network } from './network.ts';
import { QueryError } from '../errors/queryError.ts';

/** Positions of variables by name.
 * @param path JSON Pointer of the list, for messages. @throws QueryError `query-variable-unknown`, `query-variable-duplicate` */
export function variablePositions(network: Network, names: readonly string[], path = ''): number[] {
  const problems: InferenceProblem[] = [];
  const positions = names.map((name, at) => {
    const position = network.indexOf.get(name);
    if (position === undefined)
      problems.push({
        code: 'query-variable-unknown',
        path: `${path}/${at}`,
        message: `the network has no variable '${name}'`,
        hint: 'use the name as defined',
      });
    if (names.indexOf(name) !== at)
      problems.push({
        code: 'query-variable-duplicate',
        path: `${path}/${at}`,
        message: `'${name}' is listed twice`,
        hint: 'list it once',
      });
    return position ?? -1;
  });
  if (problems.length > 0) throw new QueryError(problems as [InferenceProblem, ...InferenceProblem[]]);
  return positions;
}
