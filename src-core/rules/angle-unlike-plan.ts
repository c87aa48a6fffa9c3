import { show, unitOf } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { nameOf, quantityOf } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { writtenValue } from '../assess/facts.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

/** An angle by eye agrees so well with one by places that were paced (rad). */
const agree_rad = (10 * Math.PI) / 180;

const snatch = `block snatch {
  sheave      110 mm
  takes       12 mm
  wll         20 t
  efficiency  95 %
}

anchor rock {
  kind     rock
  holding  200 kN "tested 2026-05-02"
}
`;
const pull = (angle: string): string =>
  pullWith({ resistance: 'resistance  12 kN "load cell"', via: `via       snatch fixed on rock angle ${angle}`, stands: 'stands    rock ahead 12 m\n  stands    larch ahead 12 m left 12 m', reach: 'reach     12 m', people: 'people    50 m' });

export const angleUnlikePlan = defineRule({
  name: 'angle-unlike-plan',
  on: 'pull',
  severity: 'error',
  summary: 'The angle that a pull gives at a block is not the one between the places that it gives.',
  why: 'the load on a block, and on what holds it, follows from the angle, and only one of the two is so',
  source: 'geometry; our own careful choice of 10°, because angles on a track are taken by eye',
  bad: pullExample({ more: snatch, pull: pull('30 deg') }),
  good: pullExample({ more: snatch, pull: pull('90 deg') }),
  check({ rigging, block }, judge) {
    rigging.blocks.forEach((b, i) => {
      const written = quantityOf(b.statement.values, 'angle');
      const planned = rigging.plannedAngles[i];
      // By the place of what holds it the block may be a strap's length off.
      const isPlaced = block.statements.some((s) => s.definition.head === 'stands' && nameOf(s.values, 'what')?.name === b.name);
      if (written === undefined || planned === undefined || isUnknown(b.angle) || (b.run !== undefined && !isPlaced)) return;
      const value = writtenValue(written);
      judge.holds(Math.abs(written.value - planned) <= agree_rad + 1e-9, () => ({
        place: written.place,
        message: `the angle at \`${b.name}\` is ${show(value)}, and by the places that are given it is ${show({ ...value, amount: exactly(planned) }, { unit: unitOf(value) })}`,
        help: 'look again, and correct `angle` or `stands`; the places count until then',
        related: block.statements.filter((s) => s.definition.head === 'stands').map((s) => ({ place: s.place, message: 'where it stands' })),
      }));
    });
  },
});
