import { linkName, type Run } from '../assess/pull-run.ts';
import { statementOf } from '../assess/facts.ts';
import { pullExample, pullWith } from './example-pull.ts';
import { defineRule } from './rule.ts';

const forkOf = (run: Run | undefined): string => run?.links.find((link) => link.sort === 'gear' && linkName(link) !== undefined)?.name ?? 'bow-22';

export const bridleNotInChain = defineRule({
  name: 'bridle-not-in-chain',
  on: 'pull',
  severity: 'warning',
  summary: 'A pull gives the angle of a bridle, and its chain has no second leg.',
  why: 'all of the pull is counted on the one run of gear, and the second leg and what holds it are not judged at all',
  source: 'our own careful choice, because a leg that was forgotten is a leg that nobody looked at',
  bad: pullExample({ pull: pullWith({ bridle: 'bridle    60 deg' }) }),
  good: pullExample(),
  check({ block, name, run, rigging }, judge) {
    const statement = statementOf(block, 'bridle');
    if (statement === undefined || statement.broken.size > 0) return;
    judge.holds([run, ...rigging.blocks.map((b) => b.run)].some((r) => r !== undefined && r.legs.length > 0), () => ({
      place: statement.place,
      message: `\`${name}\` gives the angle of a bridle, and what it pulls through has one leg`,
      help: `write the second leg as a route of the chain that begins where the legs part, at one shackle or ring by its name, such as \`${forkOf(run)} -> ...\`; or leave \`bridle\` out`,
    }));
  },
});
