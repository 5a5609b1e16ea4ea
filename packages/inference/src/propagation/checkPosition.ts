import { checkNumbers } from '../errors/checkNumbers.ts';
import type { CompiledNetwork } from './compileNetwork.ts';

/** Looks at a variable that is named by its position in the network. @throws InferenceOptionError */
export function checkPosition({ cardinalities }: Pick<CompiledNetwork, 'cardinalities'>, variable: number): void {
  if (cardinalities[variable] !== undefined) return;
  checkNumbers(['/variable', variable ?? NaN, 0, cardinalities.length - 1, true]);
}
