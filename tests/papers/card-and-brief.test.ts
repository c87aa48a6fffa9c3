import { expect, test } from 'vitest';
import type { PaperDocument, PaperPart } from '../../src-core/papers/document.ts';
import { documentMarkdown } from '../../src-core/papers/document-markdown.ts';
import { documentText } from '../../src-core/papers/document-text.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { example, papersOf, plover } from './papers-of.ts';
import { findingsIn } from '../support/judge-text.ts';

const said = (paper: PaperDocument): string => documentText(paper).replace(/\s+/g, ' ');
const tables = (paper: PaperDocument): Extract<PaperPart, { part: 'table' }>[] => paper.parts.filter((p) => p.part === 'table');
const headings = (paper: PaperDocument): string[] => paper.parts.flatMap((p) => (p.part === 'heading' ? [p.says] : []));

test('marks are counted from the cut end, in the unit that the bury is written in', () => {
  const card = papersOf(plover()).get('card field-fix')!;
  const marks = tables(card).find((t) => t.head[0] === 'mark')!;
  // 15 cm of taper in three equal steps; the eye takes 12 to 40 d of 10 mm line behind the throat at 46 cm.
  expect(marks.rows.map((r) => r.slice(0, 2))).toEqual([
    ['tail end', '0 cm'], ['taper, step 3', '5 cm'], ['taper, step 2', '10 cm'], ['taper start', '15 cm'], ['throat mark', '46 cm'], ['entry mark', '58 to 86 cm'], ['exit mark', '112.1 to 147.4 cm'],
  ]);
});

test('splices with the same marks share one table, and both are named', () => {
  const card = papersOf(plover()).get('card field-fix')!;
  expect(headings(card).filter((h) => h.startsWith('Marks'))).toEqual(['Marks from the cut end: `main`, outboard end; `tail`, inboard end']);
});

test('the card marks every cut before any is made, cuts from the outside in, and says what is then temporary', () => {
  const text = said(papersOf(plover()).get('card field-fix')!);
  const order = ['Mark both cuts before making one', 'Cut `main` square, 9.4 m from inboard', 'Cut `main` square, 7.6 m from inboard', '`main`, outboard end: mark the splice', '`tail`, inboard end: mark the splice', 'Write the cuts and splices into the logbook'];
  expect(order.map((o) => text.indexOf(o)).every((at, i, all) => at >= 0 && (i === 0 || at > all[i - 1]!))).toBe(true);
  expect(text).toContain('for 30 days: made on 2026-06-22, until 2026-07-22');
  expect(text).toContain('warning[bury-too-short]');
});

test('a cut that drops the end at the drum says which part goes out', () => {
  const rig = 'line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n}\nrepair fix on main {\n  cut at 1.6 m from inboard drop inboard\n  splice inboard lug\n}\n';
  const card = papersOf(rig).get('card fix')!;
  expect(tables(card).find((t) => t.head[0] === 'cut')!.rows).toEqual([['`main`, 1.6 m from inboard', 'stays in use as `main`; what lies inboard of it goes out']]);
  expect(said(card)).toContain('what lies outboard of it stays in use as `main`; what lies inboard of it goes out.');
});

test('only a line that a winch carries lies out from the drum', () => {
  const rig = 'line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n}\nrepair fix on main {\n  cut at 20 m from inboard\n  reversed\n}\n';
  const card = (more: string): string => said(papersOf(rig + more).get('card fix')!);
  for (const words of ['without twist, from its inboard end outward', 'what was outboard is then inboard']) expect(card('')).toContain(words);
  for (const words of ['without twist, from the drum outward', 'what was outboard goes to the drum']) expect(card('winch w {\n  rated 42 kN\n  carries main\n}\n')).toContain(words);
});

test('a splice that cannot be worked out is said to be none to make', () => {
  const rig = 'line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n}\nrepair fix on main {\n  cut at 0.4 m from inboard\n  splice outboard eye bury 72 d taper 24 d\n}\n';
  const text = said(papersOf(rig).get('card fix')!);
  expect(text).toContain('error[splice-longer-than-piece]');
  expect(text).toContain('not known');
});

