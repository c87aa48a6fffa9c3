import { nameOf, newNameOf } from '../model/bound.ts';
import type { Assessing } from '../assess/assessing.ts';
import { usedNames } from './name-values.ts';
import { defineRule } from './rule.ts';

/** Whether anything speaks of a kept piece: a chain, a winch, a kit, a pull, or a later step of a logbook or a repair. */
function isUsed(name: string, { reader }: Assessing): boolean {
  for (const head of ['chain', 'winch', 'kit', 'pull'] as const) {
    if (reader.blocks(head).some((block) => usedNames(block).some((used) => used.name === name))) return true;
  }
  for (const head of ['line', 'repair'] as const) {
    for (const block of reader.blocks(head)) {
      if (block.statements.some((s) => nameOf(s.values, 'piece')?.name === name || nameOf(s.values, 'other')?.name === name)) return true;
    }
  }
  return false;
}

export const unusedPiece = defineRule({
  name: 'unused-piece',
  on: 'block',
  heads: ['line', 'repair'],
  severity: 'hint',
  summary: 'A piece is kept under a name, and nothing says what becomes of it.',
  why: 'a kept piece without ends is a length of rope that somebody will take for a line',
  source: 'our own careful choice, because a piece with no history is the one that breaks',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut     at 20 m from inboard keep tail
  2026-06-21  splice  outboard eye thimble tube bury 72 d taper 24 d
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-21  cut      at 20 m from inboard keep tail
  2026-06-21  splice   outboard eye thimble tube bury 72 d taper 24 d
  2026-06-22  retired  tail "too short for an extension"
}
`,
  check(block, judge, assessing) {
    for (const statement of block.statements) {
      const kept = newNameOf(statement.values, 'keep');
      if (kept === undefined) continue;
      judge.holds(isUsed(kept.name, assessing), () => ({
        place: kept.place,
        message: `nothing says what becomes of \`${kept.name}\``,
        help: `splice its ends, use it in a chain, write that it is retired, or cut without \`keep ${kept.name}\``,
      }));
    }
  },
});
