import type { Engine } from '../../../../reading/engine.ts';
import { describeEngine as inLanguage } from '../../../sentences/describeEngine.ts';
import { german } from '../german.ts';

/** Which cylinder of how many misfires, as a sentence without its full stop: "Zylinder 3 von 4 hat Aussetzer". */
export function describeEngine(engine: Engine): string {
  return inLanguage(engine, german);
}
