import { referencePages } from '../../src-core/papers/reference.ts';
import { grammarWords } from '../../syntaxes/grammar-words.ts';
import { bundledPackages } from './bundled-packages.ts';
import { thirdPartyPage } from './third-party-page.ts';
import { makeGrammar } from '../../syntaxes/make-grammar.ts';
import { makeSnippets } from '../../syntaxes/make-snippets.ts';

/** Every generated file of the repository with the bytes it should hold. */
export async function generatedFiles(): Promise<ReadonlyMap<string, Buffer>> {
  return new Map([
    ['THIRD-PARTY.md', Buffer.from(thirdPartyPage(await bundledPackages()))],
    ['syntaxes/rig.tmLanguage.json', Buffer.from(`${JSON.stringify(makeGrammar(grammarWords()), null, 2)}\n`)],
    ['syntaxes/rig.snippets.json', Buffer.from(`${JSON.stringify(makeSnippets(), null, 2)}\n`)],
    ...[...referencePages()].map(([name, text]): [string, Buffer] => [`docs/reference/${name}`, Buffer.from(text)]),
  ]);
}
