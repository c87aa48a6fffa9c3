import { kitExample } from './example-kit.ts';
import { judgeKit } from './kit-text.ts';
import { defineRule } from './rule.ts';

export const kitLacksThimble = defineRule({
  name: 'kit-lacks-thimble',
  on: 'kit',
  severity: 'warning',
  summary: 'A repair makes an eye with a thimble, and no spare one is in the bag.',
  why: 'the thimble of the old eye is lost, bent, or still needed where it is',
  source: 'common practice: an eye that bears on steel has a thimble or a sleeve',
  bad: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'gloves', 'shackle for 19 mm']),
  good: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm']),
  check(kit, judge) {
    judgeKit(kit, judge, 'thimble', 'put one into the bag, or write the eye without a thimble and see what the bend costs');
  },
});
