import { damageName } from '../assess/damage-place.ts';
import type { AssessedDamage, AssessedPiece } from '../assess/assess-line.ts';
import { isBelow } from '../base/compare.ts';
import { dropsInboard } from '../model/line-work.ts';
import { inService } from '../assess/ends.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { damageSource, damageThere, damageToCutOut } from './damage-to-cut-out.ts';
import { defineRule } from './rule.ts';

export const repairLeavesDamage = defineRule({
  name: 'repair-leaves-damage',
  on: 'repair',
  severity: 'error',
  summary: 'A planned repair leaves damage in a piece that stays in use.',
  why: 'the line is cut and spliced, and the place for which it was done is still loaded',
  source: 'common practice',
  bad: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  melt at 24.4 m from inboard
}

repair home on main {
  cut     at 25 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  damage  melt at 24.4 m from inboard
}

repair home on main {
  cut     at 23.6 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  // The line is damaged until the repair is done.
  goodShows: ['damage-left-in-service'],
  check({ block, name, before, after }, judge) {
    const drops = block.statements.some(dropsInboard);
    const isNearDrum = ({ from }: AssessedDamage, piece: AssessedPiece): boolean => {
      const whole = before.pieces.get(piece.name)?.length;
      return !drops && from !== undefined && whole !== undefined && !isUnknown(whole) && isBelow(from.high, whole.amount.low / 2);
    };
    for (const piece of inService(after)) {
      const left = [...damageToCutOut(piece), ...piece.damages.filter((d) => d.remedy === 'retire')];
      for (const damage of piece.damages) {
        if (damage.notMeasured !== undefined && damage.remedy === 'cut-out') {
          judge.holds(false, () => ({
            place: block.namePlace,
            severity: 'warning',
            message: `\`${name}\` leaves ${damageName(damage, piece)}, of which ${damage.notMeasured} is not written: it counts as damage to cut out`,
            help: 'look at the place again and write what is there, or cut it out too',
            related: [{ place: damage.fact.place, message: 'the damage' }],
          }));
        }
        if (damage.notMeasured !== undefined) continue;
        judge.holds(!left.includes(damage), () => ({
          place: block.namePlace,
          message: `\`${name}\` leaves ${damageThere(damage, piece)}`,
          help: damage.remedy === 'retire' ? 'retire the line instead' : 'cut on the other side of it too, or farther on' + (isNearDrum(damage, piece) ? '; `drop inboard` behind the cut drops the end at the drum instead of the outer one' : ''),
          source: damageSource(damage, piece),
          related: [{ place: damage.fact.place, message: 'the damage' }],
        }));
      }
      // Of heat that has no place the line itself says that it stays.
      for (const { fact, from, to, strength } of piece.heats) {
        if (from === undefined || to === undefined) continue;
        judge.holds(!isUnknown(strength), () => ({
          place: block.namePlace,
          message: `\`${name}\` leaves line in \`${piece.name}\` that got hotter than its fibre bears`,
          help: 'cut that place out too, or retire the line',
          source: printSource(sources['hmpe-handbook']),
          related: [{ place: fact.place, message: 'where it was heated' }],
        }));
      }
    }
  },
});
