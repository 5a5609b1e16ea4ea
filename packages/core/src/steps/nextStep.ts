import type { ProposedRepair } from './proposedRepair.ts';
import type { ProposedTest } from './proposedTest.ts';
import type { StepFacts } from './stepFacts.ts';

/** The one step that is advised. `prove`: the latest entry is a repair that seems to have cured; driving proves it. */
export type NextStep =
  | ({
      readonly kind: 'test';
      /** The repair it lies on the way to: it does not pay by itself, and shows the part before it is bought. */
      readonly onTheWayTo?: string;
    } & ProposedTest)
  | ({ readonly kind: 'repair' } & ProposedRepair)
  | ({ readonly kind: 'refer' } & StepFacts)
  | ({ readonly kind: 'prove' } & ProposedRepair);
