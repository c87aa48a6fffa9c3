import { damagePlace } from '../assess/damage-place.ts';
import { defineRule } from './rule.ts';

/** From so many places on, each by itself below the limit: our own careful choice. */
const many = 4;

const line = (places: readonly number[]): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
${places.map((at) => `  2026-06-21  damage  cut 1 strand at ${at} m from inboard\n`).join('')}}
`;

export const cutInManyPlaces = defineRule({
  name: 'cut-in-many-places',
  on: 'line',
  severity: 'warning',
  summary: 'Single strands of a line are cut in many places, each far enough from the next.',
  why: 'each place by itself is within the limit, and a line that was cut in so many went over an edge with all of its length: what was not seen there is not counted',
  source: 'our own careful choice, because no figure was found for places far from each other',
  bad: line([6, 10, 14, 18]),
  good: line([6, 10, 14]),
  check({ pieces }, judge) {
    for (const piece of pieces.values()) {
      if (piece.retired !== undefined) continue;
      const places = piece.damages.filter(({ fact, remedy }) => fact.kind === 'cut' && remedy === 'derate');
      if (places.length === 0) continue;
      judge.holds(places.length < many, () => ({
        place: places.at(-1)!.fact.place,
        message: `\`${piece.name}\` has cut strands in ${places.length} places, the last one at ${damagePlace(places.at(-1)!)}`,
        help: 'find what cut it, look over all of it again by hand, and retire it where you are not sure',
        related: places.slice(0, 3).map(({ fact }) => ({ place: fact.place, message: 'one of them' })),
      }));
    }
  },
});
