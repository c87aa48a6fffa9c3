import { blockSnippet } from '../src-core/ide/block-snippet.ts';
import { vocabulary } from '../src-core/vocabulary/vocabulary.ts';

/** Snippets for whole blocks, for when the server has not yet answered. Their prefix keeps them apart from what it offers. */
export function makeSnippets(): Record<string, { readonly prefix: string; readonly description: string; readonly body: readonly string[] }> {
  return Object.fromEntries(
    vocabulary.map((definition) => [`${definition.head} block`, { prefix: `rig-${definition.head}`, description: definition.summary, body: blockSnippet(definition).split('\n') }]),
  );
}
