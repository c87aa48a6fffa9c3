import type { NameKind } from '../vocabulary/shape.ts';
import { oneOf, usedNames } from './name-values.ts';
import { defineRule } from './rule.ts';

/** A piece comes from a cut and a point stands in its vehicle: neither is a block. */
const isBlock = (kind: NameKind): boolean => kind !== 'piece' && kind !== 'point';

export const unknownName = defineRule({
  name: 'unknown-name',
  on: 'block',
  severity: 'error',
  summary: 'A name is used that nothing in scope has.',
  why: 'what hangs on it is not judged',
  source: 'the grammar of the language',
  bad: `chain reach {
  bow-22 -> trunk -> lrach
}

shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  wll  4 t
}

anchor larch {
  kind  tree
}
`,
  good: `chain reach {
  bow-22 -> trunk -> larch
}

shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  wll  4 t
}

anchor larch {
  kind  tree
}
`,
  check(block, judge, { reader }) {
    for (const { name, place, of } of usedNames(block)) {
      judge.holds(reader.kindsNamed(name).length > 0, () => {
        const near = reader.nameLike(name, of);
        return {
          place,
          message: `\`${name}\` is not known here`,
          help: near === undefined ? `write it as a block of its own (${oneOf(of.filter(isBlock))}), or take in the file that has it with \`use\`` : `did you mean \`${near}\`?`,
          fixes: near === undefined ? [] : [{ title: `Write \`${near}\``, edits: [{ place, text: near }] }],
        };
      });
    }
  },
});
