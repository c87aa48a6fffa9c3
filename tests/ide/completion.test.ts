import { expect, test } from 'vitest';
import { completionsAt } from '../../src-core/ide/completion.ts';
import { explainCode, ruleList } from '../../src-core/ide/explain-code.ts';
import { signatureAt } from '../../src-core/ide/signature-help.ts';
import { ruleNamed } from '../../src-core/rules/all.ts';
import { whyItStays } from '../../src-core/rules/why-it-stays.ts';
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
  expect(labels('line m {\n  outboard  eye bury 72 d $0\n}\n')).toBe('thimble taper size locked stitched tucked holds temporary');
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

test('a cut is offered as a plan would make it, clear of the damage on both sides', () => {
  expect(labels(`repair fix on main {\n  cut  $0\n}\n${gear}`)).toBe('at 8.35 m from inboard at 8.45 m from inboard at');
  expect(items(`repair fix on main {\n  cut  $0\n}\n${gear}`)[0]!.detail).toBe('clear of the 2 cut strands, on its inboard side');
  const near = gear.replace('at 8.4 m from inboard\n', 'at 8.4 m from inboard\n  2026-06-21  damage  melt from 8.44 m to 9 m from inboard\n  2026-06-21  damage  melt at 2 cm from inboard\n');
  expect(labels(`repair fix on main {\n  cut  $0\n}\n${near}`)).toBe('at 8.35 m from inboard at 9.05 m from inboard at 0.07 m from inboard at');
  expect(labels(`repair fix on main {\n  cut  $0\n}\n${gear.replace('10 mm', '1/2 in').replace('30 m', '98 ft')}`)).toBe('at 27.35 ft from inboard at 27.77 ft from inboard at');
  expect(labels(`repair fix on main {\n  cut  $0\n}\n${gear.replace('  diameter  10 mm\n', '')}`)).toBe('at');
});

test('a position offers where damage lies', () => {
  expect(labels(gear.replace('  2026-06-21', '  2026-06-22  mended  pulled $0\n  2026-06-21'))).toBe('at 8.4 m from inboard at from');
  expect(labels(`repair fix on main {\n  cut  at 8 m from $0\n}\n${gear}`)).toBe('inboard outboard');
});

test('along a route: names, ends of a line, points of a vehicle', () => {
  expect(labels(`chain c {\n  main outboard -> $0\n}\n${gear}`)).toBe('bow-22 main plover shackle soft-shackle');
  expect(labels(`chain c {\n  main $0\n}\n${gear}`)).toBe('inboard outboard ->');
  expect(labels(`chain c {\n  plover $0\n}\n${gear}`)).toBe('bow ->');
  expect(labels(`chain c {\n  parked $0\n}\n${gear}\nanchor parked {\n  kind  vehicle\n  vehicle  plover\n}\n`)).toBe('bow ->');
});

test('gear by its size: form and size, then the standard', () => {
  const after = (route: string): string => labels(`chain c {\n  main outboard -> ${route}$0\n}\n${gear}`);
  expect(after('shackle ')).toBe('bow 19 mm dee 19 mm');
  expect(after('shackle bow ')).toBe('19 mm');
  expect(after('shackle 19 ')).toMatch(/^mm cm m/);
  expect(after('shackle bow 19 mm ')).toBe('-> AS-2741 RR-C-271');
  expect(after('shackle bow 19 mm AS-2741 ')).toBe('->');
  expect(after('shackle bow 19 mm -> ')).toMatch(/^bow-22 /);
  expect(after('soft-shackle ')).toBe('11 mm');
  expect(after('soft-shackle 11 mm ')).toBe('->');
});

test('a place that names a rule lists them all, with their pages', () => {
  const severity = items('practice {\n  severity  $0\n}\n');
  expect(severity.map((i) => i.label)).toEqual(ruleList().map((r) => r.code));
  expect(severity.find((i) => i.label === 'taper-missing')).toMatchObject({ detail: ruleNamed('taper-missing')!.summary, documentation: explainCode('taper-missing') });
  expect(labels('practice {\n  severity  taper-missing $0\n}\n')).toBe('error warning information hint off');
});

