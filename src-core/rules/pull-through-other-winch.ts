import { pullExample } from './example-pull.ts';
import { defineRule } from './rule.ts';

export const pullThroughOtherWinch = defineRule({
  name: 'pull-through-other-winch',
  on: 'pull',
  severity: 'error',
  summary: 'A pull names one winch, and its chain hangs on the line of another.',
  why: 'the chain would be judged for a pull that never comes, and loaded by one that nobody judged',
  source: 'our own careful choice, because a plan that names two winches is not the plan of anybody',
  bad: pullExample({
    header: 'pull off-the-ford with stern-winch through to-the-larch',
    more: `winch stern-winch on plover {
  rated  20 kN
}
`,
  }),
  good: pullExample(),
  check(pull, judge) {
    const { winch, chain } = pull;
    if (winch === undefined || chain?.winch === undefined) return;
    judge.holds(chain.winch.name === winch.name, () => ({
      place: pull.block.headPlace,
      message: `\`${pull.name}\` pulls with \`${winch.name}\`, and \`${chain.name}\` hangs on the line of \`${chain.winch!.name}\``,
      help: `pull with \`${chain.winch!.name}\`, or write a chain for \`${winch.name}\``,
    }));
  },
});