test('a pull over its limits is no go, and the card says by how many figures', () => {
  const text = said(papersOf(plover()).get('brief off-the-ford')!);
  expect(text).toMatch(/NO GO as it stands: \d+ of \d+ figures are above the limit given, or may be/);
  expect(text).toContain('`main outboard` (line) 33.1 kN');
  expect(text).toContain('Once everything above is settled, and not before, pull slowly.');
  expect(text).toContain('Everybody to their places, at least 40 m off.');
  expect(text).toContain('at least 40 m off, as written; the line');
});

test('a pull of which something is not known is no go yet', () => {
  const text = said(papersOf(example('plover.rig').replace(/pull off-the-ford[\s\S]*?\n\}/, 'pull p with bow-winch through long-reach {\n  load plover\n}')).get('brief p')!);
  expect(text).toMatch(/NO GO/);
  expect(text).toContain('not judged');
  expect(text).not.toContain('All ');
});

test('within every limit it is still for whoever leads to decide', () => {
  const rig = `vehicle v {
  mass 1,000 kg
  point bow rated 5 t
}
winch w on v {
  rated 42 kN at layer 1
  barrel 64 mm
  width 230 mm
  flange 165 mm
  keep 10 wraps
  carries main
}
line main {
  material HMPE
  strands 12
  diameter 10 mm
  length 30 m
  breaking 140 kN
  inboard lug
  outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched
}
shackle s {
  form bow
  body 22 mm
  pin 25 mm
  wll 6.5 t
  marking legible
}
anchor a {
  kind ground-anchor
  holding 80 kN "tested 2026-05-02"
}
chain c {
  main outboard -> s -> a
}
pull p with w through c {
  load v
  surface gravel
  grade level
  mired no
  dragging none
  reach 20 m
  people 40 m
}
`;
  const text = said(papersOf(rig).get('brief p')!);
  expect(text).toContain('All 5 figures are within the limits given, but 5 facts not given, below, are to be settled first. Whether it goes is decided on the ground, by whoever leads.');
  expect(text).toMatch(/Pull slowly\. It should take [\d.]+ to [\d.]+ kN at the winch; where it takes more, stop\./);
  expect(text).not.toContain('NO GO');
  // What is not in the bag is counted at the top, not only where the bag is laid out.
  expect(said(papersOf(`${rig}kit k {\n  holds gloves\n}\n`).get('brief p')!)).toMatch(/but 1 warning, \d+ facts? not given and 1 thing not in the bag, below, are to be settled first/);
  // What is needed is said, not the most that the winch can do.
  expect(said(papersOf(rig.replace('rated 42 kN', 'rated 2 kN')).get('brief p')!)).toMatch(/It takes [\d.]+ to [\d.]+ kN at the winch, which pulls [\d.]+ kN: rigged like this it does not move the load\./);
});

