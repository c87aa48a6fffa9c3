import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { Project, RigFile } from '../../src-core/project.ts';

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

/** Judges a few blocks and looks at what is found by then: as much of it as can be told. */
function someSaid(project: Project, path: string, blocks: number): void {
  const some = (most: number): number[] => project.rootsOf(path).map((root) => project.judgeSome(root, day, most));
  some(blocks);
  const found = project.foundSoFar(path, day);
  const file = project.file(path)!;
  for (const chunk of file.bound) for (const { code, place } of chunk.problems) if (chunk.allowances.length === 0) expect(found.some((f) => f.code === code && f.place.chunk === place.chunk && f.place.start === place.start)).toBe(true);
  for (const finding of found) expect(file.spanOf(finding.place)).toBeDefined();
  if (blocks < 8) return;
  for (const left of some(Infinity)) expect(left).toBe(0);
  expect(project.foundSoFar(path, day)).toEqual(project.findings(path, day));
}

test('after any edits the project says what it would say of the same text read from scratch', () => {
  const edit = fc.record({
    path: fc.constantFrom('plover.rig', 'plover.rig', 'plover.rig', 'practice.rig', 'other.rig'),
    where: fc.double({ min: 0, max: 1, noNaN: true }),
    remove: fc.oneof({ weight: 4, arbitrary: fc.nat(3) }, fc.nat(120)),
    insert: fc.array(fc.constantFrom(...bits), { maxLength: 2 }),
    // Mostly a word or a value changes, as when somebody types: that is what other blocks hang on.
    swap: fc.option(fc.constantFrom<readonly [RegExp, string]>([/\bmain\b/g, 'mian'], [/\bmian\b/g, 'main'], [/\btail\b/g, 'tial'], [/\btial\b/g, 'tail'], [/92 kN/g, '60 kN'], [/60 kN/g, '92 kN'], [/72 d/g, '40 d'], [/30 m\b/g, '33 m'], [/\bbow-22\b/g, 'bow-24'], [/HMPE/g, 'nylon'], [/line-factor +2/g, 'bury HMPE 40 d\n  line-factor 2'], [/bury HMPE 40 d\n/g, '\n'], [/42 kN/g, '70 kN'], [/10 mm/g, '12 mm'], [/2026-06-21 {2}damage/g, '2026-06-21  retired  "x" #']), { freq: 4 }),
    // Or nobody waits for all of it before the next edit.
    blocks: fc.option(fc.nat(8), { freq: 2 }),
    // Or what was asked for a while ago rests by then.
    rests: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 10 }), fc.boolean(), (edits, begun) => {
      const project = new Project();
      for (const [path, text] of Object.entries(start)) project.set(path, text);
      if (begun) said(project);
      for (const { path, where, remove, insert, swap, blocks, rests } of edits) {
        if (rests) project.rest({ begun: 0, told: 0, edited: 0, latest: 0 });
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
        if (blocks === null) said(project);
        else someSaid(project, path, blocks);
      }
      const scratch = new Project();
      for (const path of project.paths) scratch.set(path, project.file(path)!.text);
      expect(said(project)).toBe(said(scratch));
    }),
    { numRuns: 150 },
  );
});

test('of a root that rests what was found stays, until its text or that of a file it takes in is another one', () => {
  const project = new Project();
  const paths = ['a.rig', 'b.rig', 'c.rig'];
  for (const path of paths) project.set(path, start['plover.rig']!);
  project.set('practice.rig', start['practice.rig']!);
  const found = (path: string): string[] => project.findings(path, day).map((f) => f.message);
  const before = paths.map(found);
  const bound = project.file('a.rig')!.bound;
  project.rest({ begun: 0, told: 0, edited: 0, latest: 1 });
  expect(project.firstWork('a.rig', day)).toBe(0);
  expect(paths.map(found)).toEqual(before);
  // Nothing was worked out again for that.
  expect(project.file('a.rig')!.bound[0]).not.toBe(bound[0]);
  const text = project.file('practice.rig')!.text;
  project.edit('practice.rig', { start: 0, end: text.length, text: 'practice {\n  line-factor 50\n}\n' });
  const after = paths.map(found);
  expect(after[0]).not.toEqual(before[0]);
  expect(after[0]).toEqual(after[2]);
  project.set('practice.rig', text);
  expect(paths.map(found)).toEqual(before);
});

test('of roots that were told once few are kept, and of those that were edited more', () => {
  const project = new Project();
  const paths = Array.from({ length: 30 }, (_, i) => `f${i}.rig`);
  const most = { begun: 8, told: 5, edited: 12, latest: 3 };
  for (const [i, path] of paths.entries()) project.set(path, `strap a${i} {\n  wll  2 t\n}\n`);
  const atWork = (): string[] => {
    const before = paths.map((path) => project.file(path)!);
    project.rest({ begun: 0, told: 0, edited: 0, latest: 0 });
    return paths.filter((path, i) => project.file(path) !== before[i]);
  };
  const tell = (path: string): void => {
    expect(project.findings(path, day).map((f) => f.code)).not.toContain('unknown-word');
    project.rest(most);
  };
  paths.forEach(tell);
  expect(atWork()).toEqual(paths.slice(-5));
  paths.forEach(tell);
  for (const path of paths.slice(0, 20)) {
    project.edit(path, { start: 0, end: 0, text: '# worn\n' });
    tell(path);
  }
  for (const path of paths.slice(20)) tell(path);
  expect(atWork()).toEqual(paths.slice(8, 20));
});

