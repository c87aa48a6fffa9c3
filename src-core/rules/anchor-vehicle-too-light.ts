import { show } from '../assess/show.ts';
import { anchorVehicleNeeded } from '../mechanics/anchor-vehicle-needed.ts';
import { slopeOfPull } from '../assess/vehicle-hold.ts';
import { isBelow } from '../base/compare.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { exactly, isRange } from '../units/amount.ts';
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

export const anchorVehicleTooLight = defineRule({
  name: 'anchor-vehicle-too-light',
  on: 'pull',
  severity: 'error',
  summary: 'A vehicle that stands as an anchor is lighter than one and a half times the pull on it.',
  why: 'a braked vehicle holds about two thirds of its weight, on firm ground; above that it slides towards the pull',
  source: 'towing training text: a braked vehicle holds 0.666 of its weight; an anchor vehicle has at least 1.5 times the resistance',
  bad: pullExample({ chain, pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }), anchor: '', more: dipper('2,400 kg') }),
  good: pullExample({ chain, pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }), anchor: '', more: dipper('5,200 kg') }),
  check(pull, judge) {
    const judged = new Set<string>();
    for (const { sort, vehicle, anchor, load, place, name, doubt, limit } of pull.loaded) {
      if (sort !== 'anchor' || vehicle === undefined || anchor?.holdingFrom === 'written') continue;
      // A vehicle that the file also calls an anchor has one weight, and one load.
      if (judged.has(vehicle.name)) continue;
      judged.add(vehicle.name);
      const enough = judge.atLeast(asGiven(vehicle.weight), asGiven(anchorVehicleNeeded({ R: load }), 'weight'), place, (weight, needed) => ({
        place,
        message: `\`${name}\` weighs ${show(weight, { careful: 'down', unit: winchUnit(pull) })}, below the ${show({ ...needed, amount: exactly(needed.amount.high) }, { careful: 'up', unit: winchUnit(pull) })} that an anchor vehicle ${isRange(needed.amount) ? 'may need' : 'needs'} for this pull`,
        help: 'use a heavier vehicle or another anchor; chocks, and what else it is chained to, are not counted',
      }), doubt ?? pull.incomplete);
      if (enough === false || slopeOfPull(pull.block) === undefined || isUnknown(load) || isUnknown(limit) || !isBelow(limit.amount.low, load.amount.high)) continue;
      // It holds on level ground, and on the slope it would slide.
      const says = `\`${name}\` holds ${show(limit, { unit: winchUnit(pull) })} in \`${pull.name}\``;
      if (isRange(limit.amount)) judge.cannot({ key: `footing of ${vehicle.name} in ${pull.name}`, says: `whether \`${name}\` stands on level ground or on the slope is not given, and it holds ${show(limit, { unit: winchUnit(pull) })}`, help: `add \`footing  ${vehicle.name} level\` to the pull where it stands so, or \`on-slope\``, place }, place);
      else judge.holds(false, () => ({ place, message: `${says}, standing on the slope, below the ${show(load, { careful: 'up', unit: winchUnit(pull) })} on it`, help: 'park it on level ground, or use a heavier vehicle or another anchor' }));
    }
  },
});
