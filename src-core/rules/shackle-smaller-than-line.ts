import { show, unitOf } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown, type Unknown } from '../mechanics/derivation.ts';
import { oneSizeLarger } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
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
  bad: `winch bow-winch {
  rated    20 kN
  carries  main
}

line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

shackle bow-22 {
  form  bow
  body  10 mm
  pin   11 mm
  wll   2.5 t
}

strap trunk {
  length  3 m
  wll     4 t
}

anchor larch {
  kind     tree
  girth    1.3 m
  holding  40 kN "tested 2026-05-02"
}

chain reach {
  main outboard -> bow-22 -> trunk -> larch
}
`,
  good: `winch bow-winch {
  rated    20 kN
  carries  main
}

line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  wll     4 t
}

anchor larch {
  kind     tree
  girth    1.3 m
  holding  40 kN "tested 2026-05-02"
}

chain reach {
  main outboard -> bow-22 -> trunk -> larch
}
`,
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
