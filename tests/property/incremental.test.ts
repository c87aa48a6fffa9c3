import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { LineIndex } from '../../src-core/base/line-index.ts';
import { Project } from '../../src-core/project.ts';

const folder = join(import.meta.dirname, '../../examples');
const start: Record<string, string> = { 'plover.rig': readFileSync(join(folder, 'plover.rig'), 'utf8'), 'practice.rig': readFileSync(join(folder, 'practice.rig'), 'utf8') };
const day = readDay('2026-06-22')!;

const bits = ['{', '}', '\n', '"', '#', ' ', '9', 'kN', 'line tail {\n', 'main', 'mian', 'bow-22', 'use "other.rig"\n', 'wll 1 t\n', '  2026-06-30  cut  at 3 m from inboard\n', 'practice {\n  line-factor 3\n}\n', '# allow bury-too-short: tried\n', ''];

/** Everything that is said about every file, as text. */
function said(project: Project): string {
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  return [...project.paths].sort().map((path) => {
    const file = project.file(path)!;
    const lines = project.findings(path, day).map((f) => {
      const span = file.spanOf(f.place)!;
      return [span.start, span.end, f.severity, f.code, f.message, f.why, f.help, f.related.length, f.fixes.map((x) => x.title).join()].join('|');
    });
    const counts = project.rootsOf(path).map((root) => project.judge(root, day).files.get(path)!.blocks.map((b) => `${b.block.name}:${b.made}/${b.failed}/${b.notJudged.length}`).join(' '));
    return [path, ...counts, ...lines].join('\n');
  }).join('\n\n');
}

test('after any edits the project says what it would say of the same text read from scratch', () => {
  const edit = fc.record({
    path: fc.constantFrom('plover.rig', 'plover.rig', 'plover.rig', 'practice.rig', 'other.rig'),
    where: fc.double({ min: 0, max: 1, noNaN: true }),
    remove: fc.oneof({ weight: 4, arbitrary: fc.nat(3) }, fc.nat(120)),
    insert: fc.array(fc.constantFrom(...bits), { maxLength: 2 }),
    // Mostly a word or a value changes, as when somebody types: that is what other blocks hang on.
    swap: fc.option(fc.constantFrom<readonly [RegExp, string]>([/\bmain\b/g, 'mian'], [/\bmian\b/g, 'main'], [/\btail\b/g, 'tial'], [/\btial\b/g, 'tail'], [/92 kN/g, '60 kN'], [/60 kN/g, '92 kN'], [/72 d/g, '40 d'], [/30 m\b/g, '33 m'], [/\bbow-22\b/g, 'bow-24'], [/HMPE/g, 'nylon'], [/line-factor +2/g, 'bury HMPE 40 d\n  line-factor 2'], [/bury HMPE 40 d\n/g, '\n'], [/42 kN/g, '70 kN'], [/10 mm/g, '12 mm'], [/2026-06-21 {2}damage/g, '2026-06-21  retired  "x" #']), { freq: 4 }),
  });
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 10 }), (edits) => {
      const project = new Project();
      for (const [path, text] of Object.entries(start)) project.set(path, text);
      said(project);
      for (const { path, where, remove, insert, swap } of edits) {
        const before = project.file(path)?.text;
        const places = before === undefined || swap === null ? [] : [...before.matchAll(swap[0])];
        if (before !== undefined && swap !== null && places.length > 0) {
          const m = places[Math.floor(where * (places.length - 1))]!;
          project.edit(path, { start: m.index, end: m.index + m[0].length, text: swap[1] });
        } else if (before === undefined) project.set(path, insert.join(''));
        else {
          const at = Math.floor(where * before.length);
          project.edit(path, { start: at, end: Math.min(before.length, at + remove), text: insert.join('') });
        }
        said(project);
      }
      const scratch = new Project();
      for (const path of project.paths) scratch.set(path, project.file(path)!.text);
      expect(said(project)).toBe(said(scratch));
    }),
    { numRuns: 150 },
  );
});

test('a line index after an edit is the index of the new text', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom('a', '\n', '\r', 'b') }), fc.nat(30), fc.nat(5), fc.string({ unit: fc.constantFrom('x', '\n', '\r'), maxLength: 4 }), (text, at, remove, insert) => {
      const s = Math.min(at, text.length);
      const e = Math.min(text.length, s + remove);
      const now = text.slice(0, s) + insert + text.slice(e);
      const edited = new LineIndex(text).edited(now, s, e, insert.length);
      const scratch = new LineIndex(now);
      expect(edited.lineCount).toBe(scratch.lineCount);
      for (let i = 0; i <= now.length; i++) expect(edited.lineColumn(i)).toEqual(scratch.lineColumn(i));
    }),
    { numRuns: 500 },
  );
});