test('a reason that sets aside begins with a rule, those that are found there first', () => {
  const repair = `${gear}\nrepair r on main {\n  # allow $0\n  splice  outboard eye bury 46 cm taper 24 cm temporary\n}\n`;
  const offered = items(repair);
  expect(offered[0]).toMatchObject({ label: 'bury-too-short', insert: 'bury-too-short: ', snippet: 'bury-too-short: ${1:reason}' });
  expect(offered.length).toBeGreaterThan(60);
  // What stays is not offered, unless it is found here as a warning.
  expect(offered.slice(1).filter((i) => whyItStays(ruleNamed(i.label)!) !== undefined).map((i) => i.label)).toEqual([]);
  expect(items(repair.replace('$0', 'bury-$0: cold')).find((i) => i.label === 'bury-too-short')!.insert).toBeUndefined();
  expect(items(repair.replace('  # allow $0\n', '').replace('temporary\n', 'temporary  # allow bu$0\n'))[0]!.label).toBe('bury-too-short');
  expect(labels(repair.replace('$0', 'bury-too-short: $0'))).toBe('');
});

test('examples of counts are usual ones, and are said as people say them', () => {
  expect(labels('winch w {\n  keep  $0\n}\n')).toBe('10 wraps');
  const practice = (wraps: string): string => `winch w {\n  carries  main\n  keep  $0\n}\n${gear}\npractice {\n  keep-wraps  HMPE ${wraps}\n}\n`;
  expect(labels(practice('12 wraps'))).toBe('12 wraps');
  expect(labels(practice('8 wraps'))).toBe('8 wraps');
  // A figure that is not taken is not offered either.
  expect(labels(practice('1 wrap'))).toBe('10 wraps');
  expect(labels('line m {\n  strands  $0\n}\n')).toBe('12');
  expect(labels('practice {\n  cut-strands-limit  $0\n}\n')).toBe('2 strands');
  expect(labels('winch w {\n  rated  42 kN at layer $0\n}\n')).toBe('1');
  expect(labels('winch w {\n  keep  1 $0\n}\n')).toBe('wrap');
  expect(labels('pull p with w {\n  dragging  $0\n}\n')).toBe('none all 2 wheels of');
  expect(labels('pull p with w {\n  dragging  2 wheels of $0\n}\n')).toBe('4');
});

test('each kind of damage is measured in its own way', () => {
  const after = (kind: string): string => labels(`line m {\n  2026-06-21  damage  ${kind} $0\n}\n`);
  expect(after('cut')).toBe('2 strands at from');
  expect(after('pulled')).toBe('2 strands at from');
  expect(after('abrasion')).toBe('40 % light moderate heavy at from');
  expect(after('glaze')).toBe('hard soft at from');
  expect(after('melt')).toBe('at from');
  expect(after('abrasion 40')).toBe('%');
});

test('with a figure, the word that stands instead of one is not offered', () => {
  expect(labels('pull p with w {\n  dragging  2 $0\n}\n')).toBe('wheels of');
  expect(labels('pull p with w {\n  grade  12 deg $0\n}\n')).toBe('');
  expect(labels('line m {\n  2026-06-21  damage  abrasion light $0\n}\n')).toBe('at from');
});

test('a number that is being written is followed by its unit, and no other number takes its place', () => {
  expect(labels('line m {\n  diameter  12$0\n}\n')).toMatch(/^12 mm 12 cm 12 m 12 km 12 in/);
  const { project, path, offset, text } = cursorIn('line m {\n  diameter  12.5$0\n}\n');
  const found = completionsAt(project, path, offset, day)!;
  expect([found.items[0]!.label, text().slice(found.replace.start, found.replace.end)]).toEqual(['12.5 mm', '12.5']);
  expect(labels('winch w {\n  keep  10$0\n}\n')).toBe('10 wraps');
  expect(labels('line m {\n  strands  12$0\n}\n')).toBe('');
  expect(labels('line m {\n  2026-06-21  damage  melt at 8.4$0\n}\n')).toMatch(/^8.4 m /);
  expect(labels('line m {\n  2026$0\n}\n')).toContain('2026-06-22');
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

test('a cut says which part goes: what is kept, or that the end at the drum is dropped', () => {
  expect(labels('line m {\n  2026-06-21  cut  at 1.6 m from inboard $0\n}\n')).toBe('keep drop of "..."');
  expect(labels('line m {\n  2026-06-21  cut  at 1.6 m from inboard keep rest $0\n}\n')).toBe('of "..."');
  expect(labels('line m {\n  2026-06-21  cut  at 1.6 m from inboard drop inboard $0\n}\n')).toBe('of "..."');
  expect(labels('repair r on m {\n  cut  at 1.6 m from inboard drop $0\n}\n')).toBe('inboard');
});
