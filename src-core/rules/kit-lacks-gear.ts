import { kitExample } from './example-kit.ts';
import { judgeKit } from './kit-text.ts';
import { defineRule } from './rule.ts';

export const kitLacksGear = defineRule({
  name: 'kit-lacks-gear',
  on: 'kit',
  severity: 'warning',
  summary: 'A chain or a pull takes gear that is not in the bag.',
  why: 'what is missing on the track is replaced by what lies about',
  source: 'our own careful choice, because a plan is no better than the bag that is carried to it',
  bad: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves']),
  good: kitExample(['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm']),
  check(kit, judge) {
    judgeKit(kit, judge, 'gear', 'put it into the bag, and write `carries` with its name or `holds` with its size; where the bag stands in another file, in a `kit` of this one');
  },
});
