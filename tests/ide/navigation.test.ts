import { expect, test } from 'vitest';
import { definitionAt } from '../../src-core/ide/definition.ts';
import { documentLinks } from '../../src-core/ide/document-links.ts';
import { highlightsAt, referencesAt } from '../../src-core/ide/references.ts';
import { renameAt, renameStart } from '../../src-core/ide/rename.ts';
import { workspaceSymbols } from '../../src-core/ide/workspace-symbols.ts';
import { cursorIn, day, line, shown, winch } from './cursor.ts';

function definition(fixture: string): string {
  const { project, path, offset } = cursorIn(fixture);
  const found = definitionAt(project, path, offset, day);
  return found === undefined ? 'nothing' : shown(project, found.target.path, found.target);
}
function references(fixture: string): string[] {
  const { project, path, offset } = cursorIn(fixture);
  return referencesAt(project, path, offset, day).map((r) => `${shown(project, r.path, r)}${r.declares ? ' declared' : ''}`);
}

const two = `=== a.rig
use "b.rig"

winch bow-winch {
  carries  ma$0in
}

chain reach {
  main outboard -> trunk
}
=== b.rig
${line}}

strap trunk {
  wll  4 t
}
`;

test('a name leads to where it is declared, in whichever file', () => {
  expect(definition(two)).toBe('b.rig:1 main');
  expect(definition(two.replace('ma$0in', 'main').replace('-> trunk', '-> tr$0unk'))).toBe('b.rig:11 trunk');
  expect(definition(`${line}}\n\nrepair fix on main {\n  cut  at 8 m from inboard keep tail\n  splice  ta$0il inboard eye\n}\n`)).toBe('a.rig:12 tail');
});

test('the end of a line leads to the statement that made it', () => {
  expect(definition(two.replace('ma$0in', 'main').replace('main outboard', 'main out$0board'))).toBe('b.rig:8 outboard  eye thimble tube bury 72 d taper 24 d');
});

test('a recovery point leads to its vehicle, a use to its file', () => {
  expect(definition('vehicle plover {\n  point  bow rated 4.7 t\n}\n\nstrap s {\n}\n\nchain c {\n  s -> plover b$0ow\n}\n')).toBe('a.rig:2 bow');
  expect(definition('vehicle plover {\n  point  bow rated 4.7 t\n}\n\nanchor parked {\n  kind     vehicle\n  vehicle  plover\n}\n\nstrap s {\n}\n\nchain c {\n  s -> parked b$0ow\n}\n')).toBe('a.rig:2 bow');
  expect(definition('=== a.rig\nuse "b$0.rig"\n=== b.rig\nstrap s {\n}\n')).toBe('b.rig:1 ');
});

test('what is not declared leads nowhere', () => {
  expect(definition('winch w {\n  carries  no$0thing\n}\n')).toBe('nothing');
  expect(definition('use "gone$0.rig"\n')).toBe('nothing');
});

test('references reach every file that is read with the declaration', () => {
  expect(references(two)).toEqual(['a.rig:4 main', 'a.rig:8 main', 'b.rig:1 main declared']);
  expect(references(two.replace('ma$0in', 'main').replace('line main', 'line ma$0in'))).toEqual(['a.rig:4 main', 'a.rig:8 main', 'b.rig:1 main declared']);
});

test('the same name of another scope is left alone', () => {
  expect(references(`${two}=== c.rig\n${line}}\n\nwinch other {\n  carries  main\n}\n`)).toEqual(['a.rig:4 main', 'a.rig:8 main', 'b.rig:1 main declared']);
});

test('highlights stay in the file', () => {
  const { project, path, offset } = cursorIn(two);
  expect(highlightsAt(project, path, offset, day).map((h) => shown(project, path, h))).toEqual(['a.rig:4 main', 'a.rig:8 main']);
});

test('rename changes every place, in every file', () => {
  const { project, path, offset } = cursorIn(two);
  expect(renameStart(project, path, offset, day)).toMatchObject({ name: 'main' });
  const rename = renameAt(project, path, offset, day, 'blue')!;
  expect('edits' in rename && rename.edits.map((e) => shown(project, e.path, e))).toEqual(['a.rig:4 main', 'a.rig:8 main', 'b.rig:1 main']);
});

