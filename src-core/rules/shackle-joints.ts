import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import { missingFact } from '../assess/facts.ts';
import { isUnknown, unknown, type Value } from '../mechanics/derivation.ts';
import type { Place } from '../base/span.ts';

export interface ShackleJoint {
  readonly shackle: AssessedLink;
  readonly other: AssessedLink;
  readonly place: Place;
}

/** Every joint in which one of the two is a shackle; the place is the shackle's link. */
export function shackleJoints(chain: AssessedChain): ShackleJoint[] {
  return chain.joints.flatMap(({ first, second }) => [
    ...(first.gear === 'shackle' ? [{ shackle: first, other: second, place: first.place }] : []),
    ...(second.gear === 'shackle' ? [{ shackle: second, other: first, place: second.place }] : []),
  ]);
}

export const linesOnShackles = (chain: AssessedChain): { readonly line: AssessedLink; readonly shackle: AssessedLink; readonly place: Place }[] =>
  shackleJoints(chain).flatMap(({ shackle, other, place }) => (other.sort === 'line' ? [{ line: other, shackle, place }] : []));

/** Body diameter of a shackle; the size, where a route gives nothing else. */
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
