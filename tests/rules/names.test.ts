import { describe, expect, test } from 'vitest';
import { findingsIn } from '../support/judge-text.ts';

const line = (log = ''): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
${log}}
`;
const keepTail = '  2026-06-01 cut at 20 m from inboard keep tail\n';
const block = (head: string, name: string): string => `${head} ${name} {\n  wll  4 t\n}\n`;

const said = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.line}:${f.column} ${f.severity}[${f.code}]: ${f.message}`);
const helps = (text: string, code: string): string[] => findingsIn(text).filter((f) => f.code === code).map((f) => f.finding.help);

describe('names declared twice', () => {
  const cases: readonly (readonly [what: string, text: string, said: readonly string[]])[] = [
    ['a repair with the name of a piece of its own line', `${line(keepTail)}\nrepair tail on main {\n  cut  at 10 m from inboard\n}\n`, ['11:8 error[name-declared-twice]: `tail` is a piece already']],
    ['a piece of no known line with the name of something else', `${block('shackle', 'bow-22')}\nrepair new on nowhere {\n  cut  at 10 m from inboard keep bow-22\n}\n`, ['6:34 error[name-declared-twice]: `bow-22` is a shackle already']],
    ['a piece with the name of its own line is said once, by the replay', line('  2026-06-01 cut at 20 m from inboard keep main\n'), ['8:44 error[name-declared-twice]: `main` is a piece of `main` already']],
    ['so is one of a repair that stands before its line', `repair new on main {\n  cut  at 10 m from inboard keep main\n}\n\n${line()}`, ['2:34 error[name-declared-twice]: `main` is a piece of `main` already']],
    ['a strap with the name of a line', `${line()}\n${block('strap', 'main')}`, ['10:7 error[name-declared-twice]: `main` is a line already']],
    ['two points of one vehicle', 'vehicle plover {\n  mass   2,650 kg\n  point  bow rated 2 t\n  point  stern rated 2 t\n  point  bow rated 3 t\n}\n', ['5:10 error[name-declared-twice]: `plover` has a point `bow` already']],
  ];
  test.each(cases)('%s', (_what, text, expected) => expect(said(text, 'name-declared-twice')).toEqual(expected));
});

describe('names of another kind', () => {
  const chain = 'winch bow-winch {\n  rated  20 kN\n}\n\nchain reach {\n  bow-winch -> larch\n}\n\nanchor larch {\n  kind  tree\n}\n';
  const pull = 'winch bow-winch {\n  rated  20 kN\n}\n\npull out with bow-winch {\n  back-to  bow-winch\n}\n\nrepair new on bow-winch {\n  reversed\n}\n';
  test('every kind that may stand there is listed', () => {
    const all = 'a line, a piece, a shackle, a soft-shackle, a strap, a block, a ring, a hook, an anchor, a vehicle or a thimble';
    expect(said(chain, 'name-of-another-kind')).toEqual([`6:3 error[name-of-another-kind]: \`bow-winch\` is a winch; ${all} is meant here`]);
    expect(helps(chain, 'name-of-another-kind')).toEqual([`name ${all}`]);
  });
  test('two kinds, and one', () => {
    expect(said(pull, 'name-of-another-kind')).toEqual(['6:12 error[name-of-another-kind]: `bow-winch` is a winch; a vehicle or an anchor is meant here', '9:15 error[name-of-another-kind]: `bow-winch` is a winch; a line is meant here']);
  });
  test('a name that stands for two things may be used where one of them belongs', () => {
    const carries = (other: string) => `winch bow-winch {\n  rated    20 kN\n  carries  main\n}\n\n${other}\n${line()}`;
    expect(said(carries(block('strap', 'main')), 'name-of-another-kind', 'name-declared-twice')).toEqual(['10:6 error[name-declared-twice]: `main` is a strap already']);
  });
  test('pieces of which a repair or a logbook speaks are said by the replay alone', () => {
    const unknownPiece = ': `bow-22` is not a piece of `main` at this point';
    expect(said(`${line()}\n${block('shackle', 'bow-22')}\nrepair new on main {\n  splice  bow-22 inboard eye bury 72 d taper 24 d\n}\n`, 'name-of-another-kind', 'unknown-piece')).toEqual([`15:11 error[unknown-piece]${unknownPiece}`]);
    expect(said(`${line('  2026-06-01 retired bow-22\n')}\n${block('shackle', 'bow-22')}`, 'name-of-another-kind', 'unknown-piece')).toEqual([`8:22 error[unknown-piece]${unknownPiece}`]);
  });
});

