import { glovesPractice } from '../trade/plan-sources.ts';
import { printSource } from '../trade/source.ts';
import { kitExample } from './example-kit.ts';
import { judgeKit } from './kit-text.ts';
import { defineRule } from './rule.ts';

export const kitLacksGloves = defineRule({
  name: 'kit-lacks-gloves',
  on: 'kit',
  severity: 'warning',
  summary: 'Line is to be handled, and no gloves are in the bag.',
  why: 'grit and splinters in a line cut, and a line that runs burns',
  source: printSource(glovesPractice),
  bad: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'shackle for 19 mm']),
  good: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm']),
  check(kit, judge) {
    judgeKit(kit, judge, 'gloves', 'put them into the bag and write `holds  gloves`');
  },
});
