import { factOf } from '../assess/facts.ts';
import { showLike, showValue } from '../assess/show.ts';
import { bendRatio } from '../mechanics/bend-ratio.ts';
import { asGiven, type Given, type Value } from '../mechanics/derivation.ts';
import { leastPublishedRatio } from '../assess/wire-over-sheave.ts';
import { wireRopeSheaveLossTable } from '../trade/wire-rope-sheave-loss-table.ts';
import { bendOverPin } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { exactly } from '../units/amount.ts';
import { printNumber } from '../units/print.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk, trunk } from './example-blocks.ts';
import { linesOverBlocks } from './lines-over-blocks.ts';
import { defineRule } from './rule.ts';

/** The lower end of what rope makers ask for a rope that runs over a sheave. */
const leastWireRatio: Value = { amount: exactly(leastPublishedRatio), kind: 'needed count', origin: { from: 'constant', source: wireRopeSheaveLossTable.source } };
const leastRatio: Value = { amount: exactly(5), kind: 'needed count', origin: { from: 'constant', source: bendOverPin } };

/** Times the line's own diameter that what it runs over has at least. */
export const leastRatioOverSheave = (isWire: boolean): Value => (isWire ? leastWireRatio : leastRatio);

export const sheaveTooSmall = defineRule({
  name: 'sheave-too-small',
  on: 'block',
  heads: ['chain', 'pull'],
  severity: 'warning',
  summary: 'A fibre line runs over a sheave that is small for it.',
  why: 'fibre that runs over a sharp bend under load heats, wears and loses strength with every pull',
  source: printSource(bendOverPin),
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}
block snatch {
  sheave  45 mm
  takes   12 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}
block snatch {
  sheave  100 mm
  takes   12 mm
  wll     8 t
}

pull out with bow-winch {
  load     12 kN
  surface  gravel
  reach    18 m
  via      snatch fixed on larch angle 90 deg
}
`,
  check(block, judge, assessing) {
    for (const { gear, piece, place } of linesOverBlocks(block, assessing)) {
      const isWire = piece.line.material === 'wire';
      const [D, d] = [factOf(gear.block, 'sheave'), piece.line.diameter];
      judge.atLeast(asGiven(bendRatio({ D, d })), leastRatioOverSheave(isWire), place, (ratio) => ({
        place,
        message: `sheave of \`${gear.name}\` is ${showValue(D)}, ${printNumber(ratio.amount.low, 'down', 1)} times the ${showValue(d)} of \`${piece.name}\`, below ${isWire ? `the ${leastPublishedRatio} times from which what a bend leaves of wire is published` : '5 times'}`,
        help: `use a block with a sheave of ${showLike(exactly((d as Given).amount.high * (isWire ? leastPublishedRatio : 5)), d as Given, 'up')} or more; some lines ask for up to 20 times`,
        ...(isWire ? { source: printSource(wireRopeSheaveLossTable.source) } : {}),
      }));
    }
  },
});