test('what is found on the line, the winch and the gear of a pull counts, though every figure is within', () => {
  const winch = 'winch bow-winch on plover {\n  rated     42 kN\n  barrel    64 mm\n  width     230 mm\n  flange    165 mm\n  keep      10 wraps\n  carries   main\n  fairlead  hawse condition sharp\n}\n';
  const line = (entry: string): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  240 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d size 160 mm stitched\n${entry}}\n`;
  const brief = (entry: string, parts: object = {}): string => said(papersOf(pullExample({ line: line(entry), pull: pullWith({ resistance: 'resistance  10 kN "load cell"' }), ...parts })).get('brief off-the-ford')!);
  const whole = brief('');
  expect(whole).toMatch(/All \d+ figures are within the limits given/);
  expect(whole).not.toContain('NO GO');
  // Five of twelve strands: past every limit for a line in use.
  const cut = brief('  2026-06-20  damage cut 5 strands at 12 m from inboard\n');
  expect(cut).toContain('NO GO as it stands: 1 error is found on what it is rigged with.');
  expect(cut).toContain('error[damage-left-in-service] 5 cut strands at 12 m from inboard on `main`');
  expect(cut).toContain('Once everything above is settled, and not before, pull slowly.');
  expect(brief('', { winch })).toContain('error[fairlead-damaged]');
  // No reason sets an error aside.
  expect(brief('  # allow damage-left-in-service: the maker looked at it\n  2026-06-20  damage cut 5 strands at 12 m from inboard\n')).toContain('NO GO as it stands: 2 errors are found');
  // A written reason takes a warning out of the check, and not off the paper that people stand around.
  const scored = winch.replace('condition sharp', 'condition scored');
  expect(brief('', { winch: scored })).toMatch(/but 1 warning and \d+ facts? not given, below, are to be settled first/);
  const aside = brief('', { winch: scored.replace('  fairlead', '  # allow fairlead-damaged: dressed smooth last week\n  fairlead') });
  expect(aside).toMatch(/1 finding, below, is set aside in writing\. Whether it goes/);
  expect(aside).toMatch(/set aside in writing\[fairlead-damaged\] .*, because: dressed smooth last week/);
  // A repair comes first, and what it cuts out does not count.
  const repaired = said(papersOf(plover()).get('brief off-the-ford')!);
  expect(repaired).toContain('Carry out `field-fix` first');
  expect(repaired).not.toContain('damage-left-in-service');
});

test('what a repair leaves in the line, and what is wrong with the file, is on the brief', () => {
  const line = (at: string): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  240 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d size 160 mm stitched\n  2026-06-20  damage cut 4 strands at ${at} from inboard\n}\n`;
  const more = '\nrepair fix on main {\n  cut     at 26 m from inboard\n  splice  outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched\n}\n';
  const chain = 'chain to-the-larch after fix {\n  main outboard -> bow-22 -> trunk -> larch\n}\n';
  const brief = (parts: object, before = ''): string => said(papersOf(before + pullExample({ chain, more, pull: pullWith({ resistance: 'resistance  10 kN "load cell"' }), ...parts })).get('brief off-the-ford')!);
  // The cut takes the damage off, or goes far beyond it.
  expect(brief({ line: line('27 m') })).not.toContain('NO GO');
  expect(brief({ line: line('10 m') })).toMatch(/NO GO as it stands: 1 error is found.*error\[repair-leaves-damage\]/);
  expect(brief({ line: line('25.5 m').replace('cut 4 strands', 'cut 1 strand') })).toContain('warning[damage-in-splice]');
  // Of a file that was not found, and of an unfinished merge, nobody knows what they would say.
  expect(brief({ line: line('27 m') }, 'use "nowhere.rig"\n')).toMatch(/NO GO as it stands: 1 error is found.*error\[use-missing\]/);
  expect(brief({ line: line('27 m') }, '<<<<<<< HEAD\n')).toMatch(/NO GO as it stands: .*error\[conflict-marker\]/);
  // Practice speaks of everything.
  expect(brief({ line: line('27 m') }, 'practice {\n  line-factor 1.01 "me"\n}\n')).toMatch(/NO GO as it stands: .*error\[practice-beyond-published\]/);
});

test('a rig in US customary units has a brief in these alone', () => {
  const rig = `${example('wheatear.rig')}
pull out with bumper through up-the-bank {
  load      wheatear
  surface   shallow-mud
  grade     20 %
  mired     to-hubs
  dragging  2 wheels of 4
  reach     20 ft
  people    110 ft
}
`;
  const pulls = [...papersOf(rig)].filter(([name]) => name.startsWith('brief '));
  expect(pulls.length).toBeGreaterThan(0);
  for (const [, paper] of pulls) expect(said(paper)).toMatch(/needed [\d,]+ to [\d,]+ lbf/);
  for (const [, paper] of pulls) expect(said(paper)).not.toMatch(/\d (?:kN|N|m|mm|kg)\b/);
});

