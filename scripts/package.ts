// Packs dist/linewright.vsix: the same sources give the same bytes.
import { createHash } from 'node:crypto';
import { cp, glob, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { buildBundles } from '../esbuild.config.mjs';
import { root, runNode } from './run.ts';

const mostBytes = 1_000_000;
const mostFiles = 40;
const vsix = join(root, 'dist', 'linewright.vsix');
const stage = join(root, 'dist', 'extension');

/**
 * The extension's manifest is ours without what only a developer needs. `type` must go besides: with it, an editor in a browser takes
 * every script for a module and refuses to start the extension.
 */
async function stageExtension(): Promise<void> {
  const { type: _type, private: _private, scripts: _scripts, bin: _bin, devDependencies: _dev, allowScripts: _allow, ...manifest } = JSON.parse(
    await readFile(join(root, 'package.json'), 'utf8'),
  ) as Record<string, unknown> & { files: string[] };
  await rm(stage, { recursive: true, force: true });
  for await (const file of glob(manifest.files, { cwd: root })) {
    await mkdir(dirname(join(stage, file)), { recursive: true });
    await cp(join(root, file), join(stage, file));
  }
  await writeFile(join(stage, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
}

await buildBundles(undefined, { minify: true });
await stageExtension();
await rm(vsix, { force: true });
const vsce = join(root, 'node_modules', '@vscode', 'vsce', 'vsce');
const packed = await runNode([vsce, 'package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '--out', vsix], {
  cwd: stage,
  env: { SOURCE_DATE_EPOCH: '1767225600' },
});
if (packed !== 0) process.exit(packed);

const bytes = await readFile(vsix);
// The end record of a zip counts its entries ten bytes in.
const files = bytes.readUInt16LE(bytes.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1')) + 10);
console.log(`${files} files, ${(bytes.length / 1000).toFixed(0)} kB, sha256 ${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}`);
if (mostFiles < files || mostBytes < bytes.length) {
  console.log(`the package may hold ${mostFiles} files and ${mostBytes / 1000} kB`);
  process.exitCode = 1;
}
