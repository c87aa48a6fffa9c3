import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import { rigText, rigTextDay } from '../support/rig-text.ts';

const day = readDay(rigTextDay)!;
const path = 'fleet.rig';

test.each([100, 1000, 3000])('nothing is found in a made-up rig of %i lines', (lines) => {
  const text = rigText(lines, 3);
  expect(text.split('\n').length).toBeGreaterThan(lines - 20);
  const project = new Project();
  project.set(path, text);
  expect(project.findings(path, day).map((f) => f.message)).toEqual([]);
});

describe('an edit costs what hangs on it, however long the file is', () => {
  /** How many chunks and blocks are new after an edit in the middle of a file. */
  function renewed(lines: number, place: RegExp): { readonly chunks: number; readonly bound: number; readonly judged: number } {
    const project = new Project();
    project.set(path, rigText(lines, 3));
    const parts = () => {
      const file = project.file(path)!;
      return { chunks: file.chunks.map((c) => c.chunk), bound: file.bound, judged: project.judge(path, day).files.get(path)!.blocks };
    };
    const before = parts();
    const places = [...project.file(path)!.text.matchAll(place)];
    // In the short file only the first truck is whole.
    const at = places[lines < 1000 ? 0 : places.length >> 1]!;
    const end = at.index + at[0].length;
    project.edit(path, { start: end - 1, end, text: String((Number(at[0].at(-1)) + 1) % 10) });
    const after = parts();
    const fresh = (a: readonly object[], b: readonly object[]): number => {
      const known = new Set(a);
      return b.filter((x) => !known.has(x)).length;
    };
    return { chunks: fresh(before.chunks, after.chunks), bound: fresh(before.bound, after.bound), judged: fresh(before.judged, after.judged) };
  }

  test.each([
    ['a grade, beside which only its chain is judged', /grade +\d\d/g, 2],
    ['the body of a shackle in a chain with a pull', /body +\d\d/g, 4],
    ['a mass of a vehicle that is pulled', /mass +2,\d\d\d/g, 4],
    ['the length of a line on a winch', /length {8}\d\d/g, 5],
  ] as const)('%s', (_, place, most) => {
    const [small, large] = [renewed(100, place), renewed(10_000, place)];
    expect(large.chunks).toBe(1);
    expect(large.bound).toBe(1);
    expect(large.judged).toBeGreaterThan(0);
    expect(large.judged).toBeLessThanOrEqual(most);
    expect(large).toEqual(small);
  });
});

test('two edits far apart leave what stands between them', () => {
  const project = new Project();
  project.set(path, rigText(10_000, 3));
  const judged = () => new Set<object>(project.judge(path, day).files.get(path)!.blocks);
  const before = judged();
  const places = [...project.file(path)!.text.matchAll(/grade +\d\d/g)];
  for (const at of [places[0]!, places.at(-1)!]) {
    const end = at.index + at[0].length;
    project.edit(path, { start: end - 1, end, text: String((Number(at[0].at(-1)) + 1) % 10) });
  }
  expect(before.size).toBeGreaterThan(500);
  expect([...judged()].filter((block) => !before.has(block))).toHaveLength(4);
});

test('a file of a fleet is judged again alone: the other roots keep their answer', () => {
  const project = new Project();
  project.set('shared.rig', 'anchor larch {\n  kind     tree\n  girth    1.5 m\n  holding  48 kN "tested"\n}\n');
  for (let i = 0; i < 20; i++) project.set(`f${i}.rig`, rigText(80, i, { prefix: `f${i}-`, shared: { use: 'shared.rig', anchor: 'larch' } }));
  const judged = (): readonly object[] => project.roots().map((root) => project.judge(root, day));
  const before = judged();
  expect(before).toHaveLength(20);
  expect([...project.paths].flatMap((p) => project.findings(p, day).map((f) => f.message))).toEqual([]);
  const at = project.file('f7.rig')!.text.indexOf('kg');
  project.edit('f7.rig', { start: at - 2, end: at - 1, text: '1' });
  expect(judged().filter((root, i) => root !== before[i])).toHaveLength(1);
  const shared = project.file('shared.rig')!.text.indexOf('48 kN');
  project.edit('shared.rig', { start: shared, end: shared + 2, text: '47' });
  expect(judged().filter((root, i) => root === before[i])).toHaveLength(0);
});
