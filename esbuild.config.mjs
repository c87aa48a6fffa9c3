// Builds dist/: the extension, the language server and the command line, each one file with nothing to install beside it.
//   node esbuild.config.mjs [--minify] [name ...]
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(fileURLToPath(import.meta.url));

// VS Code 1.91 runs extensions on Node 20.9, which lacks this one function that the parser library calls.
const groupBy =
  'Object.groupBy??=(items,key)=>{const groups=Object.create(null);let at=0;for(const item of items)(groups[key(item,at++)]??=[]).push(item);return groups};';

const node = { platform: 'node', format: 'cjs', target: 'node20.9', banner: { js: groupBy } };
const browser = { platform: 'browser', target: 'es2022', banner: { js: groupBy } };

/** Ships a file of a library changed. Where the change finds nothing to change, the library is not what it was, and somebody has to look again. */
const changed = (filter, change) => ({
  name: `changed ${filter.source}`,
  setup({ onLoad }) {
    onLoad({ filter }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      const contents = change(text);
      if (contents === text || contents === undefined) throw new Error(`${path} is not what it was: look again at what is changed in it`);
      return { contents, loader: 'js' };
    });
  },
});

const lessOfLibraries = [
  // The parser library holds a call that would run text as code, behind a return that is always taken. It is cut off, so that nothing shipped can do
  // so and a policy that forbids it has nothing to refuse.
  changed(/[\\/]@chevrotain[\\/]utils[\\/].*[\\/]to-fast-properties\.js$/, (text) => text.replace(/if \(1\)\s*return toBecomeFast;[^]*?\n}/, 'return toBecomeFast;\n}')),
  // Of its lexer nothing is used but one word that stands for no pattern.
  changed(/[\\/]chevrotain[\\/].*[\\/]scan[\\/]lexer_public\.js$/, (text) => {
    const word = /NA = (\/\w+\/)/.exec(text)?.[1];
    return word && `export class Lexer {}\nLexer.NA = ${word};\nexport const LexerDefinitionErrorType = {};\n`;
  }),
  // It is told to skip the checks of its grammar: neither what would make them is shipped, nor what they would say.
  changed(/[\\/]chevrotain[\\/].*[\\/]grammar[\\/]checks\.js$/, (text) => [...text.matchAll(/^export function (validate\w+)\(/gm)].map(([, name]) => `export const ${name} = () => [];\n`).join('') || undefined),
  changed(/[\\/]chevrotain[\\/].*[\\/]errors_public\.js$/, (text) =>
    text.replace(/(export const defaultGrammarResolverErrorProvider = \{)[^]*\n(export const defaultGrammarValidatorErrorProvider = \{)[^]*/, '$1};\n$2};\n')),
  // The protocol library brings a finder for packages of a workspace, which would start other programs, and loads what makes random names; the server
  // uses neither. The one is not shipped, the other is loaded when it is called.
  changed(/[\\/]vscode-languageserver[\\/]lib[\\/]node[\\/]files\.js$/, () => ''),
  changed(/[\\/]vscode-jsonrpc[\\/]lib[\\/]node[\\/](?:main|ril)\.js$/, (text) => text.replace('const crypto_1 = require("crypto");', '').replace(/\bcrypto_1\./g, 'require("crypto").')),
  // The server keeps no documents, no notebooks and no colours by the library's classes.
  changed(/[\\/]vscode-languageserver[\\/]lib[\\/]common[\\/](?:notebook|semanticTokens|textDocuments)\.js$/, (text) =>
    text.replace(/^class (\w+) \{$[^]*?^\}\n(?:exports\.\1 = \1;\n)?/gm, '').replace('const textDocuments_1 = require("./textDocuments");', '')),
  // It offers nothing for notebooks, so that what would keep one in step is never made: of it only the name is shipped.
  changed(/[\\/]vscode-languageclient[\\/].*[\\/]notebook\.js$/, (text) => text.replace(/^var Converter;[^]*?(?=^class NotebookDocumentSyncFeature \{)/m, 'class NotebookDocumentSyncFeatureProvider {}\n')),
];

/** What the programs for Node share is one file beside them. */
const engineBeside = {
  name: 'engine-beside',
  setup({ onResolve }) {
    onResolve({ filter: /\/node-engine\.ts$/ }, ({ kind, resolveDir }) => (kind === 'dynamic-import' ? { path: join(resolveDir, 'engine-beside.ts') } : undefined));
  },
};
const program = { ...node, plugins: [engineBeside], needs: ['engine'], supported: { 'dynamic-import': false } };

/** Of the manifest the programs need their version only. */
const versionAlone = {
  name: 'version-alone',
  setup({ onLoad }) {
    onLoad({ filter: /package\.json$/ }, async ({ path }) => (path === join(root, 'package.json') ? { contents: JSON.stringify({ version: JSON.parse(await readFile(path, 'utf8')).version }), loader: 'json' } : undefined));
  },
};

/** Every bundle by its name: where it starts and where it lands. */
export const bundles = {
  client: { ...node, entry: 'client/desktop.ts', out: 'dist/client.cjs', external: ['vscode'] },
  'client-web': { ...browser, format: 'cjs', entry: 'client/web.ts', out: 'dist/client-web.js', external: ['vscode'] },
  engine: { ...node, entry: 'server/node-engine.ts', out: 'dist/engine.cjs', supported: { 'dynamic-import': false } },
  server: { ...program, entry: 'server/server.ts', out: 'dist/server.cjs' },
  'pictures-view': { ...browser, banner: {}, format: 'iife', entry: 'client/view/pictures-view.ts', out: 'dist/pictures-view.js' },
  'server-web': { ...browser, format: 'iife', entry: 'server/worker.ts', out: 'dist/server-web.js' },
  cli: { ...program, entry: 'server/cli.ts', out: 'dist/linewright.cjs', banner: { js: `#!/usr/bin/env node\n${groupBy}` } },
};

/**
 * A text of ASCII alone is read and held with one byte a letter. What the bundler leaves as it is are regular expressions and remarks, where
 * an escape says the same.
 */
const inAscii = (text) => text.replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** A program that is started meanwhile reads the old file or the new one, never half of it. */
async function putInPlace(path, bytes) {
  const beside = `${path}.${process.pid}.${Math.random().toString(36).slice(2)}`;
  await mkdir(dirname(path), { recursive: true });
  await writeFile(beside, bytes);
  await rename(beside, path);
}

/** Makes the named bundles (all, when none is named) with those that they need, and writes nothing: what each holds, and of what it was made. */
export async function makeBundles(names = Object.keys(bundles), { minify = false } = {}) {
  const wanted = new Set(names.flatMap((name) => [...(bundles[name].needs ?? []), name]));
  return Promise.all(
    [...wanted].map(async (name) => {
      const { entry, out, needs: _needs, ...options } = bundles[name];
      const { outputFiles, metafile } = await build({
        ...options,
        plugins: [...lessOfLibraries, versionAlone, ...(options.plugins ?? [])],
        entryPoints: [join(root, entry)],
        outfile: join(root, out),
        write: false,
        metafile: true,
        absWorkingDir: root,
        bundle: true,
        minify,
        // Names in a stack trace are worth more than the few bytes they cost.
        keepNames: false,
        charset: 'ascii',
        legalComments: 'none',
        logLevel: 'warning',
        mainFields: options.platform === 'browser' ? ['browser', 'module', 'main'] : ['module', 'main'],
      });
      return { name, out, bytes: Buffer.from(inAscii(outputFiles[0].text)), metafile };
    }),
  );
}

/** Builds the named bundles (all, when none is named) into a folder, dist/ of this one when none is given, and answers with the files written. */
export async function buildBundles(names, { minify = false, folder = root } = {}) {
  const made = await makeBundles(names, { minify });
  await Promise.all(made.map(({ out, bytes }) => putInPlace(join(folder, out), bytes)));
  return made.map(({ out }) => out);
}

export const missingEntries = () => Object.keys(bundles).filter((name) => !existsSync(join(root, bundles[name].entry)));

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const words = process.argv.slice(2);
  const named = words.filter((word) => !word.startsWith('--'));
  const missing = missingEntries();
  const wanted = named.length > 0 ? named : Object.keys(bundles).filter((name) => !missing.includes(name));
  if (named.length === 0) for (const name of missing) console.log(`not built, because ${bundles[name].entry} is missing: ${bundles[name].out}`);
  const started = performance.now();
  const written = await buildBundles(wanted, { minify: words.includes('--minify') });
  console.log(`built ${written.join(', ')} in ${Math.round(performance.now() - started)} ms`);
}
