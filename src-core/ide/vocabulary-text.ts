import type { BlockDefinition, Part, StatementDefinition } from '../vocabulary/shape.ts';

const fenced = (example: string): string => `\`\`\`rig\n${example.trimEnd()}\n\`\`\``;

/** What a head means, and how it is written. */
export function statementText(definition: StatementDefinition): string {
  const needed = definition.needed === undefined ? '' : `\n\nNeeded for: ${definition.needed}${definition.foundOn === undefined ? '' : `. Found on ${definition.foundOn}`}.`;
  return `${definition.summary}${needed}\n\n${fenced(definition.example)}`;
}

/** The first lines of a block's example are enough to recognise it. */
const mostLines = 9;

export function blockText(definition: BlockDefinition): string {
  const lines = definition.example.trimEnd().split('\n');
  const close = lines.indexOf('}');
  const own = lines.slice(0, close + 1);
  const shown = own.length > mostLines ? [...own.slice(0, mostLines - 2), '  ...', '}'] : own;
  return `${definition.summary}\n\n${fenced(shown.join('\n'))}`;
}

/** The meaning of a word of the language within some parts: a choice, a flag or a clause. */
export function wordMeaning(parts: readonly Part[], word: string): string | undefined {
  for (const part of parts) {
    if (part.part === 'choice' && Object.hasOwn(part.of, word)) return part.of[word];
    if ((part.part === 'flag' || part.part === 'clause') && part.word === word) return part.meaning;
    if (part.part === 'clause') {
      const inner = wordMeaning(part.parts, word);
      if (inner !== undefined) return inner;
    }
  }
  return undefined;
}
