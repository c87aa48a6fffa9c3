import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import { formatFile } from '../../src-core/syntax/format.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { askFuzz, drawFuzz, fuzzPath, fuzzProject, judgeFuzz } from './drive-rig.ts';

const day = readDay('2026-06-22')!;
const many = (n: number, make: (i: number) => string): string => Array.from({ length: n }, (_, i) => make(i)).join('');

/** Texts that grow in one direction only, by how many pieces. */
const growing: Readonly<Record<string, { readonly pieces: number; readonly text: (n: number) => string }>> = {
  'words on one line': { pieces: 100_000, text: (n) => `line a { ${'x '.repeat(n)}}\n` },
  'one word': { pieces: 500_000, text: (n) => 'x'.repeat(n) },
  'blocks on one line': { pieces: 4000, text: (n) => 'line a {}'.repeat(n) },
  'nested braces': { pieces: 50_000, text: (n) => 'line a {'.repeat(n) },
  'forgotten braces': { pieces: 4000, text: (n) => 'winch a {\n  rated 3 kN\n'.repeat(n) },
  'closing braces': { pieces: 10_000, text: (n) => '}\n'.repeat(n) },
  'names': { pieces: 5000, text: (n) => many(n, (i) => `anchor a${i} {\n  kind tree\n}\n`) },
  'one name again and again': { pieces: 5000, text: (n) => 'anchor a {\n  kind tree\n}\n'.repeat(n) },
  'names that nothing has': { pieces: 3000, text: (n) => many(n, (i) => `chain c${i} {\n  n${i} -> m${i}\n}\n`) },
  'names that nearly are known': { pieces: 2000, text: (n) => many(n, (i) => `strap strap-${i} {\n  wll 4 t\n}\nchain c${i} {\n  strop-${i} -> strap-${i}\n}\n`) },
  'points of a vehicle': { pieces: 10_000, text: (n) => `vehicle a {\n${many(n, (i) => `  point p${i} rated 4 t\n`)}}\n` },
  'a statement again and again': { pieces: 5000, text: (n) => `winch a {\n${'  rated 4 kN\n'.repeat(n)}}\n` },
  'a logbook': { pieces: 3000, text: (n) => `line a {\n  material HMPE\n  diameter 10 mm\n  length 30 m\n${'  2026-05-02  inspected "x"\n'.repeat(n)}}\n` },
  'a route': { pieces: 4000, text: (n) => `chain c {\n  ${many(n, (i) => `a${i} -> `)}x\n}\n` },
  'a number': { pieces: 250_000, text: (n) => `line a {\n  length ${'9'.repeat(n)} m\n}\n` },
  'commas in a number': { pieces: 30_000, text: (n) => `line a {\n  length ${'9,999'.repeat(n)} m\n}\n` },
  'fractions': { pieces: 50_000, text: (n) => `line a {\n  length ${'9/'.repeat(n)} m\n}\n` },
  'dates': { pieces: 40_000, text: (n) => '2026-06-'.repeat(n) },
  'hyphens': { pieces: 100_000, text: (n) => 'a-'.repeat(n) },
  'quotes': { pieces: 50_001, text: (n) => '"'.repeat(n) },
  'NULs': { pieces: 200_000, text: (n) => '\u0000'.repeat(n) },
  'lone surrogates': { pieces: 50_000, text: (n) => '\ud800 \udfff'.repeat(n) },
  'byte order marks': { pieces: 50_000, text: (n) => `${'\ufeff'.repeat(n)}line a {\n}\n` },
  'carriage returns': { pieces: 100_000, text: (n) => '\r'.repeat(n) },
  'mixed line ends': { pieces: 4000, text: (n) => 'x\r\n\r\n\ry\n'.repeat(n) },
  'combining marks': { pieces: 200_000, text: (n) => `a${'\u0301'.repeat(n)}` },
  'comments': { pieces: 20_000, text: (n) => '# x\n'.repeat(n) },
  'reasons in a stack': { pieces: 4000, text: (n) => `${'# allow missing-fact: x\n'.repeat(n)}line a {\n}\n` },
  'reasons in a block': { pieces: 2000, text: (n) => `line a {\n${'# allow missing-fact: x\n  material HMPE\n'.repeat(n)}}\n` },
  'reasons behind statements': { pieces: 20_000, text: (n) => `line a {\n${many(n, (i) => `  length ${i} m # allow bare-number: x\n`)}}\n` },
  'rubbish': { pieces: 30_000, text: (n) => ':;=!? '.repeat(n) },
  'marks of a merge': { pieces: 4000, text: (n) => '<<<<<<< a\n=======\n>>>>>>> b\n'.repeat(n) },
  'files that are used': { pieces: 5000, text: (n) => many(n, (i) => `use "f${i}.rig"\n`) },
  'a path': { pieces: 100_000, text: (n) => `use "${'a/../'.repeat(n)}x.rig"\n` },
  'clauses': { pieces: 10_000, text: (n) => `line a {\n  outboard eye ${'bury 72 d '.repeat(n)}\n}\n` },
  'a label': { pieces: 1_000_000, text: (n) => `line a "${'x'.repeat(n)}" {\n}\n` },
};

/** Milliseconds of work of this process; what else the machine does is not counted. */
function work(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function readAll(text: string): string[] {
  const project = fuzzProject(text);
  const wrong = judgeFuzz(project);
  project.edit(fuzzPath, { start: text.length >> 1, end: (text.length >> 1) + 1, text: 'q' });
  wrong.push(...judgeFuzz(project));
  formatFile(text, topHeads);
  return wrong;
}

describe('four times the text takes about four times the work', () => {
  // Twice as long for each doubling would be sixteen times; below this much work the clock tells nothing.
  const most = 11;
  const least_ms = 120;
  test.each(Object.keys(growing))('%s', (name) => {
    const { pieces, text } = growing[name]!;
    const [small, large] = [text(pieces >> 1), text(2 * pieces)];
    expect(readAll(small)).toEqual([]);
    // The machine may take time out for itself: the best of three tries counts.
    const ratios: number[] = [];
    for (let i = 0; i < 3 && !(ratios.at(-1)! < most); i++) {
      const first = Math.max(least_ms, work(() => readAll(small)));
      ratios.push(work(() => readAll(large)) / first);
    }
    expect(Math.min(...ratios)).toBeLessThan(most);
  });
});

test('10 MB on one line, and as one word', () => {
  expect(judgeFuzz(fuzzProject(`line a "${'x'.repeat(10_000_000)}" {\n}\n`))).toEqual([]);
  expect(judgeFuzz(fuzzProject('x'.repeat(10_000_000)))).toEqual([]);
  expect(judgeFuzz(fuzzProject(`line a { ${'xy z '.repeat(200_000)}`))).toEqual([]);
});

test('blocks nested deeper than the language knows are cut, and that is said', () => {
  const project = fuzzProject('line a {'.repeat(100_000));
  expect(project.findings(fuzzPath, day).map((f) => f.code)).toContain('nested-too-deep');
});

const odd = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', '__defineGetter__', 'then'];

test.each(odd)('%s is a name like any other', (name) => {
  const text = `strap ${name} {\n  wll 4 t\n}\n\nanchor larch {\n  kind tree\n}\n\nchain reach {\n  ${name} -> larch\n}\n`;
  const project = fuzzProject(text);
  expect(project.findings(fuzzPath, day).map((f) => f.code)).not.toContain('unknown-name');
  const at = text.indexOf(name);
  expect(askFuzz(project, [at, at + 2, text.lastIndexOf(name) + 1])).toEqual([]);
  expect(drawFuzz(project)).toEqual([]);
});

test.each(odd)('%s stands nowhere for a word of the language', (name) => {
  const place = (text: string): string[] => {
    const project = fuzzProject(text);
    expect(judgeFuzz(project)).toEqual([]);
    expect(askFuzz(project, [...text.matchAll(new RegExp(name, 'g'))].map((m) => m.index + 1))).toEqual([]);
    return project.findings(fuzzPath, day).map((f) => f.code);
  };
  expect(place(`${name} a {\n}\n`)).toContain('unknown-block');
  expect(place(`line a {\n  ${name} 3 m\n}\n`)).toContain('unknown-statement');
  expect(place(`line a {\n  material ${name}\n}\n`)).toContain('unknown-word');
  expect(place(`line a {\n  length 3 ${name}\n}\n`).some((code) => code === 'unknown-unit' || code === 'bare-number' || code === 'unexpected-value')).toBe(true);
  expect(place(`line a {\n  outboard eye thimble ${name}\n}\n`)).toContain('unknown-word');
  expect(place(`practice {\n  severity ${name} off\n}\n`).length).toBeGreaterThan(0);
  expect(place(`# allow ${name}: x\nline a {\n}\n`)).toBeDefined();
});

test('letters that look alike are other letters', () => {
  const found = fuzzProject('strap main {\n  wll 4 t\n}\n\nanchor larch {\n  kind tree\n}\n\nchain reach {\n  m\u0430in -> larch\n}\n').findings(fuzzPath, day);
  expect(found.map((f) => f.code)).toContain('unknown-name');
  expect(found.find((f) => f.code === 'unknown-name')!.help).toContain('`main`');
});

describe('files that use each other', () => {
  const projectOf = (texts: Readonly<Record<string, string>>): Project => {
    const project = new Project();
    for (const [path, text] of Object.entries(texts)) project.set(path, text);
    for (const path of project.wanted()) project.setAbsent(path, 'missing');
    return project;
  };
  const codes = (project: Project, path: string): string[] => project.findings(path, day).map((f) => f.code);
  const larch = 'anchor larch {\n  kind tree\n}\n';

  test('a chain of 1,000, its end in sight', () => {
    const depth = 1000;
    const texts: Record<string, string> = { [`f${depth}.rig`]: larch };
    for (let i = 0; i < depth; i++) texts[`f${i}.rig`] = `use "f${i + 1}.rig"\n`;
    texts['f0.rig'] += 'strap s {\n  wll 4 t\n}\n\nchain reach {\n  s -> larch\n}\n';
    const project = projectOf(texts);
    expect(project.roots()).toEqual(['f0.rig']);
    expect(codes(project, 'f0.rig')).not.toContain('unknown-name');
    project.edit(`f${depth}.rig`, { start: 'anchor '.length, end: 'anchor '.length + 1, text: 'm' });
    expect(codes(project, 'f0.rig')).toContain('unknown-name');
  });

  test('a loop of 1,000 is said once, where it closes', () => {
    const texts = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`f${i}.rig`, `use "f${(i + 1) % 1000}.rig"\n`]));
    const project = projectOf(texts);
    expect(project.roots()).toHaveLength(1);
    expect([...project.paths].flatMap((path) => codes(project, path))).toEqual(['use-loop']);
  });

  test('diamonds on diamonds are walked once each', () => {
    const levels = 200;
    const texts: Record<string, string> = { [`l${levels}.rig`]: larch, [`r${levels}.rig`]: '' };
    for (let i = 0; i < levels; i++) for (const side of ['l', 'r']) texts[`${side}${i}.rig`] = `use "l${i + 1}.rig"\nuse "r${i + 1}.rig"\n`;
    const project = projectOf(texts);
    const judged = project.judge('l0.rig', day);
    expect(judged.files.size).toBe(2 * levels + 1);
    expect([...judged.files.values()].flatMap((f) => f.findings.map((x) => x.code))).toEqual([]);
  });

  test.each(['../x.rig', '/etc/passwd', 'C:/x.rig', 'a\\..\\..\\x.rig', '\\\\server\\x.rig', 'file:///x.rig', 'a/../../x.rig', '..', '.', '', 'a\u0000b.rig', './../x.rig', 'x'.repeat(2000)])('%j never leads out of the folder', (path) => {
    const project = new Project();
    project.set('sub/a.rig', `use "${path}"\n`);
    project.set('top.rig', `use "${path}"\n`);
    for (const wanted of project.wanted()) {
      expect(wanted.split('/')).not.toContain('..');
      expect(wanted).not.toMatch(/^\/|\\|^[A-Za-z]:[\\/]|\u0000/);
    }
    expect(codes(project, 'top.rig').length).toBeGreaterThan(0);
  });
});
