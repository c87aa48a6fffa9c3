import { show } from '../assess/show.ts';
import { atStall } from '../assess/pull-stall.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { winchUnit } from './pull-text.ts';
import { defineRule } from './rule.ts';

const chain = `chain to-the-larch {
  main outboard -> bow-22 -> dipper stern
}
`;
const dipper = (mass: string): string => `vehicle dipper {
  mass   ${mass}
  point  stern rated 6 t
}
`;

export const anchorVehicleSlides = defineRule({
  name: 'anchor-vehicle-slides',
  on: 'pull',
  severity: 'warning',
  summary: 'A vehicle that stands as an anchor holds the pull, and not all that the winch can pull.',
  why: 'where the load sticks the winch pulls on until it stalls, and before that the anchor comes sliding towards the pull',
  source: 'towing training text: a braked vehicle holds 0.666 of its weight; mechanics: forces in balance at every point',
  bad: pullExample({ chain, pull: pullWith({ grade: 'grade     level' }), anchor: '', more: dipper('2,400 kg') }),
  good: pullExample({ chain, pull: pullWith({ grade: 'grade     level' }), anchor: '', more: dipper('7,200 kg') }),
  check(pull, judge) {
    const said = new Set<string>();
    for (const { loaded, load } of atStall(pull)) {
      const { sort, vehicle, anchor, limit, place, name } = loaded;
      if (sort !== 'anchor' || vehicle === undefined || anchor?.holdingFrom === 'written' || isUnknown(limit) || isUnknown(loaded.load) || said.has(vehicle.name)) continue;
      said.add(vehicle.name);
      // What it does not hold of the pull itself is another rule's word.
      if (isAbove(loaded.load.amount.high, limit.amount.low)) continue;
      const unit = winchUnit(pull);
      judge.holds(!isAbove(load.amount.high, limit.amount.low), () => ({
        place,
        message: `\`${name}\` holds ${show(limit, { unit, careful: 'down' })}; where the load of \`${pull.name}\` sticks, the winch can bring ${show({ ...load, amount: exactly(load.amount.high) }, { unit, careful: 'up' })} on it`,
        help: 'stop as soon as the load does not move; where it is held by more than its brakes, write above the pull `# allow anchor-vehicle-slides:` and by what',
      }));
    }
  },
});
