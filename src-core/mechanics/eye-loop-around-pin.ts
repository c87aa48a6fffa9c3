import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { lineSymbols } from './line-symbols.ts';

/** Half the angle between the two sides of an eye at its throat. */
export const halfThroatAngle_rad = (eye_m: number, pin_m: number, diameter_m: number): number => Math.asin((pin_m + diameter_m) / 2 / (eye_m - pin_m / 2));

export const eyeLoopAroundPin = defineCalculation({
  name: 'eye-loop-around-pin',
  means: 'length of line around a pin',
  symbol: 'E',
  kind: 'length',
  formula: 'E = 2 q cos φ + (π + 2 φ) r, r = (D + d) / 2, q = l − D / 2, sin φ = r / q',
  symbols: {
    l: { meaning: 'length of the eye, throat to the far side of the pin', kind: 'length', above: 0, max: 100 },
    D: { meaning: 'pin diameter', kind: 'diameter', above: 0, max: 10 },
    d: lineSymbols.d,
  },
  sources: [sources['eye-geometry']],
  assumptions: ['the sides run straight from the throat to the pin, and the line is measured along its middle'],
  refuse: ({ l, D, d }) => (l <= D + d / 2 ? 'the eye is too short to go around the pin' : undefined),
  compute: ({ l, D, d }) => {
    const half = halfThroatAngle_rad(l, D, d);
    return 2 * (l - D / 2) * Math.cos(half) + ((Math.PI + 2 * half) * (D + d)) / 2;
  },
  worked: [],
  noExample: 'no published length of line around a pin was found',
});
