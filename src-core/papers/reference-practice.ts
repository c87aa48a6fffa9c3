import { builtInPractice, notPublished, type PracticeValue } from '../trade/built-in-practice.ts';
import { wholeMonths } from '../assess/time-since.ts';
import { printSource } from '../trade/source.ts';
import { showAmount } from '../mechanics/explain.ts';
import { kinds } from '../units/dimension.ts';
import { practiceBlock } from '../vocabulary/blocks/plans.ts';
import { page, rigFence, table } from './reference-text.ts';

const shown = (value: PracticeValue): string => (wholeMonths(value) === undefined ? showAmount(value.amount, kinds[value.kind].dimension, { careful: kinds[value.kind].careful }) : `${wholeMonths(value)} months by the calendar`);
const written = new Set(practiceBlock.statements.map((s) => s.head));

/** The built-in values of practice, each with its source and whether a crew can replace it. */
export function practiceReference(): string {
  return page([
    '# Built-in practice',
    'These values count where nobody wrote one. Wherever one of them counts, it is marked as assumed, with its source. One line in a `practice` block replaces it, with the crew\'s own reason behind it:',
    rigFence(practiceBlock.example),
    'Where sources disagree, the careful figure stands here.',
    table(
      ['value', 'for', 'what it is', 'built in', 'from', 'can be replaced'],
      builtInPractice.map((value) => [`\`${value.key}\``, value.for ?? 'all', value.means, shown(value), printSource(value.source), written.has(value.key) ? 'yes' : 'no']),
    ),
    '## What nobody has published',
    'For these no figure was found. Nothing is put in their place:',
    Object.values(notPublished).map((source) => `- ${printSource(source)}`).join('\n'),
  ]);
}