describe('pieces that nothing speaks of', () => {
  const unused = ['8:44 hint[unused-piece]: nothing says what becomes of `tail`'];
  const cut = line(keepTail);
  const strap = block('strap', 'trunk');
  const chain = (name: string, route: string): string => `\nchain ${name} {\n  ${route}\n}\n`;
  test.each([
    ['no block at all', '', unused],
    ['a chain of other things', chain('reach', 'main outboard -> trunk'), unused],
    ['a chain that it is in', chain('reach', 'main outboard -> trunk -> tail inboard'), []],
    ['one of two chains', chain('first', 'main outboard -> trunk') + chain('second', 'trunk -> tail inboard'), []],
    ['a winch that carries it', '\nwinch stern-winch {\n  carries  tail\n}\n', []],
    ['a kit that carries it', '\nkit bag {\n  carries  trunk\n  carries  tail\n}\n', []],
    ['a repair of another piece', '\nrepair new on main {\n  splice  outboard eye bury 72 d taper 24 d\n}\n', unused],
    ['a repair that splices it', '\nrepair new on main {\n  splice  tail inboard eye bury 72 d taper 24 d\n}\n', []],
    ['a repair that joins it', '\nrepair new on main {\n  join  main to tail bury 72 d taper 24 d\n}\n', []],
  ])('%s', (_what, more, expected) => expect(said(`${cut}\n${strap}${more}`, 'unused-piece')).toEqual(expected));
});

describe('what is joined to one link', () => {
  const gear = ['s-1', 's-2', 's-3', 's-4'].map((name) => block('shackle', name)).join('\n');
  const chain = (...routes: string[]): string => `${gear}\n${line()}\nchain reach {\n  ${routes.join('\n  ')}\n}\n`;
  test('two are listed with `and`, more with commas', () => {
    const said2 = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'end-used-twice').map((f) => f.message);
    expect(said2(chain('main outboard -> s-1'))).toEqual([]);
    expect(said2(chain('main outboard -> s-1', 'main outboard -> s-2'))).toEqual(['`main outboard` is joined to `s-1` and `s-2`']);
    expect(said2(chain('main outboard -> s-1', 's-2 -> main outboard', 'main outboard -> s-3'))).toEqual(['`main outboard` is joined to `s-1`, `s-2` and `s-3`']);
  });
});

describe('rule names', () => {
  test('a name near a rule\'s is corrected as spelling', () => {
    const found = findingsIn('practice "Tarn Hut supply crew" {\n  severity  rope-on-ropes error\n  severity  xyzzy off\n}\n').filter((f) => f.code === 'unknown-rule');
    expect(found.map((f) => [f.line, f.message, f.finding.help])).toEqual([[2, 'no rule is named `rope-on-ropes`', 'did you mean `rope-on-rope`?'], [3, 'no rule is named `xyzzy`', 'copy the name from the finding it is meant for']]);
    expect(found.map((f) => f.finding.fixes.map((fix) => [fix.title, fix.mechanical, fix.edits.map((e) => e.text)]))).toEqual([[['Write `rope-on-rope`', true, ['rope-on-rope']]], []]);
  });
});

describe('unknown names and paths', () => {
  test('a piece is no block that could be written', () => {
    expect(helps('kit bag {\n  carries  foo\n}\n', 'unknown-name')).toEqual(['write it as a block of its own (a shackle, a soft-shackle, a strap, a block, a ring, a hook, a thimble or a line), or take in the file that has it with `use`']);
  });
  test('a word that is no piece may be prose, where prose may stand', () => {
    expect(helps(line('  2026-06-01 inspected nothing\n'), 'unknown-piece')).toEqual(['the only piece is `main`, or put prose into "..."']);
    expect(said(line('  2026-06-01 inspected nothing found\n'), 'unknown-piece', 'unexpected-value')).toEqual(['8:24 error[unexpected-value]: `nothing found` is prose without quotes in `inspected`']);
    expect(said(line(`${keepTail}  2026-06-02 inspected tail nothing found\n`), 'unknown-piece', 'unexpected-value')).toEqual(['9:29 error[unexpected-value]: `nothing found` is prose without quotes in `inspected`']);
  });
  test('what hangs on a broken entry is silent', () => expect(said(line('  2026-06-01 pulled hard\n'), 'unknown-piece', 'missing-value')).toEqual(['8:3 error[missing-value]: `pulled` lacks a load as a force or a mass, such as 31 kN']));
  test.each([
    ['sub\\x.rig', '`sub\\x.rig` is not written with `/` between folders', 'write `sub/x.rig`', ['"sub/x.rig"']],
    ['..\\x.rig', '`..\\x.rig` leads out of the workspace folder', 'keep shared files inside the folder, and write the path from this file\'s folder with `/`', []],
    ['/home/rigs/x.rig', '`/home/rigs/x.rig` does not start at this file\'s folder', 'write the path from this file\'s folder, with `/`, such as `../practice.rig`', []],
    ['C:\\rigs\\x.rig', '`C:\\rigs\\x.rig` does not start at this file\'s folder', 'write the path from this file\'s folder, with `/`, such as `../practice.rig`', []],
  ])('use "%s"', (path, message, help, fixed) => {
    const found = findingsIn(`use "${path}"\n`);
    expect(found.map((f) => [f.code, f.message, f.finding.help, f.finding.fixes.flatMap((fix) => fix.edits.map((e) => e.text))])).toEqual([['use-outside', message, help, fixed]]);
  });
  test('a file that uses itself', () => expect(helps('use "test.rig"\n', 'use-loop')).toEqual(['remove this line']));
});
