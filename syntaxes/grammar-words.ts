import { unitWords } from '../src-core/units/unit-table.ts';
import type { Part } from '../src-core/vocabulary/shape.ts';
import { useStatement, vocabulary } from '../src-core/vocabulary/vocabulary.ts';
import type { GrammarWords } from './make-grammar.ts';

const sorted = (words: Iterable<string>): string[] => [...new Set(words)].sort();

/** Words that a value can be or can be led by. */
function* wordsIn(parts: readonly Part[]): Generator<string> {
  for (const part of parts) {
    if (part.part === 'clause') {
      yield part.word;
      yield* wordsIn(part.parts);
    } else if (part.part === 'flag') yield part.word;
    else if (part.part === 'choice') yield* Object.keys(part.of);
    else if (part.part === 'count') yield* part.noun ?? [];
    else if (part.part === 'station') yield* ['at', 'from', 'to', 'inboard', 'outboard'];
  }
}

/** The words that colour a rig file before the server is up: all of them from the vocabulary. */
export function grammarWords(): GrammarWords {
  const statements = vocabulary.flatMap((b) => b.statements);
  const entries = vocabulary.flatMap((b) => b.entries ?? []);
  const everyPart = [...vocabulary.map((b) => b.header), ...statements.map((s) => s.parts), ...entries.map((s) => s.parts), ...vocabulary.flatMap((b) => (b.headless ? [b.headless.parts] : []))];
  return {
    blocks: vocabulary.map((b) => b.head),
    statements: sorted([useStatement.head, ...statements.map((s) => s.head)]),
    entries: sorted(entries.map((s) => s.head)),
    words: sorted(everyPart.flatMap((parts) => [...wordsIn(parts)])),
    units: [...unitWords()],
  };
}
