import type { Engine } from '../../reading/engine.ts';
import type { Language } from '../languages/language.ts';

/** Which cylinder of how many misfires, as a sentence without its full stop: "Cylinder 3 of 4 misfires".
 * @example describeEngine({ cylinders: 4, suspect: 3 }, english) // 'Cylinder 3 of 4 misfires' */
export function describeEngine({ cylinders, suspect, bank }: Engine, { messages }: Language): string {
  const said = messages.engine({ suspect: `${suspect}`, cylinders: `${cylinders}` });
  return bank === undefined ? said : messages.engineOnBank({ engine: said, bank: `${bank}` });
}
