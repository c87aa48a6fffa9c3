import { splicingTools } from '../trade/plan-sources.ts';
import { printSource } from '../trade/source.ts';
import { kitExample } from './example-kit.ts';
import { judgeKit } from './kit-text.ts';
import { defineRule } from './rule.ts';

export const kitLacksTool = defineRule({
  name: 'kit-lacks-tool',
  on: 'kit',
  severity: 'warning',
  summary: 'A repair is planned, and a tool that it takes is not in the bag.',
  why: 'a splice that cannot be finished leaves less line than the damage did',
  source: printSource(splicingTools),
  bad: kitExample(['tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm']),
  good: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm']),
  check(kit, judge) {
    judgeKit(kit, judge, 'tool', 'put it into the bag and write `holds`');
  },
});
