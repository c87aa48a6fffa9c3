import type { Place } from '../base/span.ts';
import { eyeOnEye } from '../mechanics/eye-on-eye.ts';
import type { Cause } from '../mechanics/derivation.ts';
import type { AssessedLink, AssessedRoute } from './assess-chain.ts';

/** Two links of a route that hang on each other, in the order they are written. */
export interface Joint {
  readonly first: AssessedLink;
  readonly second: AssessedLink;
  readonly place: Place;
}

export function jointsOf(route: Pick<AssessedRoute, 'links'>): Joint[] {
  const joints: Joint[] = [];
  route.links.forEach((second, i) => {
    const first = route.links[i - 1];
    // `tail inboard -> tail outboard` runs along the piece and joins nothing.
    if (first === undefined || (first.piece !== undefined && first.piece === second.piece && first.end !== second.end)) return;
    joints.push({ first, second, place: { chunk: first.place.chunk, start: first.place.start, end: second.place.end } });
  });
  return joints;
}

/** The joints of every route of a chain, those that stand in several routes once. */
export function allJoints(routes: readonly Pick<AssessedRoute, 'links'>[]): Joint[] {
  const joints = routes.flatMap(jointsOf);
  if (joints.length < 2) return joints;
  const seen = new Set<string>();
  return joints.filter(({ first, second }) => {
    const key = first.key < second.key ? `${first.key} -> ${second.key}` : `${second.key} -> ${first.key}`;
    return !seen.has(key) && seen.add(key) !== undefined;
  });
}

/** Whether bare rope or webbing bears at a link's joint; the cause when the file does not say. */
export function isRope(link: AssessedLink): boolean | Cause {
  if (link.sort === 'gear') return link.gear === 'strap' || link.gear === 'soft-shackle';
  if (link.piece === undefined) return false;
  if (link.end === undefined) return endNotGiven(link);
  const { form, thimble, broken } = link.end.facts;
  const which = `the ${link.end.which} end of \`${link.piece.name}\``;
  const place = link.end.facts.place;
  if (broken) return { key: `form of ${link.end.which} end of ${link.piece.name}`, says: `how ${which} is made cannot be read`, help: 'correct it', place, reported: true };
  if (form === 'unstated') return { key: `form of ${link.end.which} end of ${link.piece.name}`, says: `how ${which} is made is not given`, help: `add \`${link.end.which} eye ...\` with its bury and taper`, place };
  return (form === 'eye' && thimble === undefined) || form === 'knot';
}

/** Why it cannot be told what a line that is named without an end, or with a word that is none, hangs by. */
export const endNotGiven = (link: AssessedLink): Cause => ({
  key: `end of ${link.name} at ${link.place.start}`,
  says: `which end of \`${link.name}\` is joined here is not given`,
  help: `write \`${link.name} inboard\` or \`${link.name} outboard\``,
  place: link.place,
  ...(link.link.link === 'name' && link.link.part !== undefined ? { reported: true } : {}),
});

/** What bears on the joint, for a sentence: `main` outboard eye, `trunk`. */
export const bearingName = (link: AssessedLink): string => (link.end === undefined ? `\`${link.name}\`` : `\`${link.piece!.name}\` ${link.end.which} ${link.end.facts.form === 'knot' ? 'knot' : 'eye'}`);

/**
 * True for bare rope on bare rope, false where one of the two is round and smooth, the cause when it cannot be told.
 * A soft shackle is made to join the wide eyes of straps, and is not counted there.
 */
export function isRopeOnRope({ first, second }: Joint): boolean | Cause {
  const gear = [first.gear, second.gear];
  if (gear.includes('soft-shackle') && gear.includes('strap')) return false;
  const [a, b] = [isRope(first), isRope(second)];
  if (a === false || b === false) return false;
  if (a !== true) return a;
  return b;
}

/** The reason to doubt the figures of two links that bear on each other as rope on rope. */
export const ropeOnRopeCause = ({ first, second }: Joint): Cause => ({ ...eyeOnEye(bearingName(first), bearingName(second)).unknown, reported: true });
