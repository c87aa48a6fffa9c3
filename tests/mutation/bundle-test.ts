import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { rolldown, type Plugin } from 'rolldown';
import { findMutants } from './find-mutants.ts';

export const root = join(import.meta.dirname, '..', '..');
export const pathOf = (file: string): string => relative(root, file).replaceAll('\\', '/');

/** A test file with everything of ours that it imports, as one script; packages come from `$packages`. */
export interface TestBundle {
  readonly file: string;
  readonly code: string;
  readonly packages: readonly string[];
}

const isPackage = (id: string): boolean => !id.startsWith('.') && !id.startsWith('/') && !id.startsWith('\0');
const packagePrefix = '\0package:';

/** `mutated` gives the text of a file with mutants in it, by path from the root. */
export async function bundleTest(file: string, mutated: ReadonlyMap<string, string>): Promise<TestBundle> {
  const packages = new Set<string>();
  const ours: Plugin = {
    name: 'mutants',
    resolveId: (id) => {
      if (!isPackage(id)) return undefined;
      packages.add(id);
      return packagePrefix + id;
    },
    load: async (id) => {
      if (!id.startsWith(packagePrefix)) return undefined;
      const name = id.slice(packagePrefix.length);
      const names = Object.keys(await importPackage(name)).filter((key) => key !== 'default' && key !== 'module.exports' && /^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(key));
      const get = `$packages[${JSON.stringify(name)}]`;
      return `const all = ${get};\nexport default all.default;\n${names.map((key, i) => `const p${i} = all[${JSON.stringify(key)}]; export { p${i} as ${key} };`).join('\n')}`;
    },
    transform: (code, id) => {
      if (!id.endsWith('.ts')) return undefined;
      const path = pathOf(id);
      const text = mutated.get(path) ?? (path.startsWith('src-core/') || path.startsWith('tests/') ? findMutants(code, path).code : code);
      return { code: text.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href)).replaceAll('import.meta.dirname', JSON.stringify(dirname(id))).replaceAll('import.meta.filename', JSON.stringify(id)) };
    },
  };
  const build = await rolldown({ input: join(root, file), plugins: [ours], platform: 'node', treeshake: false, logLevel: 'silent' });
  const { output } = await build.generate({ format: 'iife', codeSplitting: false, name: '$file' });
  await build.close();
  return { file, code: output[0].code, packages: [...packages] };
}

const requireHere = createRequire(join(root, 'package.json'));

/** A package as the tests see it. Mutants are in none. */
export async function importPackage(name: string): Promise<Readonly<Record<string, unknown>>> {
  if (name.startsWith('node:')) return (await import(name)) as Record<string, unknown>;
  try {
    return (await import(name)) as Record<string, unknown>;
  } catch {
    const required = requireHere(name) as Record<string, unknown>;
    return { default: required, ...required };
  }
}
