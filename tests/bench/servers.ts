import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { languages, type Language } from './languages.ts';
import type { Peers } from './peers/install-peers.ts';
import { rigTextDay } from '../support/rig-text.ts';

export interface BenchServer {
  readonly name: string;
  readonly command: readonly string[];
  readonly language: Language;
  /** It answers for diagnostics instead of sending them. */
  readonly pulls: boolean;
  /** How long it rests by intent after a change before it looks at it. */
  readonly rest_ms: number;
  /** For files of so many lines it answers at first for the text, and again when it has judged what that comes to. */
  readonly restBehind?: number;
  /** Only how it starts is measured. */
  readonly startOnly?: boolean;
  readonly env?: Readonly<Record<string, string>>;
  readonly settings?: unknown;
  readonly initializationOptions?: unknown;
}

const root = fileURLToPath(new URL('../..', import.meta.url));

export function benchServers({ modules, schemaUri, langium }: Peers): BenchServer[] {
  const node = process.execPath;
  // Started as the extension starts it. A client that waits to be told is spared what is new on the line that is being typed, for as long as typing rests.
  const ours = { command: [node, '--max-semi-space-size=2', '--initial-old-space-size=32', '--heap-growing-percent=50', join(root, 'dist/server.cjs'), '--stdio'], language: languages.rig, settings: { linewright: { check: { asOf: rigTextDay } } } };
  const all: BenchServer[] = [
    { name: 'ours', ...ours, pulls: true, rest_ms: 0, restBehind: 1000 },
    // The very first start on a machine, before anything was compiled.
    { name: 'ours-first', ...ours, pulls: true, rest_ms: 0, startOnly: true, env: { LINEWRIGHT_CACHE: 'off' } },
    {
      name: 'json', command: [node, join(modules, 'vscode-langservers-extracted/bin/vscode-json-language-server'), '--stdio'], language: languages.json, pulls: true, rest_ms: 0,
      initializationOptions: { provideFormatter: true, handledSchemaProtocols: ['file'] },
      settings: { json: { validate: { enable: true }, schemas: [{ fileMatch: ['*.rig.json'], url: schemaUri }] } },
    },
    {
      name: 'yaml', command: [node, join(modules, 'yaml-language-server/bin/yaml-language-server'), '--stdio'], language: languages.yaml, pulls: false, rest_ms: 200,
      settings: { yaml: { schemas: { [schemaUri]: '*.rig.yaml' }, validate: true, hover: true, completion: true, format: { enable: true }, schemaStore: { enable: false }, kubernetesCRDStore: { enable: false }, maxItemsComputed: 1_000_000 }, http: {}, '[yaml]': { 'editor.tabSize': 2 }, editor: { detectIndentation: false } },
    },
  ];
  all.push({ name: 'ours-push', ...ours, pulls: false, rest_ms: 700 });
  if (langium !== undefined) all.push({ name: 'langium', command: [node, langium, '--stdio'], language: languages.langium, pulls: false, rest_ms: 0 });
  return all;
}
