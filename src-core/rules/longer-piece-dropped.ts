import { isBelow } from '../base/compare.ts';
import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { dropsInboard } from '../model/line-work.ts';
import { exactly } from '../units/amount.ts';
import { defineRule } from './rule.ts';

const text = (cut: string): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-02  fitted
}

repair home on main {
  cut     at ${cut} from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched
}
`;

export const longerPieceDropped = defineRule({
  name: 'longer-piece-dropped',
  on: 'repair',
  severity: 'warning',
  summary: 'A planned cut throws away more of a line than it keeps.',
  why: 'what lies outboard of a cut is dropped unless it is kept: where the bad end is the one at the drum, the good one goes',
  source: 'our own careful choice, because the outboard piece is dropped without a word',
  bad: text('4 m'),
  good: text('26 m'),
  check({ block, name, before, after }, judge) {
    const lengths = (pieces: typeof before.pieces): number | undefined => {
      let sum = 0;
      for (const { length } of pieces.values()) {
        if (isUnknown(length)) return undefined;
        sum += length.amount.low;
      }
      return sum;
    };
    const [whole, left] = [lengths(before.pieces), lengths(after.pieces)];
    const cut = block.statements.find((s) => s.definition.head === 'cut');
    if (cut === undefined || whole === undefined || left === undefined) return;
    const metres = (m: number): string => show({ amount: exactly(m), kind: 'length', origin: { from: 'written', place: cut.place } });
    judge.holds(!isBelow(left, whole / 2), () => ({
      place: cut.place,
      message: `\`${name}\` drops ${metres(whole - left)} of the ${metres(whole)} of \`${before.facts.name}\`, more than it leaves`,
      help: dropsInboard(cut) ? 'to drop the outer end, leave out `drop inboard`' : 'to drop the end at the drum, write `drop inboard` behind the cut; to use both, `keep` and a name',
    }));
  },
});
