import { ownTotal, recoverySchool } from '../trade/pull-sources.ts';
import { sources } from '../trade/sources.ts';
import type { Source } from '../trade/source.ts';
import { between } from '../units/amount.ts';
import { defineCalculation } from './define-calculation.ts';
import type { Given } from './derivation.ts';
import { constantValue } from './table-value.ts';

/** A part that does not act because the writer says so: level ground, not mired, wheels that turn. */
export const noResistance = (because: Source): Given => constantValue(0, 'resistance', because);

export const totalResistance = defineCalculation({
  name: 'total-resistance',
  means: 'resistance of the load',
  symbol: 'R',
  kind: 'resistance',
  formula: 'R = R_g + max(R_s, R_m, R_d)  to  R_g + R_s + R_m + R_d',
  symbols: {
    R_s: { meaning: 'resistance of the ground', kind: 'resistance', min: 0 },
    R_g: { meaning: 'resistance of the slope', kind: 'resistance', min: 0 },
    R_m: { meaning: 'resistance of the mire', kind: 'resistance', min: 0 },
    R_d: { meaning: 'resistance of wheels that do not turn', kind: 'resistance', min: 0 },
  },
  sources: [ownTotal, sources['army-lesson-63h34f01']],
  compute: ({ R_s, R_g, R_m, R_d }) => between(R_g + Math.max(R_s, R_m, R_d), R_g + R_s + R_m + R_d),
  worked: [{ inputs: { R_s: '0 lbf', R_g: '1,425 lbf', R_m: '8,550 lbf', R_d: '0 lbf' }, expected: '9,975 lbf', tolerance: 1e-9, source: recoverySchool }],
});
