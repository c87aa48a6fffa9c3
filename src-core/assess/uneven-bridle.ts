import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import type { PlanPosition } from '../mechanics/rigging-plan.ts';
import type { BoundBlock } from '../model/bound.ts';
import { sources } from '../trade/sources.ts';
import { holdersOf, standsIn, type PullRigging } from './pull-rigging.ts';
import { bridgedBy } from './pull-reach.ts';
import type { Run } from './pull-run.ts';

/** So far from the middle of two anchors the pull may come and still halve the angle: our own careful choice, since places are paced. */
const middle_rad = (10 * Math.PI) / 180;

/** Whether one leg is longer than the other for sure: from what straps and line of a leg surely bridge to what they may. */
export function ofUnlikeLength({ legs }: Run): boolean {
  const [one, other] = legs.map((leg) => bridgedBy(leg, undefined));
  return one !== undefined && other !== undefined && !isUnknown(one) && !isUnknown(other) && (one.amount.low > other.amount.high || other.amount.low > one.amount.high);
}

/** Why the two legs of a bridle do not carry the same, as a clause; undefined where nothing says so. */
export function whyUneven(run: Run, block: BoundBlock, { comesFrom, blocks, plannedPulls }: PullRigging): string | undefined {
  if (ofUnlikeLength(run)) return 'one leg is longer than the other';
  const stands = standsIn(block);
  const [a, b] = run.legs.map((leg) => holdersOf(leg)[0]).map((holder) => (holder === undefined ? undefined : stands.get(holder.name)));
  if (a === undefined || b === undefined) return undefined;
  const at = blocks.findIndex((held) => held.run === run);
  const pull = at >= 0 ? plannedPulls[at] : comesFrom === undefined ? undefined : { x_m: comesFrom.x_m - (a.x_m + b.x_m) / 2, y_m: comesFrom.y_m - (a.y_m + b.y_m) / 2 };
  return pull !== undefined && offMiddle(pull, a, b) > middle_rad + 1e-9 ? 'by the places the pull does not halve the angle' : undefined;
}

/** How far a direction of pull is from square to the line between two places (rad). */
function offMiddle(pull: PlanPosition, a: PlanPosition, b: PlanPosition): number {
  const across = { x: b.x_m - a.x_m, y: b.y_m - a.y_m };
  const lengths = Math.hypot(pull.x_m, pull.y_m) * Math.hypot(across.x, across.y);
  return lengths > 0 ? Math.asin(Math.min(1, Math.abs(pull.x_m * across.x + pull.y_m * across.y) / lengths)) : 0;
}

/** A leg of a bridle whose legs do not share alike: nothing, up to all that a direction within the angle can bring on it. */
export function unevenLeg(pull: Given, angle: Given, even: Given, why: string): Value {
  const θ = angle.amount.high;
  const most = θ <= Math.PI / 2 ? pull.amount.high : pull.amount.high / Math.sin(θ);
  return asGiven({
    calculation: 'leg-of-uneven-bridle', means: 'tension in a leg of a bridle that does not share alike', symbol: 'T', kind: 'tension', formula: 'T = 0 to P max(sin β) ÷ sin θ, β up to θ', amount: { low: 0, high: Math.max(most, even.amount.high) },
    inputs: [{ symbol: 'P', meaning: 'pull on the bridle', given: pull }, { symbol: 'θ', meaning: 'angle between the legs', given: angle }],
    sources: [sources.statics], assumptions: [`${why}, so that either leg may take most of it`], notes: [],
  });
}
