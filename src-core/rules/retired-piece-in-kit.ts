import { nameOf } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { defineRule } from './rule.ts';

const text = (entry: string): string => `line tail {
  material  HMPE
  strands   12
  diameter  10 mm
  length    12 m
  breaking  92 kN
  inboard   eye thimble tube bury 72 d taper 24 d
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  fitted
${entry}}

kit bag {
  carries  tail
}
`;

export const retiredPieceInKit = defineRule({
  name: 'retired-piece-in-kit',
  on: 'block',
  heads: ['kit'],
  severity: 'warning',
  summary: 'A line that was retired is still in the bag.',
  why: 'what lies in the bag is taken for good by whoever reaches into it',
  source: 'common practice: what is retired is not loaded again',
  bad: text('  2026-06-21  retired "melted at the fairlead"\n'),
  good: text(''),
  check(block, judge, assessing) {
    for (const statement of block.statements) {
      const gear = statement.definition.head === 'carries' ? nameOf(statement.values, 'gear') : undefined;
      const piece = gear === undefined ? undefined : assessing.piece(gear.name);
      if (gear === undefined || piece === undefined) continue;
      judge.holds(piece.retired === undefined, () => ({
        place: gear.place,
        message: `\`${gear.name}\` was retired on ${printDay(piece.retired!.day)} and is still in ${block.name === undefined ? 'the kit' : `\`${block.name}\``}`,
        help: 'take it out of the bag, and cut it up so that nobody loads it',
        related: [{ place: piece.retired!.statement.place, message: 'retired here' }],
      }));
    }
  },
});
