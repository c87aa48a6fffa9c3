import { aKind, oneOf, usedNames } from './name-values.ts';
import { defineRule } from './rule.ts';

export const nameOfAnotherKind = defineRule({
  name: 'name-of-another-kind',
  on: 'block',
  severity: 'error',
  summary: 'A name stands for something that does not belong where it is used.',
  why: 'what hangs on it is not judged',
  source: 'the grammar of the language',
  bad: `winch bow-winch {
  rated    42 kN
  carries  trunk
}

strap trunk {
  wll  4 t
}
`,
  good: `winch bow-winch {
  rated    42 kN
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  check(block, judge, { reader }) {
    for (const { name, place, of } of usedNames(block)) {
      const kinds = reader.kindsNamed(name);
      if (kinds.length === 0) continue;
      judge.holds(kinds.some((kind) => of.includes(kind)), () => {
        const other = reader.declarations(name)[0]!;
        const near = reader.nameLike(name, of);
        return {
          place,
          message: `\`${name}\` is ${aKind(other.kind)}; ${oneOf(of)} is meant here`,
          help: near === undefined ? `name ${oneOf(of)}` : `did you mean \`${near}\`?`,
          related: [{ place: other.place, message: `\`${name}\` is declared here` }],
        };
      });
    }
  },
});
