// Builds dist/: the extension, the language server and the command line, each one file with nothing to install beside it.
//   node esbuild.config.mjs [--minify] [name ...]
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = dirname(fileURLToPath(import.meta.url));

// VS Code 1.91 runs extensions on Node 20.9, which lacks this one function that the parser library calls.
const groupBy =
  'Object.groupBy??=(items,key)=>{const groups=Object.create(null);let at=0;for(const item of items)(groups[key(item,at++)]??=[]).push(item);return groups};';

const node = { platform: 'node', format: 'cjs', target: 'node20.9', banner: { js: groupBy } };
const browser = { platform: 'browser', target: 'es2022', banner: { js: groupBy } };

/** Every bundle by its name: where it starts and where it lands. */
export const bundles = {
  client: { ...node, entry: 'client/desktop.ts', out: 'dist/client.cjs', external: ['vscode'] },
  'client-web': { ...browser, format: 'cjs', entry: 'client/web.ts', out: 'dist/client-web.js', external: ['vscode'] },
  server: { ...node, entry: 'server/stdio.ts', out: 'dist/server.cjs' },
  'server-web': { ...browser, format: 'iife', entry: 'server/worker.ts', out: 'dist/server-web.js' },
  cli: { ...node, entry: 'server/cli.ts', out: 'dist/linewright.cjs', banner: { js: `#!/usr/bin/env node\n${groupBy}` } },
};

/** Builds the named bundles (all, when none is named) and answers with the files written. */
export async function buildBundles(names = Object.keys(bundles), { minify = false } = {}) {
  return Promise.all(
    names.map(async (name) => {
      const { entry, out, ...options } = bundles[name];
      await build({
        ...options,
        entryPoints: [join(root, entry)],
        outfile: join(root, out),
        absWorkingDir: root,
        bundle: true,
        minify,
        // Names in a stack trace are worth more than the few bytes they cost.
        keepNames: false,
        charset: 'utf8',
        legalComments: 'none',
        logLevel: 'warning',
        mainFields: options.platform === 'browser' ? ['browser', 'module', 'main'] : ['module', 'main'],
      });
      return out;
    }),
  );
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
