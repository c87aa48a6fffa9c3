import type { AssessedWinch } from '../assess/assess-winch.ts';
import { show, unitOf } from '../assess/show.ts';
import { isBelow } from '../base/compare.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { drumCapacityWithFill } from '../mechanics/drum-capacity-with-fill.ts';
import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { winchWithDrum } from './example-blocks.ts';
import { defineRule } from './rule.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { winchesInUse } from './winches-in-use.ts';

/** Line from the barrel up to the freeboard. */
function depthOf({ barrel, flange }: AssessedWinch, freeboard: Value): Value {
  for (const value of [barrel, flange, freeboard]) if (isUnknown(value)) return value;
  const [B, A, f] = [barrel, flange, freeboard] as [Given, Given, Given];
  const h = (A.amount.low - B.amount.high) / 2 - f.amount.high;
  return asGiven({ calculation: 'line-depth-on-drum', means: 'depth of line on the drum', symbol: 'h', kind: 'length', amount: exactly(Math.max(h, 1e-6)), formula: 'h = (A − B) / 2 − f', inputs: [{ symbol: 'A', meaning: 'diameter of the flange', given: A }, { symbol: 'B', meaning: 'diameter of the barrel', given: B }, { symbol: 'f', meaning: 'flange that stays free', given: f }], sources: [sources.geometry], assumptions: [], notes: [] });
}

export const drumNearlyFull = defineRule({
  name: 'drum-nearly-full',
  on: 'block',
  heads: ['winch', 'repair'],
  severity: 'information',
  summary: 'The line fits the drum wrap beside wrap, and fills more of it than line really does.',
  why: 'line wound on in the field lies looser than wrap beside wrap: the last layers then stand higher, pull less, and may come to the edge of the flange',
  source: 'SAE J706 (2017), fill factor, unless a practice block says otherwise',
  bad: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    29 m
}
`,
  good: `${winchWithDrum}
line main {
  material  HMPE
  diameter  10 mm
  length    25 m
}
`,
  check(block, judge, assessing) {
    const { practice } = assessing;
    const fill = practice.value('fill-factor');
    for (const { winch, piece, place, after } of winchesInUse(block, assessing)) {
      const { width: W, barrel: B, diameter: d, length } = winch;
      const freeboard = asGiven(lengthInDiameters({ k: practice.value('freeboard'), d }), 'needed length');
      const left = asGiven(winch.freeboard);
      // What is too full wrap beside wrap has a finding of its own, and what is missing is asked for there.
      if (isUnknown(fill) || isUnknown(left) || isUnknown(freeboard) || isBelow(left.amount.low, freeboard.amount.high)) continue;
      const most = asGiven(drumCapacityWithFill({ φ: { ...fill, amount: exactly(fill.amount.high) }, W, h: depthOf(winch, freeboard), B, d }));
      if (isUnknown(most) || isUnknown(length)) continue;
      judge.atMost(length, most, place, (has, limit) => ({
        place,
        message: `\`${piece.name}\`${after} is ${show(has)} long; wound on as line is in the field, \`${winch.name}\` takes ${show(limit, { unit: unitOf(has), careful: 'down' })} or less`,
        help: 'wind it on under load and measure how much of the flange stands above it; where that is too little, fit a shorter line or keep the rest as an extension',
        source: sourceOfLimit(fill),
      }));
    }
  },
});
