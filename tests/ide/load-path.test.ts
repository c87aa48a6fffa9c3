import { expect, test } from 'vitest';
import { pathFrom, useEdits } from '../../src-core/ide/file-rename.ts';
import { loadedBy, loadedThingAt, loads, type LoadStep } from '../../src-core/ide/load-path.ts';
import { cursorIn, day, line, winch } from './cursor.ts';

const rig = `${winch}
${line}}

shackle bow {
  wll  6.5 t
}

strap trunk {
  wll  4 t
}

chain reach {
  main outboard -> bow -> shackle bow 19 mm -> trunk
}
`;

const told = (steps: readonly LoadStep[]): string[] => steps.map((s) => `${s.thing.name}: ${s.thing.detail}`);

test.each([
  ['line main', 'line ma$0in', ['bow-winch: load 42 kN · winch · 23.1 kN to 42 kN · 27.67 m usable'], ['bow: load 42 kN · shackle · limit 63.7 kN']],
  ['-> bow ->', '-> b$0ow ->', ['main: load 42 kN · line · 30 m · 82.8 to 92 kN at its weakest place (outboard end)'], ['trunk: load 42 kN · strap · limit 39.2 kN']],
  ['strap trunk', 'strap tr$0unk', ['bow: load 42 kN · shackle · limit 63.7 kN'], []],
])('along the path of the load at %s', (plain, marked, before, after) => {
  const { project, path, offset } = cursorIn(rig.replace(plain, marked));
  expect(told(loadedBy(project, path, offset, day))).toEqual(before);
  expect(told(loads(project, path, offset, day))).toEqual(after);
});

test('what has no name is on no path', () => {
  const { project, path, offset } = cursorIn(rig.replace('42 kN', '4$02 kN'));
  expect(loadedThingAt(project, path, offset, day)).toBeUndefined();
  expect(loads(project, path, offset, day)).toEqual([]);
});

test('moving files rewrites the paths that lead to them, and those they write', () => {
  const { project } = cursorIn('=== a.rig\n$0use "b.rig"\n=== rigs/c.rig\nuse "../b.rig"\n=== b.rig\nuse "parts/d.rig"\n=== parts/d.rig\n\n');
  const moves = (from: string, to: string): string[] => useEdits(project, [{ from, to }]).map((e) => `${e.path} ${e.text}`);
  expect(moves('b.rig', 'rigs/b.rig')).toEqual(['a.rig rigs/b.rig', 'b.rig ../parts/d.rig', 'rigs/c.rig b.rig']);
  expect(moves('parts', 'common')).toEqual(['b.rig common/d.rig']);
  expect(moves('a.rig', 'z.rig')).toEqual([]);
});

test.each(['we"ird.rig', 'back\\slash.rig', 'two\nlines.rig'])('a path that cannot be written between quotes is not written: %j', (to) => {
  const { project } = cursorIn('=== a.rig\n$0use "b.rig"\n=== b.rig\n\n');
  expect(useEdits(project, [{ from: 'b.rig', to }])).toEqual([]);
});

test('paths between files', () => {
  expect([pathFrom('a.rig', 'b/c.rig'), pathFrom('b/c.rig', 'a.rig'), pathFrom('b/x/c.rig', 'b/y/d.rig')]).toEqual(['b/c.rig', '../a.rig', '../y/d.rig']);
});
