import { expect, test } from 'vitest';
import { codeActions, fixAll, type CodeAction } from '../../src-core/ide/code-actions.ts';
import { explainCode, ruleList } from '../../src-core/ide/explain-code.ts';
import { codeLenses } from '../../src-core/ide/code-lenses.ts';
import { formattingEdits, typedEdits } from '../../src-core/ide/formatting.ts';
import { cursorIn, day, line, winch, type Cursor } from './cursor.ts';

/** The text after an action, or the title of those there are. */
function apply({ text }: Cursor, action: CodeAction | undefined): string {
  let result = text();
  for (const edit of [...(action?.edits ?? [])].sort((a, b) => b.start - a.start)) result = result.slice(0, edit.start) + edit.text + result.slice(edit.end);
  return result;
}
const actionsAt = ({ project, path, offset }: Cursor): CodeAction[] => codeActions(project, path, { start: offset, end: offset }, day);

const plan = `${line}}\n\nrepair fix on main {\n  cut     at 20 m from inboard\n  splice  outboard eye bury $046 cm taper 24 cm temporary\n}\n`;

test('a bury that a plan makes too short is written in full', () => {
  const cursor = cursorIn(plan);
  const action = actionsAt(cursor).find((a) => a.finding?.code === 'bury-too-short' && a.kind === 'fix');
  expect(apply(cursor, action)).toContain('bury 72 cm taper');
});

test('a word that is misspelt is corrected', () => {
  const cursor = cursorIn('winch w {\n  fairled$0  hawse\n}\n');
  const [action] = actionsAt(cursor);
  expect(action).toMatchObject({ title: 'Write `fairlead`', kind: 'fix', preferred: true });
  expect(apply(cursor, action)).toBe('winch w {\n  fairlead  hawse\n}\n');
});

test('a missing fact gets its head, and no number that nobody read', () => {
  const cursor = cursorIn('line ma$0in {\n  material  HMPE\n  diameter  10 mm\n  length    30 m\n  outboard  eye thimble tube bury 72 d taper 24 d\n\n  2026-04-02  fitted\n}\n\nwinch w {\n  rated    42 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  carries  main\n}\n');
  const stub = actionsAt(cursor).find((a) => a.kind === 'stub' && a.title.includes('breaking'));
  expect(stub?.title).toBe('Add `breaking`, to be filled in');
  expect(apply(cursor, stub)).toContain('taper 24 d\n  breaking  # to be read from the tag or the maker\'s data\n\n  2026-04-02');
});

test.each([
  ['line a { mate$0rial HMPE }\n\nwinch w {\n  carries a\n}\n', 'breaking', 'line a {\n  material HMPE\n  breaking  # to be read from the tag or the maker\'s data\n}\n\nwinch w'],
  ['line a {$0\n  material HMPE }\n\nwinch w {\n  carries a\n}\n', 'breaking', 'line a {\n  material HMPE\n  breaking  # to be read from the tag or the maker\'s data\n}\n\nwinch w'],
  ['winch w {}\n\npull $0p with w\n', 'reach', 'pull p with w {\n  reach  # to be filled in: a measured length\n}\n'],
  ['shackle a {\n}\n\nshackle b {\n}\n\nchain $0c {\n  a -> b\n}\n', 'with', 'chain c {\n  with  # to be filled in: the name of the winch\n  a -> b\n}\n'],
])('a missing fact is written inside its block: %j', (fixture, head, expected) => {
  const cursor = cursorIn(fixture);
  const { project, path, text } = cursor;
  const stub = codeActions(project, path, { start: 0, end: text().length }, day).find((a) => a.title === `Add \`${head}\`, to be filled in`);
  expect(apply(cursor, stub)).toContain(expected);
});

