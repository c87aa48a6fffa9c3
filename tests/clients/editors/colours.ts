import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { repository } from './workbench.ts';

interface Token {
  readonly startIndex: number;
  readonly endIndex: number;
  readonly scopes: readonly string[];
}
interface Grammar {
  tokenizeLine(line: string, state: unknown): { readonly tokens: readonly Token[]; readonly ruleStack: unknown };
}
interface TextMate {
  readonly INITIAL: unknown;
  readonly Registry: new (options: unknown) => { loadGrammar(scope: string): Promise<Grammar> };
  parseRawGrammar(text: string, path: string): unknown;
}
interface Oniguruma {
  loadWASM(bytes: ArrayBuffer): Promise<void>;
  readonly OnigScanner: new (patterns: string[]) => unknown;
  readonly OnigString: new (text: string) => unknown;
}

/** A line of a rig, and the innermost scope of each piece that must have a colour. */
const lines: readonly (readonly [line: string, pieces: Readonly<Record<string, string>>])[] = [
  ['# a note with "quotes" and 42 kN', { '# a note with "quotes" and 42 kN': 'comment.line' }],
  ['use "practice.rig"', { use: 'keyword.control.import', 'practice.rig': 'string.quoted' }],
  ['winch bow-winch on plover {', { winch: 'storage.type.block', 'bow-winch': 'entity.name.type', plover: 'variable.other.name' }],
  ['  rated     9,500 lbf at layer 1', { rated: 'keyword.other.statement', '9,500': 'constant.numeric', lbf: 'keyword.other.unit', '1': 'constant.numeric' }],
  ['  diameter  3/8 in', { '3/8': 'constant.numeric', in: 'keyword.other.unit' }],
  ['  body      1 3/4 in', { '1 3/4': 'constant.numeric', in: 'keyword.other.unit' }],
  ['  length    22 ft 6 in  # as bought', { '22': 'constant.numeric', ft: 'keyword.other.unit', '6': 'constant.numeric', ' as bought': 'comment.line' }],
  ['  speed     12 ft/min', { 'ft/min': 'keyword.other.unit' }],
  ['  shortened 25 %', { '%': 'keyword.other.unit' }],
  ['  2026-06-21  damage  cut 2 strands at 8.4 m from inboard', { '2026-06-21': 'constant.numeric.date', damage: 'keyword.other.entry', '8.4': 'constant.numeric', from: 'support.constant' }],
  ['  tail outboard -> bow-22 -> trunk', { '->': 'keyword.operator.arrow', 'bow-22': 'variable.other.name' }],
  ['  note "never closed', { 'never closed': 'string.quoted' }],
  ['  keep 10 wraps', { keep: 'keyword.other.statement', wraps: 'support.constant' }],
];

/** The grammar in the machinery that editors colour by, which comes with VS Code. */
export async function testColours(editors: Editors, step: Step): Promise<void> {
  const load = createRequire(join(dirname(editors.codeServer), '../../lib/vscode/package.json'));
  const textmate = load('vscode-textmate') as TextMate;
  const oniguruma = load('vscode-oniguruma') as Oniguruma;
  const wasm = await readFile(join(dirname(load.resolve('vscode-oniguruma')), 'onig.wasm'));
  await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer);
  const path = join(repository, 'syntaxes', 'rig.tmLanguage.json');
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner: (patterns: string[]) => new oniguruma.OnigScanner(patterns), createOnigString: (text: string) => new oniguruma.OnigString(text) }),
    loadGrammar: async () => textmate.parseRawGrammar(await readFile(path, 'utf8'), path),
  });
  const grammar = await registry.loadGrammar('source.rig');

  let state = textmate.INITIAL;
  for (const [line, pieces] of lines) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    await step(line.trim(), async () => {
      for (const [piece, scope] of Object.entries(pieces)) {
        const start = line.indexOf(piece);
        const end = start + piece.length;
        const under = tokens.filter((token) => token.startIndex < end && start < token.endIndex);
        assert.ok(
          0 < under.length && under.every(({ scopes }) => scopes.at(-1)!.startsWith(scope) || scopes.some((outer) => outer.startsWith(scope))),
          `${piece} should be ${scope}: ${JSON.stringify(under)}`,
        );
      }
    });
  }
}
