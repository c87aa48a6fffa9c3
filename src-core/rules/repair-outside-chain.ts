import { bow22, frontWinch, larch, mainLine, tailLine, trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const repairOutsideChain = defineRule({
  name: 'repair-outside-chain',
  on: 'chain',
  severity: 'hint',
  summary: 'A chain comes after a repair of a line that it does not use.',
  why: 'the repair changes nothing here, so the name or the chain is not the one that was meant',
  source: 'the grammar of the language',
  bad: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach after field-fix {
  main outboard -> bow-22 -> trunk -> larch
}

${tailLine}
repair field-fix on tail {
  cut     at 10 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d
}
`,
  good: `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
chain reach after field-fix {
  main outboard -> bow-22 -> trunk -> larch
}

repair field-fix on main {
  cut     at 20 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d
}
`,
  check(chain, judge, assessing) {
    const { repair } = chain;
    const line = repair === undefined ? undefined : assessing.lineOfRepair(repair);
    if (repair === undefined || line === undefined || chain.links.some((link) => link.sort === 'line' && link.piece === undefined)) return;
    judge.holds(chain.links.some((link) => link.piece?.line.block === line), () => ({
      place: chain.block.header.get('repair')!.place,
      message: `\`${repair.name ?? 'the repair'}\` is a repair of \`${line.name ?? 'a line'}\`, which \`${chain.name}\` does not use`,
      help: 'name another repair, or remove `after`',
    }));
  },
});