test.each([
  'line a { material HMPE }  # allow bare-end: new\n',
  '# allow bare-end: new\nline a { material HMPE }\n',
])('a line that a reason speaks of is not cut: %j', (text) => {
  const { project, path } = cursorIn(`${text}\nwinch w {\n  carries a\n}\n$0`);
  expect(codeActions(project, path, { start: 0, end: text.length }, day).filter((a) => a.kind === 'stub')).toEqual([]);
});

test('everything that is spelling is mended at once, and nothing that claims', () => {
  const cursor = cursorIn(`$0${line.replace('HMPE', 'HMPEE').replace('bury 72 d', 'bury 46 cm').replace('thimble tube', 'thimble tubee')}}\n`);
  const all = fixAll(cursor.project, cursor.path, day);
  expect(apply(cursor, all)).toBe(`${line.replace('bury 72 d', 'bury 46 cm')}}\n`);
});

test('what the trade calls otherwise is offered, and not written unasked', () => {
  const cursor = cursorIn('winch w {\n  ro$0pe  main\n}\n\nline main {\n  2026-06-02  damage  chafe 20 % at 8 m from inboard\n}\n');
  expect(apply(cursor, actionsAt(cursor).find((a) => a.title === 'Write `carries`'))).toContain('  carries  main');
  expect(fixAll(cursor.project, cursor.path, day)).toBeUndefined();
});

test('a file without a misspelling has nothing to mend', () => {
  const { project, path } = cursorIn(`$0${line.replace('bury 72 d', 'bury 46 cm')}}\n`);
  expect(fixAll(project, path, day)).toBeUndefined();
});

test('setting aside writes the comment and leaves the reason to a person', () => {
  const temporary = cursorIn(plan);
  const aside = actionsAt(temporary).find((a) => a.kind === 'set-aside' && a.finding!.code === 'bury-too-short');
  expect(apply(temporary, aside)).toContain('\n  # allow bury-too-short: \n  splice  outboard');
});

test('an error is not set aside from a menu', () => {
  const actions = actionsAt(cursorIn(line.replace('bury 72 d', 'bury $046 cm') + '}\n'));
  expect(actions.filter((a) => a.kind === 'set-aside' && a.finding!.code === 'bury-too-short')).toEqual([]);
});

test('damage that has to go is cut out by a repair, in the line breaks of the file', () => {
  const damaged = `${line}  2026-06-21  damage  cut 2 strands at $08.4 m from inboard\n}\n`.replaceAll('\n', '\r\n');
  const cursor = cursorIn(damaged);
  const cut = actionsAt(cursor).filter((a) => a.title === 'Plan a repair that cuts the damage out');
  expect(cut.map((a) => [a.kind, a.finding!.code, a.preferred])).toEqual([['fix', 'damage-left-in-service', undefined]]);
  const after = apply(cursor, cut[0]);
  expect(after).toMatch(/\r\n}\r\n\r\nrepair cut-out-main on main {\r\n  cut     at \d/);
  expect(after.replaceAll('\r\n', '')).not.toContain('\n');
  const sound = cursorIn(`${line}  2026-06-21  damage  cut 1 strand at $08.4 m from inboard\n}\n`);
  expect(actionsAt(sound).map((a) => a.title)).not.toContain('Plan a repair that cuts the damage out');
});

test('damage at the drum is cut out by a repair that drops the end at the drum', () => {
  const cursor = cursorIn(`${line}  2026-06-21  damage  melt at $01.2 m from inboard\n}\n\n${winch}`);
  const cut = actionsAt(cursor).find((a) => a.title === 'Plan a repair that cuts the damage out');
  expect(apply(cursor, cut)).toContain('repair cut-out-main on main {\n  cut     at 1.25 m from inboard drop inboard\n');
});

