import { wordOf } from '../model/bound.ts';
import { hardwareRemoved, hookRemoved } from '../trade/gear-sources.ts';
import { printSource } from '../trade/source.ts';
import { bow22 } from './example-blocks.ts';
import { defineRule } from './rule.ts';

const steel: Readonly<Record<string, string>> = {
  bent: 'is bent, twisted or stretched',
  cracked: 'is cracked or broken',
  worn: 'is worn or gouged by a tenth or more',
  corroded: 'has deep pits of corrosion',
  heated: 'has marks of heat',
  thread: 'has a damaged thread, or a pin that does not go home',
  sheave: 'has a sheave that wobbles, stands out of line or is grooved',
  loose: 'has a fastening that is loose or missing',
};
const fibre: Readonly<Record<string, string>> = { cut: 'has cut strands', worn: 'has worn fibre', melted: 'has melted or hard glazed fibre', chemical: 'has a stain' };

export const gearDamaged = defineRule({
  name: 'gear-damaged',
  on: 'gear',
  severity: 'error',
  summary: 'A shackle, block, ring, hook or soft shackle has damage for which it is taken out of service.',
  why: 'bent or cracked steel has been loaded past what it bears, and what it still holds nobody can see',
  source: printSource(hardwareRemoved),
  bad: bow22.replace('}', '  damage  bent\n}'),
  good: bow22,
  check(gear, judge) {
    if (gear.head === 'strap') return;
    for (const statement of gear.damages) {
      const kind = wordOf(statement.values, 'damage');
      if (kind === undefined) continue;
      const isFibre = gear.head === 'soft-shackle';
      judge.holds(false, () => ({
        place: statement.place,
        message: `\`${gear.name}\` ${(isFibre ? fibre : steel)[kind] ?? kind} and is out of service`,
        help: kind === 'loose' || kind === 'thread' ? 'have it put right with parts of its maker and remove the line, or take it out of the bag' : 'take it out of the bag and out of this file',
        source: isFibre ? 'common practice: a soft shackle with cut, worn, melted or stained fibre is not used' : printSource(gear.head === 'hook' ? hookRemoved : hardwareRemoved),
      }));
    }
  },
});
