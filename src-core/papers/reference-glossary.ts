import { glossary, type GlossaryTerm } from '../vocabulary/glossary.ts';
import type { Part } from '../vocabulary/shape.ts';
import { vocabulary } from '../vocabulary/vocabulary.ts';
import { contents, page, table } from './reference-text.ts';

const termText = ({ term, also }: GlossaryTerm): string => (also === undefined ? term : `${term} (also ${also.join(', ')})`);
const meansText = ({ means, known }: GlossaryTerm): string => (known === undefined ? means : `${means} (${known})`);

/** Every word that a statement lets somebody choose, with its meaning and where it stands. */
function choiceWords(): string[][] {
  const rows = new Map<string, { word: string; meaning: string; where: string[] }>();
  const visit = (parts: readonly Part[], where: string): void => {
    for (const part of parts) {
      if (part.part === 'clause') visit(part.parts, where);
      if (part.part !== 'choice') continue;
      for (const [word, meaning] of Object.entries(part.of)) {
        const key = `${word}\n${meaning}`;
        const row = rows.get(key) ?? { word, meaning, where: [] };
        if (!row.where.includes(where)) row.where.push(where);
        rows.set(key, row);
      }
    }
  };
  for (const block of vocabulary) for (const s of [...block.statements, ...(block.entries ?? [])]) visit(s.parts, `${block.head} ${s.head}`);
  return [...rows.values()].sort((a, b) => (a.word.toLowerCase() < b.word.toLowerCase() ? -1 : 1)).map(({ word, meaning, where }) => [`\`${word}\``, meaning, where.join(', ')]);
}

/** The words of the trade, and the words that the language lets one choose. */
export function glossaryReference(): string {
  return page([
    '# Glossary',
    'The trade\'s words as the language, its messages and its papers use them: one definition each.',
    contents([...glossary.map((g) => g.title), 'Words to choose from']),
    ...glossary.flatMap(({ title, terms }) => [`## ${title}`, table(['word', 'meaning'], terms.map((t) => [termText(t), meansText(t)]))]),
    '## Words to choose from',
    'Words that a statement offers, with the statements that take them.',
    table(['word', 'meaning', 'in'], choiceWords()),
  ]);
}