test('without pictures there is no heading over nothing', () => {
  const paper = papersOf(plover()).get('brief off-the-ford')!;
  expect(documentText(paper)).not.toContain('From above');
  expect(documentMarkdown(paper)).not.toContain('From above');
  expect(documentText(paper)).toContain('Who stands where');
});

test('a limit that is only known to be at most so much is no go above that, and not judged below', () => {
  const line = (outboard: string): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  inboard   lug\n  outboard  ${outboard}\n  2026-02-10  heated 80 degC at 12 m from inboard\n}\n`;
  const brief = (outboard: string): string => said(papersOf(pullExample({ line: line(outboard), pull: pullWith({ resistance: 'resistance  20 kN "load cell"' }) })).get('brief off-the-ford')!);
  // 20 of 72 d with 20 of 21 d of taper break at no more than 25.5 kN, of which a factor of 3 leaves 8.49 kN.
  expect(brief('eye bury 20 d taper 20 d size 160 mm stitched')).toContain('`main outboard` (line) 20 kN not known, at most 8.49 kN, NO GO: above it line factor');
  // A full splice breaks at no more than 92 kN, of which the factor leaves 30.7 kN.
  const full = brief('eye bury 72 d taper 24 d size 160 mm stitched');
  expect(full).toContain('nearest to its limit is `main outboard`, at 65.3 % or more');
  expect(full).toContain('`main outboard` (line) 20 kN not known, at most 30.7 kN, not judged: what heat of 80 degC');
});

test('forces that are compared stand in one unit, that of the winch', () => {
  const rig = pullExample({ winch: 'winch bow-winch on plover {\n  rated    4,300 kgf\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  keep     10 wraps\n  carries  main\n}\n' });
  const text = said(papersOf(rig).get('brief off-the-ford')!);
  expect(text).toContain('5,000 kgf');
  // The findings below keep the unit of what they speak of.
  expect(text.slice(0, text.indexOf('What is found on this pull'))).not.toContain('kN');
  expect(findingsIn(rig.replace('wll     5 t', 'wll     2 t')).filter((f) => f.code === 'link-above-limit').map((f) => f.message)).toContain('load on `trunk` is 3,390 kgf, above its working limit of 2,000 kgf (2 t)');
});

test('the card of a line that is not hollow braid leaves the splice to its maker', () => {
  const card = (construction: string): string => said(papersOf(`line main {\n  material polyester\n  strands 12\n  construction ${construction}\n  diameter 12 mm\n  length 25 m\n  breaking 40 kN\n  outboard eye holds 36 kN\n}\nrepair fix on main {\n  cut at 20 m from inboard\n  splice outboard eye bury 24 d taper 8 d\n}\n`).get('card fix')!);
  expect(card('hollow-braid')).toContain('throat mark');
  expect(card('double-braid')).not.toContain('throat mark');
  expect(card('double-braid')).toContain('by its maker\'s splicing instruction: `main` is double-braid, for which no splice is worked out here.');
});

test('what the repair before a pull lacks in the bag is one box of the brief', () => {
  const text = said(papersOf(plover()).get('brief off-the-ford')!);
  expect(text).toContain('for `field-fix`, NOT in the bag: blade, thimble for 10 mm');
});

test('the card and the inspection sheet say what the line has been through', () => {
  const rig = (at: string): string => `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  inboard lug\n  outboard eye thimble tube bury 72 d taper 24 d size 160 mm\n  2026-05-01 fitted\n  2026-06-01 heated 155 degC at ${at} from inboard\n  2026-06-02 pulled 80 kN\n  2027-06-01 damage melt at 5 m from inboard\n}\nrepair fix on main {\n  cut at 25 m from inboard\n  splice outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched\n}\n`;
  const card = (at: string): string => said(papersOf(rig(at)).get('card fix')!);
  expect(card('3 m')).toContain('What is found on `main`, and this repair leaves error[line-heated]');
  // What is cut off is not in the line any more; what was pulled is all of it.
  expect(card('28 m')).not.toContain('error[line-heated]');
  expect(card('28 m')).toContain('error[line-overloaded]');
  expect(card('28 m')).toContain('warning[entry-not-yet]');
  const sheet = said(papersOf(rig('3 m')).get('inspect main')!);
  expect(sheet).toContain('error[line-heated]');
  expect(sheet).toMatch(/4–3 heat of 155 degC/);
  expect(sheet).not.toContain('breaks at');
});

test('of a short tucked splice the card leaves the marks to its maker', () => {
  const rig = (how: string): string => `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  outboard eye thimble tube bury 72 d taper 24 d\n}\nrepair fix on main {\n  cut at 25 m from inboard\n  splice outboard eye thimble tube bury 31.5 d taper 8 d size 160 mm stitched ${how}\n}\n`;
  const card = (how: string): PaperDocument => papersOf(rig(how)).get('card fix')!;
  expect(headings(card('')).some((h) => h.startsWith('Marks'))).toBe(true);
  expect(headings(card('tucked')).some((h) => h.startsWith('Marks'))).toBe(false);
  expect(said(card('tucked'))).toContain('by its maker\'s splicing instruction: which strands are tucked where, only that shows.');
});

test('a plan that does not say how the line comes on to the drum leaves it to whoever stands there', () => {
  const brief = (more: string): string => said(papersOf(pullExample({ pull: `${pullWith({})}${more}` })).get('brief off-the-ford')!);
  const look = 'It comes square on to the drum, or the vehicle is turned first.';
  expect(brief('')).toContain(look);
  expect(brief('  off-square  1 deg\n')).not.toContain(look);
  expect(brief('  stands  larch ahead 20 m\n')).not.toContain(look);
});

test('a brief says what each leg of a bridle that holds a block is made of, and lays something over the legs', () => {
  const text = said(papersOf(pullExample({
    chain: 'chain to-the-larch {\n  main outboard -> plover bow\n  snatch -> bow-22 -> trunk -> larch\n  bow-22 -> other -> fir\n}\n',
    more: 'block snatch {\n  wll 12 t\n}\nstrap other {\n  length 3 m\n  wll 5 t\n}\nanchor fir {\n  kind tree\n  holding 60 kN "tested 2026-05-02"\n}\n',
    pull: pullWith({ via: 'via       snatch fixed angle 0 deg', bridle: 'bridle    60 deg', reach: 'reach     12 m' }),
  })).get('brief off-the-ford')!);
  expect(text).toContain('Lead the line over `snatch`, fast to `bow-22`, and from there its 2 legs: `trunk`, `larch`; `other`, `fir`; the sheave turns');
  expect(text).toContain('over each of the 4 parts of the line and legs');
});

test('what the practice of the shop makes milder stands on every paper, and in the sheet', () => {
  const rig = (practice: string): string => `practice "crew" {\n${practice}}\n${pullExample({ more: 'repair short on main {\n  cut     at 26 m from inboard\n  splice  outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched\n}\n' })}`;
  const papers = papersOf(rig('  line-factor  2 "crew rule 4"\n  bury         HMPE 63 d\n  cut-strands-limit 1 strand\n'));
  const says = 'By the shop\'s own practice milder figures count: line-factor 2 where 3 is built in (crew rule 4); bury HMPE 63 d where 72 d is built in (nothing says why).';
  for (const name of ['brief off-the-ford', 'sheet']) expect(said(papers.get(name)!)).toContain(says);
  for (const name of ['card short', 'inspect main']) expect(said(papers.get(name)!)).toContain(says.replace('line-factor 2 where 3 is built in (crew rule 4); ', ''));
  const careful = papersOf(rig('  line-factor  4\n  keep-wraps   HMPE 1 wrap "it held"\n'));
  for (const text of careful.values()) expect(said(text)).not.toContain('own practice');
});

test('a card says where to cut in the words that were judged: rounded the cut may lie on the other side of the damage', () => {
  const card = (cut: string): string => said(papersOf(pullExample({ more: `repair short on main {\n  cut     at ${cut} from inboard\n  splice  outboard eye thimble tube bury 72 d taper 24 d size 160.4 mm\n}\n` })).get('card short')!);
  for (const cut of ['8.404 m', '30 ft 6 in', '31 ft 4 1/8 in']) expect(card(cut)).toContain(`Cut \`main\` square, ${cut} from inboard`);
});

