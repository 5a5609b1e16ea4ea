import type { NamesToday } from '../model/makeNamesToday.ts';
import type { PartName } from '../model/renaming.ts';
import type { CaseEvent, EquipmentSet, ResultRecorded } from '../session/caseEvent.ts';

/** An event of an earlier version of a model in the names of today. An outcome that has become several is one of these: a likelihood that
 * does not tell them apart. Where there is no one name for it, the event comes back as it was. */
export function renameEvent(today: NamesToday, event: CaseEvent): CaseEvent {
  switch (event.kind) {
    case 'context-set':
      return { ...event, ...only(today({ feature: event.feature, value: event.value })) };
    case 'context-cleared':
      return { ...event, ...only(today({ feature: event.feature })) };
    case 'result-recorded':
      return renameResult(today, event);
    case 'repair-tried':
      return { ...event, ...only(today({ repair: event.repair })) };
    case 'access-opened':
    case 'access-closed':
      return { ...event, ...only(today({ access: event.access })) };
    case 'equipment-set':
      return renameEquipment(today, event);
    case 'engine-set':
    case 'observation-retracted':
    case 'prices-set':
    case 'note-added':
    case 'title-set':
      return event;
  }
}

function only(names: readonly PartName[]): PartName | undefined {
  return names.length === 1 ? names[0] : undefined;
}

function renameEquipment(today: NamesToday, event: EquipmentSet): EquipmentSet {
  const names = event.equipment.map((id) => {
    const name = only(today({ equipment: id }));
    return name !== undefined && 'equipment' in name ? name.equipment : id;
  });
  return { ...event, equipment: [...new Set(names)] };
}

function renameResult(today: NamesToday, event: ResultRecorded): ResultRecorded {
  const { test, outcome, likelihood, reading, ...others } = event;
  const numbers = reading === undefined ? [] : today({ test, reading: reading.measure });
  const shares = Object.entries(likelihood ?? (outcome === undefined ? {} : { [outcome]: 1 })).map(
    ([id, weight]) => [today({ test, outcome: id }), weight] as const,
  );
  const names = [...numbers, ...shares.flatMap(([found]) => found)];
  const tests = new Set(
    (names.length === 0 ? today({ test }) : names).flatMap((name) => ('test' in name ? name.test : [])),
  );
  const gone = (reading !== undefined && numbers.length !== 1) || shares.some(([found]) => found.length === 0);
  const [only, ...more] = tests;
  const weights = gone ? undefined : weightsOf(shares);
  if (only === undefined || more.length > 0 || weights === undefined) return event;

  const [number] = numbers;
  const measured =
    reading !== undefined && number !== undefined && 'reading' in number
      ? { reading: { ...reading, measure: number.reading } }
      : {};
  const outcomes = Object.keys(weights);
  if (likelihood !== undefined) return { ...others, test: only, likelihood: weights, ...measured };
  if (outcome === undefined) return { ...others, test: only, ...measured };
  if (outcomes.length === 1) return { ...others, test: only, outcome: outcomes[0]!, ...measured };
  // beside numbers there is no room for a likelihood
  return reading === undefined ? { ...others, test: only, likelihood: weights } : event;
}

/** Outcome -> weight; nothing where two outcomes that were told apart are one now. */
function weightsOf(
  shares: readonly (readonly [names: readonly PartName[], weight: number])[],
): Readonly<Record<string, number>> | undefined {
  const weights = new Map<string, number>();
  for (const [names, weight] of shares) {
    for (const name of names) {
      if (!('outcome' in name)) continue;
      if ((weights.get(name.outcome) ?? weight) !== weight) return undefined;
      weights.set(name.outcome, weight);
    }
  }
  return Object.fromEntries(weights);
}
