import { late } from '../base/late.ts';
import { newNameOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

const scripts = late((): readonly (readonly [name: string, letters: RegExp])[] => [
  ['Latin', /\p{Script=Latin}/u],
  ['Cyrillic', /\p{Script=Cyrillic}/u],
  ['Greek', /\p{Script=Greek}/u],
]);
const isPlain = (name: string): boolean => /^[\0-\x7f]*$/.test(name);

export const nameOfMixedLetters = defineRule({
  name: 'name-of-mixed-letters',
  on: 'block',
  severity: 'warning',
  summary: 'A name has letters of two scripts that look alike.',
  why: 'two names that look the same are two things here, and a reader takes the one for the other',
  source: 'our own careful choice, because a Cyrillic letter in a Latin name cannot be seen',
  bad: `anchor l\u0430rch {
  kind     tree
  holding  40 kN "tested 2026-05-02"
}
`,
  good: `anchor larch {
  kind     tree
  holding  40 kN "tested 2026-05-02"
}
`,
  check(block, judge) {
    const names = block.name === undefined ? [] : [{ name: block.name, place: block.namePlace }];
    for (const statement of block.statements) {
      const kept = newNameOf(statement.values, 'keep');
      if (kept !== undefined) names.push(kept);
    }
    for (const { name, place } of names) {
      if (isPlain(name)) continue;
      const found = scripts().filter(([, letters]) => letters.test(name)).map(([script]) => script);
      if (found.length > 1) judge.report({ place, message: `\`${name}\` has ${found.join(' and ')} letters`, help: 'write it again on one keyboard' });
    }
  },
});
