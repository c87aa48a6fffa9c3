import { expect, test } from 'vitest';
import { completionsAt } from '../../src-core/ide/completion.ts';
import { signatureAt } from '../../src-core/ide/signature-help.ts';
import { cursorIn, day, line } from './cursor.ts';

const gear = '\nshackle bow-22 {\n  wll  6.5 t\n}\n\nvehicle plover {\n  point  bow rated 4.7 t\n}\n\n' + line + '  2026-06-21  damage  cut 2 strands at 8.4 m from inboard\n}\n';

function items(fixture: string) {
  const { project, path, offset } = cursorIn(fixture);
  return [...(completionsAt(project, path, offset, day)?.items ?? [])].sort((a, b) => a.rank - b.rank);
}
const labels = (fixture: string): string => items(fixture).map((i) => i.label).join(' ');

test('between blocks every block may begin', () => {
  expect(labels('$0')).toMatch(/^vehicle winch line .* practice use$/);
  expect(items('$0').find((i) => i.label === 'winch')!.snippet).toBe('winch ${1:name} {\n  rated    ${2}\n  barrel   ${3}\n  width    ${4}\n  flange   ${5}\n  carries  ${6:line}\n}\n$0');
});

test('in a block, statements that are not there yet, those that something waits for first', () => {
  expect(labels('winch w {\n  rated  42 kN\n  $0\n}\n')).toMatch(/^barrel width flange carries keep/);
  expect(labels('winch w {\n  rated  42 kN\n  $0\n}\n')).not.toContain('rated');
});

test('a line offers an entry of today, and then what may have happened', () => {
  expect(items('line m {\n  $0\n}\n').at(-1)).toMatchObject({ label: '2026-06-22', insert: '2026-06-22  ' });
  expect(labels('line m {\n  2026-06-21  $0\n}\n')).toMatch(/^fitted inspected damage cut splice/);
});

test('values by the part that comes next', () => {
  expect(labels('winch w {\n  fairlead  $0\n}\n')).toBe('hawse roller');
  expect(labels('winch w {\n  fairlead  hawse $0\n}\n')).toBe('condition');
  expect(labels('winch w {\n  keep  10 $0\n}\n')).toBe('wraps');
  expect(labels('line m {\n  outboard  eye bury 72 d $0\n}\n')).toBe('thimble taper size locked stitched tucked temporary');
  expect(items('winch w {\n  fairlead  $0\n}\n')[0]!.detail).toBe('hawse fairlead, a smooth slot');
});

test('after a number, the units that fit, the usual one first', () => {
  expect(labels('winch w {\n  rated  42 $0\n}\n')).toBe('kN N daN kgf lbf kip g kg t lb short-ton long-ton');
  expect(labels('line m {\n  outboard  eye bury 72 $0\n}\n')).toMatch(/^d mm cm m/);
});

test('names in scope that fit, and why one is better left alone', () => {
  expect(labels(`winch w {\n  carries  $0\n}\n${gear}`)).toBe('main');
  const taken = items(`winch w {\n  carries  $0\n}\nwinch other {\n  carries  main\n}\n${gear}`);
  expect(taken[0]!.detail).toContain('on `other` already');
});

test('a position offers where damage lies', () => {
  expect(labels(`repair fix on main {\n  cut  $0\n}\n${gear}`)).toBe('at 8.4 m from inboard at');
  expect(labels(`repair fix on main {\n  cut  at 8 m from $0\n}\n${gear}`)).toBe('inboard outboard');
});

test('along a route: names, ends of a line, points of a vehicle', () => {
  expect(labels(`chain c {\n  main outboard -> $0\n}\n${gear}`)).toBe('bow-22 main plover shackle soft-shackle');
  expect(labels(`chain c {\n  main $0\n}\n${gear}`)).toBe('inboard outboard ->');
  expect(labels(`chain c {\n  plover $0\n}\n${gear}`)).toBe('bow ->');
});

test('paths of rig files in a use', () => {
  expect(labels('=== rigs/a.rig\nuse "$0"\n=== practice.rig\n\n=== rigs/b.rig\n\n')).toBe('../practice.rig b.rig');
});

test('nothing in prose and comments', () => {
  expect(labels('shackle s "a $0 b" {\n}\n')).toBe('');
  expect(labels('# a $0\n')).toBe('');
});

test('the word under the cursor is replaced, or written in front of', () => {
  const { project, path, offset, text } = cursorIn('winch w {\n  fairlead  ha$0wse\n}\n');
  const found = completionsAt(project, path, offset, day)!;
  expect(text().slice(found.replace.start, found.replace.end)).toBe('hawse');
  expect(text().slice(found.insert.start, found.insert.end)).toBe('ha');
});

test('the signature of a statement, with the part that comes next', () => {
  const active = (fixture: string): string => {
    const { project, path, offset } = cursorIn(fixture);
    const s = signatureAt(project, path, offset);
    return s === undefined ? 'nothing' : `${s.label} > ${s.active === undefined ? 'full' : s.label.slice(s.parts[s.active]!.start, s.parts[s.active]!.end)}`;
  };
  expect(active('winch w {\n  rated $0\n}\n')).toBe('rated FORCE or MASS [at layer COUNT] > FORCE or MASS');
  expect(active('winch w {\n  rated 42 kN $0\n}\n')).toBe('rated FORCE or MASS [at layer COUNT] > [at layer COUNT]');
  expect(active('winch w {\n  keep 10 wraps $0\n}\n')).toBe('keep COUNT wraps > full');
  expect(active('winch w {\n$0\n}\n')).toBe('nothing');
});
