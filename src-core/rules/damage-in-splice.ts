import { damagePlace } from '../assess/damage-place.ts';
import { endName, inService } from '../assess/ends.ts';
import { damageWords } from '../assess/damage-words.ts';
import { causeOfLost } from '../assess/facts.ts';
import { mayTouch } from '../assess/stretch-from-ends.ts';
import { defineRule } from './rule.ts';

export const damageInSplice = defineRule({
  name: 'damage-in-splice',
  on: 'line',
  severity: 'warning',
  summary: 'Damage lies in the stretch of line that holds a splice.',
  why: 'the standing part has to grip the tail evenly, and where its strands are damaged it does not',
  source: 'our own careful choice, because no strength is published for a splice in damaged line',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion light at 40 cm from outboard
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  abrasion light at 4 m from outboard
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      if (piece.damages.length === 0) continue;
      for (const { end, cause } of piece.splices.unplaced) judge.cannot(cause, end.facts.place);
      for (const { end, whole } of piece.splices.stretches) {
        for (const damage of piece.damages) {
          const { stretch, fact, remedy } = damage;
          // What is to be cut out anyway is said once, by its own rule.
          if (remedy === 'cut-out' || remedy === 'retire') continue;
          if (stretch === undefined) {
            const lost = piece.long.lost ?? piece.short.lost;
            judge.cannot(lost === undefined ? { key: `place of damage ${fact.place.start}`, says: `where this damage lies on \`${piece.name}\` cannot be worked out`, help: 'measure it again', place: fact.place } : causeOfLost(lost, `length of ${piece.name}`), fact.place);
            continue;
          }
          const foundLater = end.facts.supplied || (end.facts.day !== undefined && end.facts.day <= fact.day);
          judge.holds(!mayTouch(stretch, whole), () => ({
            place: foundLater ? fact.place : end.facts.place,
            message: `${damageWords(fact)} at ${damagePlace(damage)} lies in the splice of ${endName(piece, end)}`,
            help: foundLater ? 'cut the splice off and make it again in sound line' : 'cut farther on, so that the splice lies in sound line',
            related: [{ place: foundLater ? end.facts.place : fact.place, message: foundLater ? 'the splice' : 'the damage' }],
          }));
        }
      }
    }
  },
});
