import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bundles } from '../../esbuild.config.mjs';
import '../../src-core/mechanics/all.ts';
import { calculations } from '../../src-core/mechanics/define-calculation.ts';
import { allSources } from '../../src-core/papers/reference-sources.ts';
import { headingLink } from '../../src-core/papers/reference-text.ts';
import { referencePages } from '../../src-core/papers/reference.ts';
import { RigFile } from '../../src-core/project/rig-file.ts';
import { rules } from '../../src-core/rules/all.ts';
import { glossary, glossaryTerm } from '../../src-core/vocabulary/glossary.ts';
import { vocabulary } from '../../src-core/vocabulary/vocabulary.ts';

const root = resolve(import.meta.dirname, '../..');
const pages = referencePages();
const textOf = (name: string): string => pages.get(name)!;
const withoutFences = (text: string): string => text.replace(/^(`{3,})\w*\n[\s\S]*?^\1$/gm, '');
const headings = (name: string, level: number): string[] => [...withoutFences(textOf(name)).matchAll(new RegExp(`^#{${level}} (.+)$`, 'gm'))].map((m) => m[1]!);
const documents = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'src-core/README.md', ...readdirSync(join(root, 'docs'), { recursive: true, encoding: 'utf8' }).filter((n) => n.endsWith('.md')).map((n) => `docs/${n}`)];

describe('everything stands in the reference once', () => {
  test('every rule', () => expect(headings('rules.md', 2)).toEqual(rules.map((r) => r.name).sort()));

  test('every calculation', () => expect(headings('calculations.md', 2)).toEqual([...calculations().keys()].sort()));

  test('every block and statement', () => {
    const found = [...headings('language.md', 2), ...headings('language.md', 3)];
    const wanted = vocabulary.flatMap((b) => [b.head, ...(b.headless === undefined ? [] : [`${b.head} route`]), ...b.statements.map((s) => `${b.head} ${s.head}`), ...(b.entries ?? []).map((s) => `${b.head} entry ${s.head}`)]);
    expect(found.sort()).toEqual(['How a file is written', 'Units', 'use', ...wanted].sort());
    expect(new Set(found).size).toBe(found.length);
  });

  test('every source, under one title', () => {
    const titles = allSources().map((s) => s.source.title);
    expect(new Set(titles).size).toBe(titles.length);
    expect(titles.length).toBeGreaterThan(80);
  });

  test('every word of the glossary, with one definition', () => {
    const words = glossary.flatMap(({ terms }) => terms.flatMap((t) => [t.term, ...(t.also ?? [])])).map((w) => w.toLowerCase());
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    for (const { terms } of glossary) for (const t of terms) expect([t.means.endsWith('.'), t.means.length > 15]).toEqual([false, true]);
    expect(glossaryTerm('hollow-braid')?.term).toBe('hollow braid');
    expect(glossaryTerm('WLL')?.term).toBe('working load limit');
    expect(glossaryTerm('bollard')).toBeUndefined();
  });
});

test('every calculation shows its worked numbers, or says that none was found', () => {
  const parts = textOf('calculations.md').split(/^## /m).slice(1);
  for (const part of parts) {
    const [name] = part.split('\n', 1);
    const { worked } = calculations().get(name!)!;
    if (worked.length === 0) expect(part, name).toContain('No worked example was found: ');
    for (const { expected } of worked) expect(part, name).toContain(`| ${expected} |`);
    expect(part, name).not.toMatch(/undefined|NaN|\[object|nothing came out/);
  }
});

test('links within a page lead to a heading of it', () => {
  for (const [name, text] of pages) {
    const targets = new Set([1, 2, 3].flatMap((level) => headings(name, level)).map(headingLink));
    expect([...text.matchAll(/\]\((#[^)]*)\)/g)].map((m) => m[1]!).filter((link) => !targets.has(link)), name).toEqual([]);
  }
});

test('the pages fit an extension: few and small', () => {
  expect(pages.size).toBeLessThanOrEqual(8);
  expect([...pages.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0)).toBeLessThan(600_000);
});

/** Problems that reading and binding a text find by themselves. */
const textProblems = (rig: string): string[] => RigFile.read('example.rig', rig).bound.flatMap((chunk) => chunk.problems.map((p) => `${p.code}: ${p.message}`));

describe('examples of the documents', () => {
  interface Fence {
    readonly document: string;
    readonly rig: string;
    readonly before: string;
  }
  const fences = documents.flatMap((document): Fence[] => {
    const text = readFileSync(join(root, document), 'utf8');
    return [...text.matchAll(/^(`{3,})rig\n([\s\S]*?)^\1$/gm)].map((m) => ({ document, rig: m[2]!, before: text.slice(Math.max(0, m.index - 400), m.index) }));
  });
  // What is shown because something is wrong with it: a rule's bad example, and a step of the tutorial that says what it finds.
  const meantToFail = ({ before }: Fence): boolean => /\*\*Found in\*\*\s*$/.test(before) || /<!-- found: .*bare-number.* -->\s*$/.test(before);

  test('are read without a problem of their text, unless they show one', () => {
    const whole = fences.filter((f) => !meantToFail(f));
    expect(whole.length).toBeGreaterThan(300);
    expect(whole.flatMap((f) => textProblems(f.rig).map((problem) => `${f.document}: ${problem}\n${f.rig}`))).toEqual([]);
  });

  test('every bad example of a rule stands there', () => {
    for (const rule of rules) expect(textOf('rules.md')).toContain(rule.bad.trimEnd());
    expect(fences.filter((f) => f.document === 'docs/reference/rules.md' && meantToFail(f))).toHaveLength(rules.length);
  });

  test('a problem in an example is seen', () => {
    expect(textProblems('line main {\n  lenght 30 m\n}\n')).toEqual([expect.stringContaining('unknown-statement')]);
    expect(textProblems('line main {\n  length 30\n}\n')).toEqual([expect.stringContaining('bare-number')]);
  });
});

describe('paths that the documents name', () => {
  const built = new Set([...Object.values(bundles).map(({ out }) => out), 'dist/linewright.vsix']);
  const looksLikePath = /^(?:[\w.<>*-]+\/)+[\w.<>*-]*$|^[\w-]+\.(?:ts|md|json|mjs)$/;

  /** The paths in code spans, indented code and maps of folders; what stands for a name is cut off. */
  function pathsIn(text: string): string[] {
    const spans = [...withoutFences(text).matchAll(/`([^`\n]+)`|^ {4,}(.+)$/gm)].flatMap((m) => (m[1] ?? m[2]!).split(/\s+/));
    return [...new Set(spans.map((word) => word.replace(/[,;:)]+$/, '')).filter((word) => looksLikePath.test(word) && !/^(?:node|origin)\//.test(word)))];
  }

  // A bare name speaks of a file that the sentence has led to.
  const names = new Set(['src-core', 'server', 'client', 'tests'].flatMap((folder) => readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })).map((path) => basename(path)));

  const exists = (document: string, path: string): boolean => {
    if (built.has(path) || (!path.includes('/') && names.has(path))) return true;
    // `rules/<code>.ts` and `mechanics/*-calculations.ts` name a folder.
    const fixed = /[<*]/.test(path) ? dirname(path.slice(0, path.search(/[<*]/)) + 'x') : path;
    return [root, dirname(join(root, document)), join(root, 'src-core'), join(root, 'tests')].some((from) => existsSync(join(from, fixed)));
  };

  test.each(documents.filter((d) => !d.startsWith('docs/reference/')))('%s', (document) => {
    const paths = pathsIn(readFileSync(join(root, document), 'utf8'));
    expect(paths.filter((path) => !exists(document, path))).toEqual([]);
  });

  test('a path that leads nowhere is seen', () => {
    expect(pathsIn('see `src-core/nowhere.ts` and `rules/<code>.ts`, or `8.4 m`')).toEqual(['src-core/nowhere.ts', 'rules/<code>.ts']);
    expect(exists('README.md', 'src-core/nowhere.ts')).toBe(false);
    expect(exists('README.md', 'rules/<code>.ts')).toBe(true);
    expect(exists('README.md', 'ruls/<code>.ts')).toBe(false);
  });
});
