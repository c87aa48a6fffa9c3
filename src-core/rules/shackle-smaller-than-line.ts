import { show, unitOf } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown, type Unknown } from '../mechanics/derivation.ts';
import { oneSizeLarger } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { frontWinch, larch, mainLine, reachByTrunk, soundChain, trunk } from './example-blocks.ts';
import { relatedPlaces } from './judge.ts';
import { bodyOf, linesOnShackles } from './shackle-joints.ts';
import { defineRule } from './rule.ts';

export const shackleSmallerThanLine = defineRule({
  name: 'shackle-smaller-than-line',
  on: 'chain',
  severity: 'warning',
  summary: 'A shackle is not larger than the line it joins.',
  why: 'a thin shackle bends the line sharply, and is the weaker of the two',
  source: printSource(oneSizeLarger),
  bad: `${frontWinch}
${mainLine}
shackle bow-22 {
  form  bow
  body  10 mm
  pin   11 mm
  wll   2.5 t
}

${trunk}
${larch}
${reachByTrunk}`,
  good: soundChain,
  check(chain, judge) {
    for (const { line, shackle, place } of linesOnShackles(chain)) {
      const [body, diameter] = [bodyOf(shackle), line.piece?.line.diameter];
      if (diameter === undefined) continue;
      if (isUnknown(body) || isUnknown(diameter)) {
        judge.cannot(isUnknown(body) ? body.unknown : (diameter as Unknown).unknown, place);
        continue;
      }
      judge.holds(isAbove(body.amount.low, diameter.amount.high), () => ({
        place,
        message: `body of \`${shackle.name}\` is ${show(body, { unit: unitOf(diameter) })}, not above the ${show(diameter)} of \`${line.piece!.name}\``,
        help: 'use a shackle at least one size larger than the line',
        related: relatedPlaces(body, diameter, place),
      }));
    }
  },
});
