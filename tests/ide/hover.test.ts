import { expect, test } from 'vitest';
import { hoverAt } from '../../src-core/ide/hover.ts';
import { cursorIn, day, line, shown, winch } from './cursor.ts';

function hover(fixture: string): string {
  const { project, path, offset } = cursorIn(fixture);
  return hoverAt(project, path, offset, day)?.markdown ?? 'nothing';
}
const lead = (fixture: string): string => hover(fixture).split('\n')[0]!;

test('bury: diameters, what is needed, what is counted', () => {
  expect(lead(line.replace('bury 72', 'bury $046') + '}\n')).toBe('**46 d · needs 72 d (720 mm)** counted at 63.8 % of a full splice');
  expect(lead(line.replace('bury 72', 'bu$0ry 72') + '}\n')).toBe('**72 d · needs 72 d (720 mm)** counted at 100 % of a full splice');
});

test('bury: the marks in order from the cut end', () => {
  const marks = hover(line.replace('bury 72 d taper 24 d', 'bury $072 d taper 24 d size 150 mm') + '}\n').split('\n').filter((l) => l.startsWith('| '));
  expect(marks.map((row) => row.split(' | ').slice(0, 2).join(': ').replace('| ', ''))).toEqual([
    'mark: from the tail end', 'tail end: 0', 'taper start: 240 mm', 'throat mark: 720 mm', 'entry mark: 870 mm', 'exit mark: 1.71 to 1.83 m',
  ]);
});

test('bury without what it is measured by says what is missing', () => {
  expect(lead('line main {\n  material  HMPE\n  outboard  eye bury $072 d\n}\n')).toContain('**this splice is not judged** because diameter of `main` is not given');
});

test('the line on the drum: layer, pull and reach at the line out that is planned', () => {
  const rig = `${line}}\n\nshackle bow {\n  wll  6 t\n}\n\nstrap trunk {\n  wll  4 t\n}\n\nchain reach {\n  main outboard -> bow -> trunk\n  out  18 m\n}\n`;
  expect(lead(winch.replace('carries', 'carr$0ies') + rig)).toBe('**layer 2 of 4 when 18 m is out: 33 kN of the rated 42 kN; 27.67 m usable, 10 wraps kept (2.33 m)** (line out by `reach`)');
  expect(lead(winch.replace('carries', 'carr$0ies') + line + '}\n')).toBe('**42 kN on layer 1, 23.1 kN on layer 4 of 4, of the rated 42 kN; 27.67 m usable, 10 wraps kept (2.33 m)**');
});

test('a rated pull by layer, and as the weight of a mass', () => {
  const text = hover(winch.replace('42 kN', '4$02 kN') + line + '}\n');
  expect(text.split('\n')[0]).toBe('**42 kN rated on layer 1** = 9,440 lbf · the weight of 4,280 kg');
  expect(text.split('\n').filter((l) => /^\| \d/.test(l)).map((l) => l.split(' | ').at(-1))).toEqual(['23.1 kN |', '27.2 kN |', '33 kN |', '42 kN |']);
});

test('damage: the strength that is left, and what to do', () => {
  expect(lead(line + '  2026-06-01  dam$0age  cut 1 strand at 8 m from inboard\n}\n')).toBe('**84.3 kN** left of 92 kN · use the line derated: a single cut strand lowers the strength there');
  expect(lead(line + '  2026-06-01  dam$0age  abrasion heavy at 8 m from inboard\n}\n')).toContain('**strength there is not judged · cut it out');
});

test('a line by its name, wherever the name stands', () => {
  const rig = winch.replace('carries  main', 'carries  ma$0in') + line + '  2026-06-01  damage  cut 1 strand at 8 m from inboard\n}\n';
  expect(lead(rig)).toBe('**main: 30 m · 82.8 to 84.4 kN at its weakest place (outboard end)**');
});

test('a load is shown as force and as mass', () => {
  expect(lead('shackle bow {\n  wll  $04.7 t\n}\n')).toBe('**4.7 t** = 46 kN · 10,300 lbf');
  expect(lead('shackle b$0ow {\n  wll  4.7 t\n}\n')).toContain('**bow: working limit 46 kN (the weight of 4,700 kg)** given by its marking');
});

test('a limit from a table or a breaking strength says so', () => {
  expect(lead('shackle b$0ow {\n  body     19 mm\n  made-to  AS-2741\n}\n')).toContain('given by the table of its standard');
  expect(lead('strap tr$0unk {\n  breaking  12 t\n}\n')).toContain('given by its breaking strength over a design factor of 5');
});

