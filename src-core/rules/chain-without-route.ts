import { soundChain } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const chainWithoutRoute = defineRule({
  name: 'chain-without-route',
  on: 'chain',
  severity: 'warning',
  summary: 'A chain says nothing about what hangs on what.',
  why: 'there is nothing in it to judge',
  source: 'the grammar of the language',
  bad: `chain reach {
}
`,
  good: soundChain,
  check(chain, judge) {
    if (chain.block.statements.some((s) => s.broken.size > 0) || chain.block.brokenHeads.size > 0) return;
    judge.holds(chain.links.length > 0, () => ({ place: chain.block.namePlace, message: `\`${chain.name}\` has no route`, help: 'write its links joined by arrows, such as `main outboard -> bow-22 -> larch`' }));
  },
});
