import { damageName, positionUnit } from '../assess/damage-place.ts';
import { inService } from '../assess/ends.ts';
import { clearanceOf } from '../assess/plan-cuts.ts';
import { show } from '../assess/show.ts';
import { asGiven, isUnknown, type Given } from '../mechanics/derivation.ts';
import { nameOf } from '../model/bound.ts';
import { clearOfDamage } from '../trade/plan-sources.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { between, exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { damageToCutOut } from './damage-to-cut-out.ts';
import { defineRule } from './rule.ts';

const line = `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  melt at 24.4 m from inboard
}
`;
const cutAt = (place: string): string => `${line}
repair home on main {
  cut     at ${place} from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`;

export const cutCloseToDamage = defineRule({
  name: 'cut-close-to-damage',
  on: 'repair',
  severity: 'warning',
  summary: 'A planned cut lies close beside the damage that it takes out.',
  why: 'wear and heat thin out by and by: what lies beside the place that was written down goes into the new splice',
  source: printSource(clearOfDamage),
  bad: cutAt('24.39 m'),
  good: cutAt('24.3 m'),
  // The line is damaged until the repair is done.
  goodShows: ['damage-left-in-service'],
  check({ block, before, after }, judge) {
    // What stays in the line is said by itself.
    const left = new Set(inService(after).flatMap((piece) => [...piece.damages, ...piece.heats].map(({ fact }) => fact.statement)));
    for (const { definition, values, place } of block.statements) {
      const station = values.get('station');
      const piece = before.pieces.get(nameOf(values, 'piece')?.name ?? before.facts.name);
      if (definition.head !== 'cut' || station?.type !== 'station' || piece === undefined) continue;
      const { distance, end } = station.from;
      const clear = asGiven(clearanceOf(piece.line.diameter));
      const away = end === 'inboard' ? 'inboard' : 'outboard';
      for (const damage of [...damageToCutOut(piece), ...piece.heats.filter(({ strength }) => isUnknown(strength))]) {
        const stretch = damage.stretch?.[away];
        if (stretch === undefined || left.has(damage.fact.statement)) continue;
        const [low, high] = [Math.max(stretch.from.low - distance.value, distance.value - stretch.to.high), Math.max(stretch.from.high - distance.value, distance.value - stretch.to.low)];
        const gap: Given = { amount: between(Math.max(0, low), Math.max(0, high)), kind: 'length', origin: { from: 'constant', source: sources['lengths-add'] } };
        const isBefore = distance.value <= stretch.from.high;
        judge.atLeast(gap, clear, place, (is, least) => ({
          place,
          message: `this cut lies ${is.amount.low === 0 ? 'at the edge of' : `${show(is, { careful: 'down' })} from`} ${damageName(damage, piece)}, below the ${show(least, { careful: 'up' })} that a cut keeps clear`,
          help: `cut at ${isBefore ? printAmount(exactly(stretch.from.low - least.amount.high), 'length', { unit: positionUnit(distance.unit), careful: 'down' }) : printAmount(exactly(stretch.to.high + least.amount.high), 'length', { unit: positionUnit(distance.unit), careful: 'up' })} from ${end} or ${isBefore ? 'less' : 'more'}`,
          related: [{ place: damage.fact.place, message: 'what it takes out' }],
        }));
      }
    }
  },
});
