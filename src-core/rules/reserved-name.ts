import { newNameOf } from '../model/bound.ts';
import { trunk } from './example-blocks.ts';
import { defineRule } from './rule.ts';

/** Words that mean something themselves where a name may stand. */
const reserved: ReadonlySet<string> = new Set(['inboard', 'outboard', 'at', 'from', 'to', 'of', 'keep', 'shackle', 'soft-shackle', 'with', 'through', 'after', 'on']);

export const reservedName = defineRule({
  name: 'reserved-name',
  on: 'block',
  severity: 'warning',
  summary: 'A name is a word that means something by itself where names stand.',
  why: '`splice outboard eye` would speak of the end and never of the thing',
  source: 'the grammar of the language',
  bad: `strap outboard {
  length  3 m
  wll     4 t
}
`,
  good: trunk,
  check(block, judge) {
    const names = block.name === undefined ? [] : [{ name: block.name, place: block.namePlace }];
    for (const statement of block.statements) {
      const kept = newNameOf(statement.values, 'keep');
      if (kept !== undefined) names.push(kept);
    }
    for (const { name, place } of names) {
      judge.holds(!reserved.has(name), () => ({ place, message: `\`${name}\` is a word of the language and no clear name`, help: `give it a name of its own, such as \`my-${name}\`` }));
    }
  },
});
