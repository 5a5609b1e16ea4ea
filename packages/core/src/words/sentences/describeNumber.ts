import { keysOfPointer } from '../../errors/jsonPointer.ts';
import type { Model } from '../../model/model.ts';
import type { ConditionalRow } from '../../model/row.ts';
import type { Language } from '../languages/language.ts';
import { nameOf } from './nameOf.ts';

/** What a number of the model is, as a phrase. @param path its JSON Pointer, see `modelNumbers`; the path itself where it leads to none.
 * @example describeNumber(model, '/goneWithoutCure/best', english) // 'How often the fault goes though the repair did not cure it' */
export function describeNumber(model: Model, path: string, language: Language): string {
  const { numberWords: words } = language;
  const [list = '', at, part, key = '', , last = ''] = keysOfPointer(path);
  const index = Number(at);
  const nameOfCause = (id: string): string => nameOf(model.causes, id, language);
  const mechanismOf = (id: string): Model['mechanisms'][number] | undefined =>
    model.mechanisms.find((one) => one.id === id);
  const inState = (mechanism: Model['mechanisms'][number], state: string, condition: string): string =>
    words.entry(mechanism.label, nameOf(mechanism.states, state, language), condition);
  const whenOf = ({ when }: ConditionalRow): string => {
    const conditions = Object.entries(when).map(([parent, states]) => {
      const mechanism = mechanismOf(parent);
      if (mechanism === undefined) return words.ifCause(states.map(nameOfCause));
      const names = states.map((state) => nameOf(mechanism.states, state, language));
      return words.ifMechanism(mechanism.label, names);
    });
    return conditions.length === 0 ? words.otherwise : words.when(conditions);
  };

  if (
    list === 'goneWithoutCure' ||
    list === 'presentIfNotNoted' ||
    list === 'leastRepairMinutes' ||
    list === 'needlessOpening'
  ) {
    return words[list]();
  }
  switch (`${list}/${part}`) {
    case 'causes/weight':
    case 'causes/activeFraction': {
      const cause = model.causes[index]?.label;
      if (cause === undefined) return path;
      return part === 'weight' ? words.weight(cause) : words.activeFraction(cause);
    }
    case 'causes/states': {
      const [cause, mechanism] = [model.causes[index], mechanismOf(key)];
      if (cause === undefined || mechanism === undefined) return path;
      return inState(mechanism, last, words.when([words.ifCause([cause.label])]));
    }
    case 'mechanisms/background': {
      const mechanism = model.mechanisms[index];
      // one key less than the others: `/mechanisms/0/background/p/weak`
      return mechanism === undefined ? path : inState(mechanism, keysOfPointer(path).at(-1)!, words.background);
    }
    case 'mechanisms/rows': {
      const mechanism = model.mechanisms[index];
      const row = mechanism?.rows?.[Number(key)];
      return mechanism === undefined || row === undefined ? path : inState(mechanism, last, whenOf(row));
    }
    case 'tests/rows': {
      const test = model.tests[index];
      const row = test?.rows[Number(key)];
      if (test === undefined || row === undefined) return path;
      return words.entry(test.label, nameOf(test.outcomes, last, language), whenOf(row));
    }
    case 'tests/asleep': {
      const test = model.tests[index];
      // one key less than a row
      return test === undefined
        ? path
        : words.entry(test.label, nameOf(test.outcomes, keysOfPointer(path).at(-1)!, language), words.asleep);
    }
    case 'tests/repeatability': {
      const test = model.tests[index];
      return test === undefined ? path : words.repeatability(test.label);
    }
    case 'context/values': {
      const feature = model.context[index];
      const value = feature?.values[Number(key)];
      if (feature === undefined || value === undefined) return path;
      return words.multiplier(feature.question, value.label, nameOfCause(last));
    }
    case 'repairs/cures': {
      const repair = model.repairs[index];
      return repair === undefined ? path : words.cures(repair.label, nameOfCause(key));
    }
    default:
      return path;
  }
}
