import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';

const growth = (σ: number): number => (1 + σ) / (1 - σ);

export const helixShorteningEstimate = defineCalculation({
  name: 'helix-shortening-estimate',
  means: 'share by which the standing part shortens, from geometry',
  symbol: 'c',
  kind: 'needed share',
  formula: 'c = 1 − cos α₂ / cos α₁, sin α₂ = r sin α₁, r = (1 + σ) / (1 − σ)',
  symbols: {
    'α₁': { meaning: 'angle of the strands to the line before the tail is buried', kind: 'angle', above: 0, max: Math.PI / 4 },
    σ: { meaning: 'strand thickness over line diameter', kind: 'share', above: 0, max: 0.5 },
  },
  sources: [sources['helix-geometry']],
  assumptions: ['strands do not stretch and lie on a helix', 'the middle of the strands lies one strand inside the line\'s surface before, and around a tail of full diameter after'],
  refuse: ({ 'α₁': α, σ }) => (growth(σ) * Math.sin(α) >= 1 ? 'the strands cannot open this far' : undefined),
  compute: ({ 'α₁': α, σ }) => 1 - Math.cos(Math.asin(growth(σ) * Math.sin(α))) / Math.cos(α),
  worked: [],
  noExample: 'no published estimate of this kind was found; the measured figures are 15 %, 18 % (practice) and 25 %',
});