test('a heated place is cut out by a repair as well, and a line that was hot all over is not', () => {
  const of = (where: string) => cursorIn(`${line}  2026-06-21  heated  $090 degC${where}\n}\n\n${winch}`);
  const actions = (where: string) => actionsAt(of(where)).filter((a) => a.title === 'Plan a repair that cuts the damage out');
  expect(apply(of(' at 8.4 m from inboard'), actions(' at 8.4 m from inboard')[0])).toMatch(/repair cut-out-main on main {\n  cut     at \d/);
  expect(actions('').map((a) => a.disabled)).toEqual([expect.stringMatching(/./)]);
});

test('a repair that cannot be planned says why', () => {
  const damaged = `${line}  2026-06-21  damage  cut 2 strands at $08.4 m from inboard\n}\n`;
  const of = (text: string): (string | undefined)[] => actionsAt(cursorIn(text)).filter((a) => a.title === 'Plan a repair that cuts the damage out').map((a) => a.disabled);
  expect(of(`${damaged}\n${winch}`)).toEqual([undefined]);
  expect(of(`${damaged}\n${winch.replace('  width    230 mm\n', '')}`)).toEqual(['drum width of `bow-winch` is not given: add `width`']);
  expect(of(damaged.replace('}\n', ''))).toEqual(['`main` is not closed: add `}` where it ends']);
});

test('what typing formats is the line that is left, or the block that is closed', () => {
  const left = cursorIn('line main {\n material   HMPE\n length 30 m\n$0\n}\n');
  expect(typedEdits(left.project, left.path, left.offset, '\n').map((e) => left.project.file(left.path)!.lines.lineColumn(e.start).line)).toEqual([2]);
  const closed = cursorIn('strap s {\n wll 4 t\n}$0\n\nline main {\n material   HMPE\n}\n');
  const edits = typedEdits(closed.project, closed.path, closed.offset, '}');
  expect(apply(closed, { title: '', kind: 'fix', edits: edits.map((e) => ({ ...e, path: closed.path })) })).toBe('strap s {\n  wll  4 t\n}\n\nline main {\n material   HMPE\n}\n');
  const first = cursorIn('$0line main {\n}\n');
  expect(typedEdits(first.project, first.path, 0, '\n')).toEqual([]);
});

test('lines and pulls have a lens that says what they come to', () => {
  const { project, path } = cursorIn(`$0${line}}\n\nstrap s {\n  wll  4 t\n}\n`);
  expect(codeLenses(project, path, day)).toEqual([{ start: 5, end: 9, title: expect.stringMatching(/\d kN/) }]);
});

test('where nothing is found there is nothing to do', () => {
  expect(actionsAt(cursorIn('ring r$0 {\n  wll  4 t\n}\n'))).toEqual([]);
});

test('formatting gives small edits, and none when nothing is left to do', () => {
  const cursor = cursorIn('$0line main {\n material   HMPE\n  length 30 m\n}\n');
  const edits = formattingEdits(cursor.project, cursor.path);
  expect(edits.length).toBe(2);
  const text = apply(cursor, { title: '', kind: 'fix', edits: edits.map((e) => ({ ...e, path: cursor.path })) });
  expect(text).toBe('line main {\n  material  HMPE\n  length    30 m\n}\n');
  cursor.project.set(cursor.path, text);
  expect(formattingEdits(cursor.project, cursor.path)).toEqual([]);
});

test('every rule has a page with why, source and both examples', () => {
  for (const { code, summary } of ruleList()) {
    const page = explainCode(code);
    expect(page).toContain(`# ${code}\n\n${summary}`);
    expect(page).toMatch(/because [\s\S]+Source: [\s\S]+## Found in[\s\S]+## Not found in/);
  }
});

test('a code without a page says so, and what may have been meant', () => {
  expect(explainCode('bury-to-short')).toContain('Did you mean `bury-too-short`?');
  expect(explainCode('x'.repeat(10_000)).length).toBeLessThan(300);
});

test('a block in another one is no misspelt statement', () => {
  const { project, path } = cursorIn('$0shackle bow {\n  wll  4 t\n  ring {\n  }\n  pnn  22 mm\n}\n');
  expect(fixAll(project, path, day)!.edits.map((e) => e.text)).toEqual(['pin']);
});
