import { bindChunk, mayUse } from '../../src-core/model/bind-chunk.ts';
import { splitChunks } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

/**
 * The `use`s of a rig and nothing else. A project of such texts knows which files stand together and takes little room,
 * however many there are. A path in quotes holds neither quotes nor line breaks, so it can be written as it was read.
 */
export function usesOnly(text: string): string {
  if (!text.includes('use')) return '';
  return splitChunks(text, topHeads)
    .filter(({ chunk }) => mayUse(chunk))
    .flatMap(({ chunk }) => bindChunk(chunk).uses)
    .map(({ path }) => `use "${path}"\n`)
    .join('');
}