test('a card cuts from the outer end inward, in whatever order the cuts are written', () => {
  const kept = 'cut     at 9.5 m from inboard keep tail';
  const [inner, outer] = ['cut     at 8.5 m from inboard', 'cut     at 2 m from outboard'];
  const cuts = (...lines: string[]): string[] => [...said(papersOf(pullExample({ more: `repair short on main {\n${lines.map((l) => `  ${l}\n`).join('')}  splice  outboard eye thimble tube bury 72 d taper 24 d size 160 mm\n}\n` })).get('card short')!).matchAll(/Cut `main` square, ([\d.]+ m)/g)].map((m) => m[1]!);
  for (const lines of [[kept, inner, outer], [outer, kept, inner], [inner, outer, kept]]) expect(cuts(...lines)).toEqual(['2 m', '9.5 m', '8.5 m']);
});

test('a splice that is made again begins with drawing the old one out', () => {
  const rig = (more: string): string => `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  outboard bare\n  2026-05-02 splice outboard eye bury 46 d taper 21 d size 160 mm temporary\n}\nrepair fix on main {\n  splice outboard eye bury 72 d taper 24 d size 160 mm stitched${more}\n}\n`;
  expect(said(papersOf(rig(' remade')).get('card fix')!)).toContain('draw its tail out');
  expect(said(papersOf(rig('')).get('card fix')!)).not.toContain('draw its tail out');
});