test('a link of a chain against what loads it', () => {
  const rig = `${winch}${line}}\n\nshackle bow {\n  wll  6.5 t\n}\n\nstrap trunk {\n  wll  4 t\n}\n\nanchor larch {\n  kind  tree\n}\n\nchain reach {\n  main outboard -> bow -> trunk -> larch\n}\n`;
  expect(lead(rig.replace('-> bow ->', '-> b$0ow ->'))).toBe('**bow: load 42 kN, working limit 63.7 kN** within the limit given by its marking');
  expect(lead(rig.replace('-> trunk ->', '-> tr$0unk ->'))).toBe('**trunk: load 42 kN, working limit 39.2 kN** above the limit given by its marking');
  expect(lead(rig.replace('-> larch', '-> la$0rch'))).toContain('**larch: not judged, because');
});

test('heads and words without a number are explained by the vocabulary', () => {
  expect(hover('wi$0nch w {\n}\n')).toContain('A winch and its drum');
  expect(hover('winch w {\n  fair$0lead  hawse\n}\n')).toContain('```rig\nfairlead');
  expect(hover('winch w {\n  fairlead  ha$0wse\n}\n')).toBe('`hawse`: hawse fairlead, a smooth slot');
  expect(hover('line m {\n  length  30 $0m\n}\n')).toContain('`m`: metre');
});

test('practice stands beside the value that it replaces', () => {
  expect(lead('practice {\n  line-fa$0ctor  2\n}\n')).toBe('**2 by this practice** · replaces the built-in 3: breaking strength of the line over the pull it is used with');
});

test('a used file is told by what it brings in', () => {
  expect(lead('=== a.rig\nuse "b$0.rig"\n=== b.rig\nstrap trunk {\n}\n')).toContain('**b.rig** brings in strap `trunk`');
  expect(lead('use "../b$0.rig"\n')).toBe('**`../b.rig` is no path inside the workspace folder**: write it from this file\'s folder, with `/` between names');
});

test('the span is the value, not the whole line', () => {
  const { project, path, offset } = cursorIn('line m {\n  length  3$00 m\n}\n');
  expect(shown(project, path, hoverAt(project, path, offset, day)!.span)).toBe('a.rig:2 30 m');
});

test('between statements, in comments and outside the file there is nothing', () => {
  for (const fixture of ['line m {\n$0\n}\n', '# a com$0ment\n', 'line m {\n}\n\n$0', '$0']) expect(hover(fixture)).toBe('nothing');
});

test('a reason that sets a finding aside explains the finding', () => {
  expect(lead('# allow bury-too-sh$0ort: an old splice, watched\nline m {\n}\n')).toContain('**bury-too-short**');
});

const turned = (route: string, cursor: string): string => {
  const gear = 'block snatch {\n  sheave  100 mm\n  wll     10 t\n}\n\nshackle bow {\n  wll  6 t\n}\n\nanchor fir {\n  kind     tree\n  holding  200 kN "tested"\n}\n';
  return `${winch}${line}}\n\n${gear}\nchain reach {\n  ${route.replace(cursor, `$0${cursor}`)}\n}\n`;
};

test('a link behind the block at which the line turns carries the pull twice', () => {
  // The winch pulls 42 kN at most, and both parts of the line pull on what holds the block.
  const text = hover(turned('main -> snatch -> bow -> fir', 'bow'));
  expect(text.split('\n')[0]).toMatch(/^\*\*bow: load 84 kN, .*58\.8 kN\*\*/);
  expect(text).toContain('84 kN on it, above the limit given by its marking');
  expect(text).toContain('The line turns here, so both its parts pull on it, each with the most that');
});

test('a leg of a bridle says what share it has', () => {
  // Half of 42 kN where the legs lie together, all of it at 120° between them.
  const text = hover(turned('main outboard -> bow\n  bow -> left -> fir\n  bow -> right -> oak', 'left').replace('block snatch', 'strap left {\n  wll  5 t\n}\n\nstrap right {\n  wll  5 t\n}\n\nanchor oak {\n  kind     tree\n  holding  200 kN "tested"\n}\n\nblock snatch'));
  expect(text).toContain('21 to 42 kN on it, within the limit given by its marking');
  expect(text).toContain('It is one leg of a bridle, and has its share by the angle between them.');
});

test('a link of which more may be known to the worse is not judged', () => {
  // The eye of the line lies on the eye of another: rope on rope has no published figure.
  const other = 'line tail {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    10 m\n  breaking  900 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye bury 72 d taper 24 d\n}\n';
  expect(hover(`${turned('main outboard -> tail inboard', 'tail').replace('thimble tube ', '')}\n${other}`)).toContain('not judged, because');
});
