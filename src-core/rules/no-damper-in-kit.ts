import { wordOf } from '../model/bound.ts';
import { damperPractice } from '../trade/plan-sources.ts';
import { printSource } from '../trade/source.ts';
import { pullExample } from './example-pull.ts';
import { defineRule } from './rule.ts';

const kit = (item: string): string => `kit bag {
  holds    gloves
  holds    ${item}
  carries  bow-22
  carries  trunk
}
`;

export const noDamperInKit = defineRule({
  name: 'no-damper-in-kit',
  on: 'pull',
  severity: 'warning',
  summary: 'A pull is planned, and no line damper is in the bag.',
  why: 'a weight on the line pulls it down when something lets go, instead of letting it fly at head height',
  source: printSource(damperPractice),
  bad: pullExample({ more: kit('shovel') }),
  good: pullExample({ more: kit('damper') }),
  check(pull, judge, assessing) {
    const kits = assessing.reader.blocks('kit');
    const place = pull.block.namePlace;
    if (kits.length === 0) return judge.cannot({ key: 'kit', says: 'what is in the bag is not given', help: 'add a `kit` with what is carried', place }, place);
    judge.holds(kits.some((kit) => kit.statements.some((s) => s.definition.head === 'holds' && wordOf(s.values, 'item') === 'damper')), () => ({
      place,
      message: `\`${pull.name}\` has no damper for its line: none is in ${kits[0]!.name === undefined ? 'the kit' : `\`${kits[0]!.name}\``}`,
      help: 'put one into the bag and write `holds  damper`; a heavy coat or a sack of earth does it in need',
    }));
  },
});
