import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import { splitChunks } from '../../src-core/syntax/chunk.ts';
import type { Statement } from '../../src-core/syntax/tree.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

const folder = join(import.meta.dirname, '../../examples');
const examples = readdirSync(folder).filter((n) => n.endsWith('.rig'));
const day = readDay('2026-06-22')!;

/** Reads, binds and judges a text; gives what is out of its bounds. */
function outside(text: string, judge: boolean): string[] {
  const wrong: string[] = [];
  let at = 0;
  for (const { chunk, offset } of splitChunks(text, topHeads)) {
    if (offset !== at) wrong.push(`a chunk begins at ${offset}, not at ${at}`);
    at = offset + chunk.text.length;
    const inside = (start: number, end: number): void => {
      if (start < 0 || end < start || end > chunk.text.length) wrong.push(`${start}..${end} lies outside a chunk of ${chunk.text.length}`);
    };
    const visit = (s: Statement): void => {
      inside(s.start, s.end);
      for (const t of s.tokens) {
        inside(t.start, t.end);
        if (chunk.text.slice(t.start, t.end) !== t.text) wrong.push(`token ${t.text} is not what stands there`);
      }
      s.block?.statements.forEach(visit);
    };
    chunk.tree.statements.forEach(visit);
    for (const p of chunk.tree.problems) inside(p.start, p.end);
    for (const c of chunk.tree.comments) inside(c.start, c.end);
  }
  if (at !== text.length) wrong.push(`the chunks end at ${at} of ${text.length}`);
  if (!judge) return wrong;
  const project = new Project();
  project.set('x.rig', text);
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  const file = project.file('x.rig')!;
  for (const finding of project.findings('x.rig', day)) {
    const span = file.spanOf(finding.place)!;
    if (span.start < 0 || span.end < span.start || span.end > text.length) wrong.push(`${finding.code} stands at ${span.start}..${span.end} of ${text.length}`);
  }
  return wrong;
}

describe.each(examples)('%s', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  /** Reading is tried everywhere; what is read is judged at every third place, which still falls into every word. */
  const judged = (i: number): boolean => i % 3 === name.length % 3;

  test('every prefix is read without throwing, and every third judged, spans inside', () => {
    for (let end = 0; end <= text.length; end++) expect(outside(text.slice(0, end), judged(end)), `prefix ${end}`).toEqual([]);
  });

  test('every text less one character is read without throwing, and every third judged, spans inside', () => {
    for (let i = 0; i < text.length; i++) expect(outside(text.slice(0, i) + text.slice(i + 1), judged(i)), `without ${i}`).toEqual([]);
  });

  test('a broken line costs that line only', () => {
    const lines = text.split('\n');
    for (let i = 0; i < lines.length; i++) {
      if (!/^ {2}\S/.test(lines[i]!) || /[{}]/.test(lines[i]!)) continue;
      const broken = [...lines.slice(0, i), '  %% ?!', ...lines.slice(i + 1)].join('\n');
      const project = new Project();
      project.set('x.rig', broken);
      const file = project.file('x.rig')!;
      const textual = file.bound.flatMap((c) => c.problems).map((p) => file.lines.lineColumn(file.spanOf(p.place)!.start).line);
      expect([...new Set(textual)], `line ${i + 1}`).toEqual([i]);
    }
  });
});

describe('any text', () => {
  const hostile: Record<string, string> = {
    'nested braces': 'line a {'.repeat(2000) + '}'.repeat(1000),
    'one long line': 'x '.repeat(200_000),
    'a long number': `line a {\n length ${'9'.repeat(100_000)} m\n}\n`,
    'no end of a quote': '"'.repeat(1001) + '\n',
    NUL: 'line \u0000 {\n\u0000length 3 m\n}\n',
    'lone surrogates': 'line \ud800 { length \udfff 3 m\n}\n',
    BOM: '\ufeffline a {\n  length 3 m\n}\n',
    'mixed line ends': 'line a {\r  length 3 m\r\n  diameter 1 mm\n}\r',
    'look-alikes': 'line mаin {\n  length ３ m\n  diameter 10 ㎜\n}\n',
    conflict: '<<<<<<< ours\nline a {\n=======\nline b {\n>>>>>>> theirs\n  length 3 m\n}\n',
  };
  test.each(Object.keys(hostile))('%s', (name) => {
    expect(outside(hostile[name]!, true)).toEqual([]);
  });
});
