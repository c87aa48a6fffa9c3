import { wordOf } from '../model/bound.ts';
import { slingKnotted } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import { trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const words: Readonly<Record<string, string>> = {
  cut: 'cut webbing',
  melted: 'melted or charred fibre',
  stitching: 'broken stitching',
  chemical: 'a chemical burn',
  knotted: 'a knot in it',
  worn: 'a worn face',
};

export const strapDamaged = defineRule({
  name: 'strap-damaged',
  on: 'gear',
  severity: 'error',
  summary: 'A strap has damage for which it is taken out of service.',
  why: 'webbing with a cut, a burn or a broken seam tears on from there, far below its limit',
  source: printSource(sources['wac-296-155-55820']),
  bad: `strap trunk {
  length  3 m
  wll     4 t
  damage  stitching
}
`,
  good: trunk,
  check(gear, judge) {
    if (gear.head !== 'strap') return;
    for (const statement of gear.damages) {
      const kind = wordOf(statement.values, 'damage');
      if (kind === undefined) continue;
      judge.holds(false, () => ({
        place: statement.place,
        message: `\`${gear.name}\` has ${words[kind] ?? kind} and is out of service`,
        help: kind === 'knotted' ? 'take the knot out and inspect the webbing there; if it is unharmed, remove the line' : 'take it out of the bag and out of this file',
        source: printSource(kind === 'knotted' ? slingKnotted : sources['wac-296-155-55820']),
      }));
    }
  },
});
