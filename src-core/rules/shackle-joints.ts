import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import type { GearHead } from '../assess/assess-gear.ts';
import { missingFact } from '../assess/facts.ts';
import { isUnknown, unknown, type Value } from '../mechanics/derivation.ts';
import type { Place } from '../base/span.ts';

export interface ShackleJoint {
  readonly shackle: AssessedLink;
  readonly other: AssessedLink;
  readonly place: Place;
}

/** What a bare eye bends round. */
export const bars: readonly (GearHead | undefined)[] = ['shackle', 'ring', 'hook'];

/** Every joint in which one of the two is a shackle, or another of `gear`; the place is the shackle's link. */
export const shackleJoints = (chain: AssessedChain, gear: readonly (GearHead | undefined)[] = ['shackle']): ShackleJoint[] =>
  chain.joints.flatMap(({ first, second }) => [[first, second] as const, [second, first] as const].flatMap(([shackle, other]) => (gear.includes(shackle.gear) ? [{ shackle, other, place: shackle.place }] : [])));

export const linesOnShackles = (chain: AssessedChain, gear?: typeof bars): { readonly line: AssessedLink; readonly shackle: AssessedLink; readonly place: Place }[] =>
  shackleJoints(chain, gear).flatMap(({ shackle, other, place }) => (other.sort === 'line' ? [{ line: other, shackle, place }] : []));

/** Body diameter of a shackle, a ring or a hook; the size, where a route gives nothing else. */
export function bodyOf(shackle: AssessedLink): Value {
  if (shackle.size !== undefined) return shackle.size;
  const { gearFacts } = shackle;
  return gearFacts?.body ?? unknown({ ...missingFact(gearFacts!.block, 'body'), says: `body diameter of \`${shackle.name}\` is not given`, help: 'add `body`, measured or from the marking' });
}

/** The thinner of body and pin: an eye may lie on either. */
export function thinnest(shackle: AssessedLink): Value {
  const body = bodyOf(shackle);
  const pin = shackle.gearFacts?.pin;
  return pin !== undefined && !isUnknown(pin) && !isUnknown(body) && pin.amount.low < body.amount.low ? pin : body;
}
