import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeBundles, type MadeBundle } from '../../esbuild.config.mjs';
import { root } from './run.ts';

/** A package of others of which something stands in what we ship. */
export interface BundledPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Its licence as it came with it; undefined when it brought none. */
  readonly text: string | undefined;
  /** Packages that it says it needs. */
  readonly needs: readonly string[];
}

/** The folder of the package in which a source stands: the innermost, where one package has brought another. */
const packageFolder = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/;

/** Every package of which at least a byte is in one of the bundles, by name and version. */
export async function bundledPackages(made: readonly MadeBundle[] | Promise<readonly MadeBundle[]> = makeBundles(undefined, { minify: true })): Promise<BundledPackage[]> {
  const sources = (await made).flatMap(({ metafile }) => Object.values(metafile.outputs).flatMap(({ inputs }) => Object.entries(inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0)));
  const folders = new Set(sources.flatMap(([path]) => packageFolder.exec(path)?.[0] ?? []));
  return [...folders].map(readPackage).sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

function readPackage(folder: string): BundledPackage {
  const at = join(root, folder);
  const { name, version, license, dependencies = {} } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as { name: string; version: string; license: string; dependencies?: Record<string, string> };
  const file = readdirSync(at).sort().find((entry) => /^licen[cs]e(\.(?:md|txt))?$/i.test(entry));
  const text = file === undefined ? undefined : readFileSync(join(at, file), 'utf8').replaceAll('\r\n', '\n').split('\n').map((line) => line.trimEnd()).join('\n').trim();
  return { name, version, licence: license, text, needs: Object.keys(dependencies) };
}
