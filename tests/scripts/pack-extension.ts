import { execFile } from 'node:child_process';
import { cp, glob, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { buildBundles, bundles } from '../../esbuild.config.mjs';
import { root } from './run.ts';

/** A packed extension. */
export interface Packed {
  readonly path: string;
  readonly bytes: Buffer;
  /** Paths in the archive, in its order. */
  readonly files: readonly string[];
}

/**
 * The extension's manifest is ours without what only a developer needs. `type` must go besides: with it, an editor in a browser takes
 * every script for a module and refuses to start the extension.
 */
async function stageExtension(stage: string): Promise<void> {
  const { type: _type, private: _private, scripts: _scripts, bin: _bin, devDependencies: _dev, allowScripts: _allow, ...manifest } = JSON.parse(
    await readFile(join(root, 'package.json'), 'utf8'),
  ) as Record<string, unknown> & { files: string[] };
  await rm(stage, { recursive: true, force: true });
  await mkdir(stage, { recursive: true });
  await buildBundles(undefined, { minify: true, folder: stage });
  const built = new Set(Object.values(bundles).map(({ out }) => out));
  const wanted = manifest.files.filter((file) => !built.has(file));
  for await (const file of glob(wanted, { cwd: root })) {
    await mkdir(dirname(join(stage, file)), { recursive: true });
    await cp(join(root, file), join(stage, file));
  }
  await writeFile(join(stage, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
}

/** Packs the extension into a folder, where it also leaves it unpacked: the same sources give the same bytes. */
export async function packExtension(folder: string): Promise<Packed> {
  const path = join(folder, 'linewright.vsix');
  const stage = join(folder, 'extension');
  await stageExtension(stage);
  await rm(path, { force: true });
  const vsce = join(root, 'node_modules', '@vscode', 'vsce', 'vsce');
  // What it says is shown only by the error of a failure.
  await promisify(execFile)(process.execPath, [vsce, 'package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '--out', path], {
    cwd: stage,
    env: { ...process.env, SOURCE_DATE_EPOCH: '1767225600' },
  });
  const bytes = await readFile(path);
  return { path, bytes, files: filesOf(bytes) };
}

/** The names in the directory at the end of a zip archive. */
function filesOf(zip: Buffer): string[] {
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  const count = zip.readUInt16LE(end + 10);
  const names: string[] = [];
  for (let at = zip.readUInt32LE(end + 16); names.length < count; ) {
    const [name, extra, comment] = [zip.readUInt16LE(at + 28), zip.readUInt16LE(at + 30), zip.readUInt16LE(at + 32)];
    names.push(zip.toString('utf8', at + 46, at + 46 + name));
    at += 46 + name + extra + comment;
  }
  return names;
}
