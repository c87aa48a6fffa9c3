import { sources } from '../trade/sources.ts';
import { wacShackleBands } from '../trade/pull-sources.ts';
import { isAbove } from '../base/compare.ts';
import { defineCalculation } from './define-calculation.ts';

const degree = Math.PI / 180;
const catalogue = sources['shackle-side-load'];

export const shackleSideLoadShare = defineCalculation({
  name: 'shackle-side-load-share',
  means: 'share of the working limit left under side load',
  symbol: 's',
  kind: 'share',
  formula: 's = table at α',
  symbols: {
    α: { meaning: 'angle of the pull from in line, across the bow', kind: 'angle', min: 0, max: 90 * degree },
  },
  sources: [wacShackleBands, catalogue],
  assumptions: ['the table: 100 % up to 5°, 70 % up to 45°, 50 % up to 90°', 'between the published angles the share steps down at once: no source interpolates', 'over 90° side loading is not permitted unless the maker allows it'],
  compute: ({ α }) => (isAbove(α, 45 * degree) ? 0.5 : isAbove(α, 5 * degree) ? 0.7 : 1),
  worked: [
    { inputs: { α: '0 deg' }, expected: '100 %', tolerance: 1e-9, source: catalogue },
    { inputs: { α: '45 deg' }, expected: '70 %', tolerance: 1e-9, source: catalogue },
    { inputs: { α: '90 deg' }, expected: '50 %', tolerance: 1e-9, source: catalogue },
  ],
});
