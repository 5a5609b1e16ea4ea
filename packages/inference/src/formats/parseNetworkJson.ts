import { defineNetwork, type DefineNetworkOptions } from '../network/defineNetwork.ts';
import { FormatError } from '../errors/formatError.ts';
import { jsonOffset } from './jsonOffset.ts';
import type { Network, NetworkDefinition } from '../network/network.ts';
import { NetworkError } from '../errors/networkError.ts';

/** Reads a `NetworkDefinition` as JSON text and validates it.
 * @throws FormatError `json-syntax` where the text is not JSON; `network-json` where it is not a network, at the line and column of the
 * first fault, with all faults in `problems`.
 * @example parseNetworkJson('{"variables":[{"name":"rain","states":["yes","no"],"table":[0.2,0.8]}]}').variables.length // 1 */
export function parseNetworkJson(text: string, options: DefineNetworkOptions = {}): Network {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const { offset } = jsonOffset(text, '');
    const found = offset < text.length ? `'${text[offset]}'` : 'the end of the text';
    throw new FormatError(
      'json-syntax',
      `found ${found} where JSON has none`,
      'a comma, a quote or a bracket may be missing or left over',
      text,
      offset,
    );
  }
  try {
    return defineNetwork(value as NetworkDefinition, options);
  } catch (error) {
    if (!(error instanceof NetworkError)) throw error;
    const { offset } = jsonOffset(text, error.path);
    throw new FormatError(
      'network-json',
      `${error.problems[0]!.message} (${error.code} at ${error.path})`,
      error.hint,
      text,
      offset,
      error.problems,
    );
  }
}