test.each([
  ['trunk', '`trunk` is the name of a strap already (b.rig:11)'],
  ['2 lines', 'a name is letters, digits and `_`, with single `-` between them, and begins with a letter or `_`'],
  ['', 'a name is letters, digits and `_`, with single `-` between them, and begins with a letter or `_`'],
  ['a--b', 'a name is letters, digits and `_`, with single `-` between them, and begins with a letter or `_`'],
  ['-a', 'a name is letters, digits and `_`, with single `-` between them, and begins with a letter or `_`'],
  ['a'.repeat(201), 'a name has at most 200 characters'],
])('rename to %j is refused', (wanted, why) => {
  const { project, path, offset } = cursorIn(two);
  expect(renameAt(project, path, offset, day, wanted)).toEqual({ refused: why });
});

test('two points of a vehicle do not become one; those of another vehicle may have the name', () => {
  const vehicles = 'vehicle plover {\n  point  b$0ow rated 4.7 t\n  point  stern rated 3 t\n}\n\nvehicle ouzel {\n  point  rear rated 4 t\n}\n';
  const { project, path, offset } = cursorIn(vehicles);
  expect(renameAt(project, path, offset, day, 'stern')).toEqual({ refused: '`stern` is a point of `plover` already (line 3)' });
  expect(renameAt(project, path, offset, day, 'rear')).toHaveProperty('edits.length', 1);
});

test('a name is not given anew where any file that sees it has that name', () => {
  const files = `=== gear.rig
strap a$0 {
  wll  4 t
}
=== one.rig
use "gear.rig"

strap b {
  wll  4 t
}
=== two.rig
use "gear.rig"

kit bag {
  carries  a
}
`;
  const refused = (fixture: string, wanted: string): unknown => {
    const { project, path, offset } = cursorIn(fixture);
    return renameAt(project, path, offset, day, wanted);
  };
  expect(refused(files, 'b')).toEqual({ refused: '`b` is the name of a strap already (one.rig:3)' });
  expect(refused(files.replace('a$0', 'a').replace('carries  a', 'carries  a$0'), 'b')).toEqual({ refused: '`b` is the name of a strap already (one.rig:3)' });
  expect(refused(files, 'bag')).toEqual({ refused: '`bag` is the name of a kit already (two.rig:3)' });
  // One that sees no declaration of it keeps its names to itself.
  expect(refused(`${files}=== three.rig\nstrap c {\n  wll  4 t\n}\n`, 'c')).toHaveProperty('edits.length', 2);
});

test('a name where another kind of thing is meant is renamed with the thing that has it', () => {
  expect(references('winch w {\n  carries  trunk\n}\n\nstrap tr$0unk {\n  wll  4 t\n}\n')).toEqual(['a.rig:2 trunk', 'a.rig:5 trunk declared']);
});

test.each(['main_3', 'řeka', '_a', 'a-2-b', 'a'.repeat(200)])('rename to %s is done', (wanted) => {
  const { project, path, offset } = cursorIn(two);
  expect(renameAt(project, path, offset, day, wanted)).toHaveProperty('edits.length', 3);
});

test('rename to a word of the language is refused', () => {
  const { project, path, offset } = cursorIn(`${line}  2026-06-01  cut  at 20 m from inboard keep ta$0il\n  2026-06-01  splice  tail inboard eye bury 72 d taper 24 d\n}\n`);
  expect(renameAt(project, path, offset, day, 'inboard')).toEqual({ refused: '`inboard` is a word of the language' });
  expect(renameAt(project, path, offset, day, 'rest')).toHaveProperty('edits.length', 2);
});

test('links of a use lead to files of the folder only', () => {
  const { project } = cursorIn('=== rigs/a.rig\nuse "../b.rig"\nuse "../../c.rig"\n$0');
  expect(documentLinks(project, 'rigs/a.rig').map((l) => l.target)).toEqual(['b.rig']);
});

test('everything with a name is found by letters in their order', () => {
  const { project } = cursorIn(`${winch}${line}}\n$0`);
  expect(workspaceSymbols(project, '').map((s) => `${s.container} ${s.name}`)).toEqual(['winch bow-winch', 'line main']);
  expect(workspaceSymbols(project, 'BWW').map((s) => s.name)).toEqual(['bow-winch']);
  expect(workspaceSymbols(project, 'xyz')).toEqual([]);
});
