import type { Part } from '../vocabulary/shape.ts';
import type { ReadonlyValues } from './values.ts';

export interface WordOwner {
  /** Its value stands there already. */
  readonly bound: boolean;
  /** The word of a choice that stands there already. */
  readonly word: string | undefined;
}

/** The part of a statement that a word belongs to; one whose value stands there already before one that waits for it. */
export function ownerOf(parts: readonly Part[], word: string, values: ReadonlyValues): WordOwner | undefined {
  let found: WordOwner | undefined;
  const own = (key: string): void => {
    if (found?.bound === true) return;
    const value = values.get(key);
    found = { bound: value !== undefined, word: value?.type === 'word' ? value.word : undefined };
  };
  for (const part of parts) {
    if (part.part === 'clause') {
      if (part.word === word) own(`${part.key}:clause`);
    } else if (part.part === 'flag' ? part.word === word : part.part === 'choice' ? Object.hasOwn(part.of, word) : part.part === 'station' && (word === 'at' || word === 'from')) own(part.key);
  }
  return found;
}