test('of roots that wait to be judged few are kept, and one that is judged in steps is among them', () => {
  const project = new Project();
  const rig = start['plover.rig']!;
  const paths = Array.from({ length: 6 }, (_, i) => `f${i}.rig`);
  project.set('practice.rig', start['practice.rig']!);
  for (const path of paths) project.set(path, rig);
  const most = { begun: 1, told: 0, edited: 0, latest: 2 };
  const soon = paths.map((path) => {
    const found = project.foundSoFar(path, day).map((f) => f.message);
    project.rest(most);
    return found;
  });
  const kept = paths.map((path) => project.file(path)!);
  project.rest({ ...most, begun: 0, latest: 0 });
  expect(paths.filter((path, i) => project.file(path) !== kept[i])).toEqual(paths.slice(-2));
  // Nothing else is said of those that were let go, and each is judged to the end in as many steps as it needs.
  expect(paths.map((path) => project.foundSoFar(path, day).map((f) => f.message))).toEqual(soon);
  for (const path of paths) {
    const blocks = project.firstWork(path, day);
    let steps = 0;
    for (let left = 1; left > 0; steps++) {
      left = project.judgeSome(path, day, 1);
      for (const other of paths) if (other !== path) void project.foundSoFar(other, day);
      project.rest({ ...most, latest: 6 });
    }
    expect(steps).toBe(blocks);
    expect(project.findings(path, day)).toHaveLength(project.findings(paths[0]!, day).length);
  }
});

test('what a file said is let go with it', async () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const project = new Project();
  for (const [path, text] of Object.entries(start)) project.set(path, text);
  const held = (): WeakRef<object>[] => {
    for (const path of project.paths) void project.findings(path, day);
    return [...project.paths].flatMap((path) => {
      const file = project.file(path)!;
      void file.lines.lineColumn(1);
      return file.bound.flatMap((chunk) => chunk.blocks.map((block) => new WeakRef(block)));
    });
  };
  const blocks = held();
  expect(blocks.length).toBeGreaterThan(5);
  project.rest({ begun: 0, told: 0, edited: 0, latest: 0 });
  // What a turn of the event loop held is held until the next one.
  for (let turn = 0; turn < 20 && blocks.some((block) => block.deref() !== undefined); turn++) {
    await new Promise((done) => setTimeout(done, turn));
    collect();
  }
  expect(blocks.filter((block) => block.deref() !== undefined)).toEqual([]);
});

test('a root whose file was edited meanwhile does not rest before it is told of again', () => {
  const project = new Project();
  const nothing = { begun: Infinity, told: 0, edited: 0, latest: 0 };
  project.set('a.rig', start['plover.rig']!);
  project.set('practice.rig', start['practice.rig']!);
  void project.findings('a.rig', day);
  project.edit('a.rig', { start: 0, end: 0, text: '# worn\n' });
  const edited = project.file('a.rig');
  project.rest(nothing);
  expect(project.file('a.rig')).toBe(edited);
  const found = project.findings('a.rig', day).map((f) => f.message);
  project.rest(nothing);
  expect(project.file('a.rig')).not.toBe(edited);
  expect(project.findings('a.rig', day).map((f) => f.message)).toEqual(found);
});

test('after any edits a file has the text, lines and places of the same text read from scratch', () => {
  const piece = fc.constantFrom('a', '\n', '\r', 'line b {\n', '}\n', '"', '# c');
  fc.assert(
    fc.property(fc.string({ unit: piece }), fc.array(fc.tuple(fc.nat(30), fc.nat(5), fc.string({ unit: piece, maxLength: 4 })), { minLength: 1, maxLength: 4 }), fc.boolean(), (text, edits, asked) => {
      let now = text;
      let file = RigFile.read('x.rig', text);
      if (asked) void file.lines;
      for (const [at, remove, insert] of edits) {
        const start = Math.min(at, now.length);
        const end = Math.min(now.length, start + remove);
        now = now.slice(0, start) + insert + now.slice(end);
        file = file.edited({ start, end, text: insert });
        const scratch = RigFile.read('x.rig', now);
        expect(file.text).toBe(now);
        expect(file.length).toBe(now.length);
        expect(file.chunks.map((c) => [c.offset, c.chunk.text])).toEqual(scratch.chunks.map((c) => [c.offset, c.chunk.text]));
        for (const [i, { chunk }] of file.chunks.entries()) expect(file.indexOf(chunk)).toBe(i);
        const starts = [0, ...[...now.matchAll(/\r\n|\n|\r/g)].map((m) => m.index + m[0].length)];
        expect(file.lines.lineCount).toBe(starts.length);
        starts.forEach((s, line) => {
          expect(file.lines.lineStart(line)).toBe(s);
          expect(file.lines.lineEnd(line)).toBe(s + /^[^\r\n]*/.exec(now.slice(s))![0].length);
        });
        for (let i = 0; i <= now.length; i++) {
          const line = starts.findLastIndex((s) => s <= i);
          expect(file.lines.lineColumn(i)).toEqual({ line, column: i - starts[line]! });
          expect(file.lines.offset(line, i - starts[line]!)).toBe(Math.min(i, file.lines.lineEnd(line)));
        }
      }
    }),
    { numRuns: 400 },
  );
});
