import type { Place } from '../base/span.ts';
import type { Assessing } from '../assess/assessing.ts';
import { newNameOf, type BoundBlock } from '../model/bound.ts';
import type { Declaration } from '../model/scope.ts';
import { aKind } from './name-values.ts';
import { defineRule } from './rule.ts';

const same = (a: Place, b: Place): boolean => a.chunk === b.chunk && a.start === b.start;

/** The line whose pieces a declaration is one of. */
function lineOf(declaration: Declaration, assessing: Assessing): BoundBlock | undefined {
  const { block } = declaration;
  if (block.definition.head === 'line') return block;
  return block.definition.head === 'repair' && declaration.kind === 'piece' ? assessing.lineOfRepair(block) : undefined;
}

/** An earlier declaration of the name, pieces of one line aside: which of those are left is for the replay to say. */
function earlier(own: Declaration, assessing: Assessing): Declaration | undefined {
  for (const other of assessing.reader.declarations(own.name)) {
    if (same(other.place, own.place)) return undefined;
    if ((own.kind === 'piece' || other.kind === 'piece') && lineOf(own, assessing) !== undefined && lineOf(own, assessing) === lineOf(other, assessing)) continue;
    return other;
  }
  return undefined;
}

export const nameDeclaredTwice = defineRule({
  name: 'name-declared-twice',
  on: 'block',
  severity: 'error',
  summary: 'Two things have the same name.',
  why: 'which of them is meant elsewhere cannot be told; the first one is taken',
  source: 'the grammar of the language',
  bad: `shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

shackle bow-22 {
  body  19 mm
  wll   4.7 t
}
`,
  good: `shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

shackle bow-19 {
  body  19 mm
  wll   4.7 t
}
`,
  check(block, judge, assessing) {
    const own: Declaration[] = block.name === undefined ? [] : [{ kind: block.definition.head, name: block.name, place: block.namePlace, block }];
    for (const statement of block.statements) {
      const kept = newNameOf(statement.values, 'keep');
      if (kept !== undefined) own.push({ kind: 'piece', name: kept.name, place: kept.place, block, statement });
    }
    for (const declaration of own) {
      const first = earlier(declaration, assessing);
      judge.holds(first === undefined, () => ({
        place: declaration.place,
        message: `\`${declaration.name}\` is ${aKind(first!.kind)} already`,
        help: 'give one of them another name',
        related: [{ place: first!.place, message: 'the first one' }],
      }));
    }
    const points = new Map<string, Place>();
    for (const statement of block.definition.head === 'vehicle' ? block.statements : []) {
      const point = newNameOf(statement.values, 'name');
      if (point === undefined) continue;
      const first = points.get(point.name);
      if (first === undefined) points.set(point.name, point.place);
      judge.holds(first === undefined, () => ({
        place: point.place,
        message: `\`${block.name ?? 'the vehicle'}\` has a point \`${point.name}\` already`,
        help: 'give one of them another name',
        related: [{ place: first!, message: 'the first one' }],
      }));
    }
  },
});
