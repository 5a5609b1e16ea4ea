import type { Circumstances, CompiledModel, Facts } from '@faultodds/core';
import {
  credibleRanking,
  adviceStability,
  leaderSensitivity,
  type CredibleRanking,
  type AdviceStability,
  type NumberSensitivity,
} from '@faultodds/core/doubt';

/** How far the model's numbers can be doubted and what that does to the ranking and the advice. */
export interface Doubt {
  readonly ranking: CredibleRanking;
  readonly advice: AdviceStability;
  readonly leading: string;
  /** Numbers that could make another cause lead, those within their plausible range first, then by how far the leader swings with them. */
  readonly flips: readonly NumberSensitivity[];
}

/** Draws plausible models and looks for the numbers the leader hangs on.
 * @param draws plausible models for the ranking. @param adviceDraws for the advice, which takes a hundred times as long per draw. */
export function measureDoubt(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  { draws, adviceDraws }: { readonly draws: number; readonly adviceDraws: number },
): Doubt {
  const { leading, functions } = leaderSensitivity(compiled, facts);
  const flipping = functions.filter(({ flip }) => flip !== undefined);
  return {
    ranking: credibleRanking(compiled, facts, { draws }),
    advice: adviceStability(compiled, facts, circumstances, { draws: adviceDraws }),
    leading,
    flips: [
      ...flipping.filter(({ flip }) => flip?.withinRange === true),
      ...flipping.filter(({ flip }) => flip?.withinRange === false),
    ],
  };
}