test('the inspection sheet says first what condemns the line', () => {
  const text = said(papersOf('line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  2026-05-02 fitted\n  2026-06-02 damage cut 3 strands at 8.4 m from inboard\n  2026-06-02 damage cut 1 strand at 20 m from inboard\n}\n').get('inspect main')!);
  expect(text).toMatch(/What is found already.*error\[damage-left-in-service\] 3 cut strands at 8.4 m from inboard/);
});

test('the inspection sheet of a line that is on no drum has both of its ends', () => {
  const eye = 'eye thimble tube bury 72 d taper 24 d stitched';
  const sheet = (more: string): string => said(papersOf(`line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 10 m\n  inboard ${eye}\n  outboard ${eye}\n}\n${more}`).get('inspect main')!);
  expect(sheet('').match(/(?:in|out)board end eye/g)).toEqual(['outboard end eye', 'inboard end eye']);
  // On a drum the inboard end stands with the drum, once.
  expect(sheet('winch w {\n  rated 20 kN\n  carries main\n}\n').match(/inboard end eye/g)).toHaveLength(1);
});

test('the drum and the fairlead stand with the piece that the winch carries', () => {
  const rig = (carried: string): string => `winch w {\n  rated 20 kN\n  carries ${carried}\n  fairlead hawse\n}\nline main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  2026-06-22 cut at 10 m from inboard keep far\n}\n`;
  const order = (carried: string): (string | undefined)[] => said(papersOf(rig(carried)).get('inspect main')!).match(/`(?:main|far)`, from the outer|fairlead of|Drum of/g)!;
  expect(order('main')).toEqual(['fairlead of', '`main`, from the outer', 'Drum of', '`far`, from the outer']);
  expect(order('far')).toEqual(['`main`, from the outer', 'fairlead of', '`far`, from the outer', 'Drum of']);
  expect(said(papersOf(rig('far')).get('inspect main')!)).toContain('The winch is off');
});
