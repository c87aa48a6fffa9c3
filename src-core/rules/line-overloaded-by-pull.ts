import { mainLine } from './example-blocks.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { judgeLoads, overLimit } from './pull-text.ts';
import { defineRule } from './rule.ts';

export const lineOverloadedByPull = defineRule({
  name: 'line-overloaded-by-pull',
  on: 'pull',
  severity: 'error',
  summary: 'A pull loads a line above its working limit.',
  why: 'between working limit and breaking lies all that is not counted: shock, wear, bends',
  source: 'the line\'s working limit, or its strength over the line factor (UFC 4-159-03 table 3-7, or a `practice` block)',
  bad: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }), line: mainLine }),
  good: pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }),
  check(pull, judge) {
    judgeLoads(pull, judge, (loaded) => loaded.sort === 'line', (loaded, load, limit) => overLimit(pull, loaded, load, limit, 'pull', 'working limit', 'use a stronger line, or double it so that each part carries less'));
  },
});
