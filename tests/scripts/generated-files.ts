import { readFile } from 'node:fs/promises';
import { readDay } from '../../src-core/model/day.ts';
import { referencePictures } from '../../src-core/papers/reference-pictures.ts';
import { referencePages } from '../../src-core/papers/reference.ts';
import { grammarWords } from '../../syntaxes/grammar-words.ts';
import { bundledPackages } from './bundled-packages.ts';
import { thirdPartyPage } from './third-party-page.ts';
import { makeGrammar } from '../../syntaxes/make-grammar.ts';
import { makeSnippets } from '../../syntaxes/make-snippets.ts';

/** Every generated file of the repository with the bytes it should hold. */
export async function generatedFiles(): Promise<ReadonlyMap<string, Buffer>> {
  // One rig that is repaired, then one that pulls itself up: the first of each kind of block is drawn.
  const texts = new Map(await Promise.all(['plover.rig', 'ouzel.rig', 'practice.rig'].map(async (name): Promise<[string, string]> => [name === 'plover.rig' ? 'a-plover.rig' : name, await readFile(new URL(`../../examples/${name}`, import.meta.url), 'utf8')])));
  return new Map([
    ['THIRD-PARTY.md', Buffer.from(thirdPartyPage(await bundledPackages()))],
    ['syntaxes/rig.tmLanguage.json', Buffer.from(`${JSON.stringify(makeGrammar(grammarWords()), null, 2)}\n`)],
    ['syntaxes/rig.snippets.json', Buffer.from(`${JSON.stringify(makeSnippets(), null, 2)}\n`)],
    ...[...referencePictures(texts, readDay('2026-06-22')!)].map(([name, svg]): [string, Buffer] => [`docs/reference/pictures/${name}.svg`, Buffer.from(svg)]),
    ...[...referencePages()].map(([name, text]): [string, Buffer] => [`docs/reference/${name}`, Buffer.from(text)]),
  ]);
}
