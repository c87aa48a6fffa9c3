import { statementOf } from '../assess/facts.ts';
import { showValue, unitOf } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { defineRule } from './rule.ts';

export const drumImpossible = defineRule({
  name: 'drum-impossible',
  on: 'winch',
  severity: 'error',
  summary: 'The sizes of a drum contradict each other.',
  why: 'a flange stands above the barrel, and a wrap has room between the flanges; otherwise a size is wrong and nothing can be worked out from it',
  source: 'geometry of the drum',
  bad: `winch bow-winch {
  rated   42 kN at layer 1
  barrel  165 mm
  width   230 mm
  flange  64 mm
}
`,
  good: `winch bow-winch {
  rated   42 kN at layer 1
  barrel  64 mm
  width   230 mm
  flange  165 mm
}
`,
  check(winch, judge) {
    const { barrel, flange, width, diameter, block, name } = winch;
    if (!isUnknown(barrel) && !isUnknown(flange)) {
      const place = statementOf(block, 'flange')?.place ?? block.namePlace;
      judge.holds(!winch.impossible.includes('flange-below-barrel'), () => ({
        place,
        message: `flange of \`${name}\` is ${showValue(flange)}, not above its barrel of ${showValue(barrel, { unit: unitOf(flange) })}`,
        help: 'measure both again; `flange` and `barrel` are diameters',
        related: [{ place: statementOf(block, 'barrel')?.place ?? block.namePlace, message: 'the barrel' }],
      }));
    }
    if (!isUnknown(width) && !isUnknown(diameter)) {
      const place = statementOf(block, 'width')?.place ?? block.namePlace;
      judge.holds(!winch.impossible.includes('narrower-than-line'), () => ({
        place,
        message: `width of \`${name}\` is ${showValue(width)}, below the ${showValue(diameter, { unit: unitOf(width) })} of the line it carries`,
        help: 'measure the drum between its flanges again, or correct `diameter` of the line',
      }));
    }
  },
});
