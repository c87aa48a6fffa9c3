import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { halfThroatAngle_rad } from './eye-loop-around-pin.ts';
import { lineSymbols } from './line-symbols.ts';

export const throatAngle = defineCalculation({
  name: 'throat-angle',
  means: 'angle between the sides of the eye at its throat',
  symbol: '2φ',
  kind: 'angle',
  formula: 'sin φ = ((D + d) / 2) / (l − D / 2)',
  symbols: {
    l: { meaning: 'length of the eye, throat to the far side of the pin', kind: 'length', above: 0, max: 100 },
    D: { meaning: 'pin diameter', kind: 'diameter', above: 0, max: 10 },
    d: lineSymbols.d,
  },
  sources: [sources['eye-geometry']],
  assumptions: ['the sides run straight from the throat to the pin, and the line is measured along its middle'],
  refuse: ({ l, D, d }) => (l <= D + d / 2 ? 'the eye is too short to go around the pin' : undefined),
  compute: ({ l, D, d }) => 2 * halfThroatAngle_rad(l, D, d),
  worked: [],
  noExample: 'no published throat angle for a stated eye and pin was found',
});
