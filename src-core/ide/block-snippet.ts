import type { BlockDefinition, Part, StatementDefinition } from '../vocabulary/shape.ts';

const escape = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

/** Values that a person must look up stay empty: an example number in a rig would be a claim. */
function placeholder(part: Part): string {
  switch (part.part) {
    case 'choice': {
      const words = Object.keys(part.of);
      return words.length <= 8 ? `|${words.join(',')}|` : `:${words[0]}`;
    }
    case 'name':
    case 'new-name':
      return `:${part.key}`;
    default:
      return '';
  }
}

/** A block with its name and the statements that something waits for, as places to fill in. */
export function blockSnippet(definition: BlockDefinition): string {
  let place = 1;
  const stop = (text: string): string => `\${${place++}${text}}`;
  const header: string[] = [definition.head];
  for (const part of definition.header) {
    if (part.part === 'new-name') header.push(stop(':name'));
    else if (part.part === 'clause' && part.optional !== true) header.push(part.word, ...part.parts.map((inner) => stop(`:${escape('key' in inner ? inner.key : 'value')}`)));
  }
  const wanted = definition.statements.filter((s) => s.needed !== undefined);
  const width = Math.max(0, ...wanted.map((s) => s.head.length)) + 2;
  const first = (statement: StatementDefinition): string => {
    const part = statement.parts[0];
    const text = part === undefined ? '' : placeholder(part);
    return stop(text);
  };
  const lines = wanted.map((s) => `  ${s.head.padEnd(width)}${first(s)}`);
  return [`${header.join(' ')} {`, ...lines, ...(lines.length === 0 ? ['  $0'] : []), '}', ...(lines.length === 0 ? [] : ['$0'])].join('\n');
}
