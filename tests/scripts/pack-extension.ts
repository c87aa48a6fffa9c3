import { execFile } from 'node:child_process';
import { cp, glob, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { inflateRawSync } from 'node:zlib';
import { deflateAsync } from '@gfx/zopfli';
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
  const bytes = await tighter(await readFile(path));
  await writeFile(path, bytes);
  return { path, bytes, files: filesOf(bytes) };
}

/** One file of a zip archive: its head in the directory at the archive's end, and its bytes as they are packed. */
interface Packaged {
  readonly name: string;
  readonly head: Buffer;
  readonly data: Buffer;
}

export function packagedIn(zip: Buffer): Packaged[] {
  const end = zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  const count = zip.readUInt16LE(end + 10);
  const found: Packaged[] = [];
  for (let at = zip.readUInt32LE(end + 16); found.length < count; ) {
    const [name, extra, comment] = [zip.readUInt16LE(at + 28), zip.readUInt16LE(at + 30), zip.readUInt16LE(at + 32)];
    const head = zip.subarray(at, at + 46 + name + extra + comment);
    const local = head.readUInt32LE(42);
    const data = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    found.push({ name: head.toString('utf8', 46, 46 + name), head, data: zip.subarray(data, data + head.readUInt32LE(20)) });
    at += head.length;
  }
  return found;
}

/** The names in the directory at the end of a zip archive. */
const filesOf = (zip: Buffer): string[] => packagedIn(zip).map(({ name }) => name);

/** The same archive, packed as tightly as its method packs, which takes a twentieth off: the packer takes the middle way, and writes each size twice. */
async function tighter(zip: Buffer): Promise<Buffer> {
  const [parts, heads]: [Uint8Array[], Buffer[]] = [[], []];
  let at = 0;
  for (const { head: old, data: loose } of packagedIn(zip)) {
    const head = Buffer.from(old);
    const data: Uint8Array = head.readUInt16LE(10) === 8 ? await deflateAsync(inflateRawSync(loose), { numiterations: 5 }) : loose;
    // The sizes stand in the head, and not behind the bytes.
    head.writeUInt16LE(head.readUInt16LE(8) & ~8, 8);
    head.writeUInt32LE(data.length, 20);
    head.writeUInt32LE(at, 42);
    const name = head.subarray(46, 46 + head.readUInt16LE(28));
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), head.subarray(6, 30), Buffer.alloc(2), name]);
    parts.push(local, data);
    heads.push(head);
    at += local.length + data.length;
  }
  const end = Buffer.from(zip.subarray(zip.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'))));
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...parts, ...heads, end]);
}
