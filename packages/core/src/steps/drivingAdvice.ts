import type { CauseRanking } from '../belief/belief.ts';
import type { LocalText } from '../model/localText.ts';
import { drivings, type Driving, type Model } from '../model/model.ts';

/** Whether the car may be driven now, and because of which cause. */
export interface DrivingAdvice {
  readonly driving: Driving;
  readonly cause: string;
  readonly probability: number;
  /** What comes of driving on with it. */
  readonly ifDrivenOn: LocalText;
}

/** Whether the car may be moved: what the gravest cause says that is still plausible (from the model's `plausibleFrom` on), the likeliest
 * of them; the leading cause where none is. Not the leader alone: a small chance of a wrecked engine weighs more than a worn plug.
 * @example
 * ```ts
 * const ranking = [{ cause: 'piston-holed', probability: 1, prior: 0.1 }];
 * drivingAdvice(model, { ...belief, posterior: { 'piston-holed': 1 }, ranking }).driving // 'stop'
 * ``` */
export function drivingAdvice({ causes, plausibleFrom }: Model, { posterior, ranking }: CauseRanking): DrivingAdvice {
  // with two causes at once, each counts for every pair it is in
  const members = (hypothesis: string): readonly string[] => hypothesis.split(' + ');
  const leading = members(ranking[0]?.cause ?? '');
  const probabilityOf = (cause: string): number =>
    Object.entries(posterior).reduce((sum, [id, p]) => (members(id).includes(cause) ? sum + p : sum), 0);
  const plausible = causes
    .map((cause) => ({ ...cause, probability: probabilityOf(cause.id) }))
    .filter(({ id, probability }) => probability >= plausibleFrom.best || leading.includes(id))
    .sort((a, b) => drivings.indexOf(a.driving) - drivings.indexOf(b.driving) || b.probability - a.probability);
  const { id, driving, probability, ifDrivenOn } = plausible[0]!;
  return { driving, cause: id, probability, ifDrivenOn };
}
