import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const core = join(root, 'src-core');

/** What each room may import, besides itself. */
const rooms: Record<string, readonly string[]> = {
  base: [],
  units: ['base'],
  syntax: ['base', 'units'],
  vocabulary: ['base', 'units'],
  trade: ['base', 'units'],
  model: ['base', 'units', 'syntax', 'vocabulary', 'trade'],
  mechanics: ['base', 'units', 'trade'],
  assess: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics'],
  rules: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics', 'assess'],
  pictures: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics', 'assess'],
  project: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics', 'assess', 'rules', 'use-path.ts'],
  papers: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics', 'assess', 'rules', 'pictures', 'project', 'project.ts'],
  ide: ['base', 'units', 'syntax', 'vocabulary', 'trade', 'model', 'mechanics', 'assess', 'rules', 'pictures', 'papers', 'project', 'project.ts', 'use-path.ts'],
};

/** Packages, and where they may be imported. */
const packages: Record<string, RegExp> = {
  chevrotain: /^src-core\/syntax\//,
  zod: /^(?:src-core\/trade\/|server\/|tests\/)/,
  'zod/mini': /^(?:src-core\/trade\/|server\/|tests\/)/,
};

const files = (folder: string): string[] => readdirSync(folder, { recursive: true, withFileTypes: true }).filter((e) => e.isFile() && e.name.endsWith('.ts')).map((e) => join(e.parentPath, e.name));
const importsOf = (text: string): string[] => [...text.matchAll(/(?:^|\n)\s*(?:import|export)\b[^'"\n;]*?from\s*['"]([^'"]+)['"]|(?:^|\n)\s*import\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g)].map((m) => (m[1] ?? m[2] ?? m[3])!);
// Imports over several lines are joined first.
const flat = (text: string): string => text.replace(/(import|export)\s+(type\s+)?\{[^}]*\}/g, (s) => s.replaceAll('\n', ' '));

function wrongImports(path: string, text: string): string[] {
  const from = relative(root, path);
  const room = relative(core, path).split('/')[0]!;
  const wrong: string[] = [];
  for (const target of importsOf(flat(text))) {
    if (target.startsWith('.')) {
      const to = relative(core, resolve(dirname(path), target));
      if (to.startsWith('..')) wrong.push(`${from} imports ${target}, which is outside src-core`);
      else {
        const other = to.split('/')[0]!;
        if (other !== room && rooms[room] !== undefined && !rooms[room].includes(other)) wrong.push(`${from} imports ${other}`);
      }
    } else if (packages[target] === undefined || !packages[target].test(from)) wrong.push(`${from} imports the package ${target}`);
  }
  return wrong;
}

describe('layers', () => {
  test('the test sees what is wrong', () => {
    expect(wrongImports(join(core, 'base/x.ts'), `import { a } from '../rules/all.ts';`)).toEqual(['src-core/base/x.ts imports rules']);
    expect(wrongImports(join(core, 'model/x.ts'), `import {\n  a,\n} from '../mechanics/all.ts';`)).toEqual(['src-core/model/x.ts imports mechanics']);
    expect(wrongImports(join(core, 'ide/x.ts'), `import { Lexer } from 'chevrotain';`)).toEqual(['src-core/ide/x.ts imports the package chevrotain']);
    expect(wrongImports(join(core, 'ide/x.ts'), `import { a } from '../../server/cli.ts';`)).toEqual(['src-core/ide/x.ts imports ../../server/cli.ts, which is outside src-core']);
  });

  test('every room imports only what it may', () => {
    const all = files(core);
    expect(all.length).toBeGreaterThan(100);
    expect(all.flatMap((path) => wrongImports(path, readFileSync(path, 'utf8')))).toEqual([]);
  });

  test('src-core reads no clock, no randomness, no console', () => {
    const banned = /\bMath\.random\b|\bDate\.now\b|\bnew Date\b|\bconsole\.|\bprocess\.|\bperformance\.|\beval\(|\bnew Function\b/;
    expect(files(core).filter((path) => banned.test(readFileSync(path, 'utf8'))).map((path) => relative(root, path))).toEqual([]);
  });

  test('no file is much over 400 lines', () => {
    const all = ['src-core', 'server', 'client'].flatMap((folder) => files(join(root, folder)));
    expect(all.length).toBeGreaterThan(200);
    expect(all.filter((path) => readFileSync(path, 'utf8').split('\n').length > 440).map((path) => relative(root, path))).toEqual([]);
  });
});
