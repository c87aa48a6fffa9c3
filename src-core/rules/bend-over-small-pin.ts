import { bearingName } from '../assess/chain-joints.ts';
import { showLike, showValue } from '../assess/show.ts';
import { bendRatio } from '../mechanics/bend-ratio.ts';
import { asGiven, type Given, type Value } from '../mechanics/derivation.ts';
import { bendOverPin, bendOverPinHmpe } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { printNumber } from '../units/print.ts';
import { bow19, bow22, frontWinch, larch, mainLine, reachByTail, tailLine, trunk } from './example-blocks.ts';
import { bars, linesOnShackles, thinnest } from './shackle-joints.ts';
import { defineRule } from './rule.ts';

export const bendOverSmallPin = defineRule({
  name: 'bend-over-small-pin',
  on: 'chain',
  severity: 'warning',
  summary: 'A bare eye is bent over a shackle, a ring or a hook that is thin for the line.',
  why: 'the outer fibres of a sharp bend carry more than their share, so the eye breaks below the strength of its splice',
  source: `${printSource(bendOverPinHmpe)}; ${printSource(bendOverPin)}`,
  bad: `${frontWinch}
${mainLine}
shackle bow-22 {
  form  bow
  body  19 mm
  pin   22 mm
  wll   6.5 t
}

${trunk}
${larch}
${reachByTail}
shackle bow-19 {
  form  bow
  body  19 mm
  pin   22 mm
  wll   6.5 t
}

line tail {
  material  HMPE
  strands   12
  diameter  11 mm
  length    12 m
  breaking  92 kN
  inboard   eye bury 72 d taper 24 d stitched
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTail}
${bow19}
${tailLine}`,
  check(chain, judge) {
    for (const { line, shackle, place } of linesOnShackles(chain, bars)) {
      const { piece, end } = line;
      if (piece === undefined || end === undefined || piece.line.material === 'wire' || end.facts.form !== 'eye' || (end.facts.thimble !== undefined && end.facts.thimble !== 'sleeve')) continue;
      const D = thinnest(shackle);
      const d = piece.line.diameter;
      const [least, source] = piece.line.material === 'HMPE' ? [2, bendOverPinHmpe] : [3, bendOverPin];
      const limit: Value = { amount: exactly(least), kind: 'needed count', origin: { from: 'constant', source } };
      judge.atLeast(asGiven(bendRatio({ D, d })), limit, place, (ratio) => ({
        place,
        message: `${bearingName(line)} of ${showValue(d)} bends over ${showValue(D)} at \`${shackle.name}\`: ${printNumber(ratio.amount.low, 'down', 1)} times its diameter, below ${least} times`,
        help: `put a thimble in the eye, or use a ${shackle.gear} of ${showLike(exactly((d as Given).amount.high * least), d as Given, 'up')} or more`,
        source: printSource(source),
      }));
    }
  },
});
