import { describe, expect, test } from 'vitest';
import { rules } from '../../src-core/rules/all.ts';
import { findingsIn } from '../support/judge-text.ts';

const badExample = (name: string): string => rules.find((rule) => rule.name === name)!.bad;
const about = (text: string, code: string) => findingsIn(text).filter((f) => f.code === code);
const said = (text: string, code: string): string[] => about(text, code).map((f) => `${f.line}:${f.column} ${f.severity}: ${f.message}`);

/** The text with a part of it put in another way; the part has to be there. */
function put(text: string, part: string, other: string): string {
  if (!text.includes(part)) throw new Error(`no ${part}`);
  return text.replace(part, other);
}

describe('the weakest link at the anchor', () => {
  const route = 'main outboard -> bow-22 -> trunk -> larch';
  const base = badExample('weak-link-at-anchor');
  const weak = (other: string, more = '', text = base): string[] => about(put(text, route, other) + more, 'weak-link-at-anchor').map((f) => f.message);
  const tail = 'line tail {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 12 m\n  breaking 100 kN\n  inboard eye thimble tube bury 72 d taper 24 d\n  outboard eye thimble tube bury 72 d\n}\n';
  // The strap's limit of 2.1 t is 20.6 kN, five times that 102.9 kN.
  const trunk = '`trunk` at `larch` breaks first of all links of `reach`, at 102 kN';
  test('of three links, of two, and of one alone', () => {
    expect(weak(route)).toEqual([trunk]);
    expect(weak('bow-22 -> trunk -> larch')).toEqual([trunk]);
    expect(weak('trunk -> larch')).toEqual([]);
  });
  test('a chain that ends at a vehicle has no anchor to fly from', () => {
    expect(weak('main outboard -> bow-22 -> trunk -> plover bow', 'vehicle plover {\n  mass 3 t\n  point bow rated 30 t breaking 90 t\n}\n')).toEqual([]);
  });
  test('an anchor behind an anchor is no link that breaks', () => {
    expect(weak('main outboard -> bow-22 -> trunk -> larch -> larch')).toEqual([]);
  });
  test('ranges are compared by their low ends', () => {
    // A splice of main leaves 198 to 220 kN.
    expect(weak(route, '', put(base, 'wll     2.1 t', 'breaking 198 kN'))).toEqual([]);
    expect(weak(route, '', put(base, 'wll     2.1 t', 'breaking 197 kN'))).toEqual(['`trunk` at `larch` breaks first of all links of `reach`, at 197 kN']);
    // The tapered eye of tail leaves 90 to 100 kN, the blunt one 8.7 % less of both.
    expect(weak('main outboard -> bow-22 -> tail inboard\n  tail outboard -> larch', tail)).toEqual(['`tail outboard` at `larch` breaks first of all links of `reach`, at 82.1 to 91.3 kN']);
  });
});

describe('rope on rope', () => {
  const base = badExample('rope-on-rope');
  const offered = (text: string): string[] => about(text, 'rope-on-rope').flatMap((f) => f.finding.fixes.map((fix) => `${fix.title}: ${fix.edits.map((e) => e.text).join()}`));
  test('a shackle of the file that takes the load is put between, the first that the chain does not use', () => {
    expect(said(base, 'rope-on-rope')).toEqual(['35:3 warning: `main` outboard eye bears on `tail` inboard eye, rope on rope']);
    expect(offered(base)).toEqual(['Put `bow-22` between them:  -> bow-22']);
    expect(offered(put(base, 'bow-19 -> trunk', 'bow-22 -> trunk'))).toEqual(['Put `bow-19` between them:  -> bow-19']);
    expect(offered(put(put(base, 'bow-19 -> trunk', 'bow-22 -> trunk'), 'shackle bow-19', 'ring bow-19'))).toEqual([]);
  });
  test.each([['20 kN', true], ['19.9 kN', false]])('a limit of %s against a load of 20 kN', (wll, taken) => {
    expect(offered(put(base, 'wll   6.5 t', `wll   ${wll}`))).toEqual(taken ? ['Put `bow-22` between them:  -> bow-22'] : []);
  });
});

describe('repairs and routes of a chain', () => {
  const base = badExample('repair-outside-chain');
  test('a repair of another line, of no known line, and one that leaves a link unknown', () => {
    expect(said(base, 'repair-outside-chain')).toEqual(['34:19 hint: `field-fix` is a repair of `tail`, which `reach` does not use']);
    expect(said(put(base, 'field-fix on tail', 'field-fix on nowhere'), 'repair-outside-chain')).toEqual([]);
    expect(said(put(base, 'main outboard -> bow-22 -> trunk', 'main outboard -> bow-22 -> stub inboard\n  stub outboard -> trunk') + '\nrepair other on main {\n  cut at 20 m from inboard keep stub\n}\n', 'repair-outside-chain')).toEqual([]);
  });
  test('a route that begins with a block may hang alone, one that goes on to a block may not', () => {
    const routes = badExample('routes-not-joined');
    const snatch = '\nblock snatch {\n  wll 8 t\n}\n';
    const alone = ['36:3 warning: nothing joins this route to the first one of `reach`'];
    expect(said(routes, 'routes-not-joined')).toEqual(alone);
    expect(said(put(routes, 'bow-19 -> trunk -> larch', 'bow-19 -> snatch -> larch') + snatch, 'routes-not-joined')).toEqual(alone);
    expect(said(put(routes, 'bow-19 -> trunk -> larch', 'snatch -> bow-19 -> larch') + snatch, 'routes-not-joined')).toEqual([]);
    expect(said(put(routes, 'bow-19 -> trunk -> larch', 'snatch -> bow-19\n  bow-19 -> trunk -> larch') + snatch, 'routes-not-joined')).toEqual([]);
    expect(said(put(routes, 'bow-19 -> trunk -> larch', 'snatch -> bow-19\n  trunk -> larch') + snatch, 'routes-not-joined')).toEqual(['37:3 warning: nothing joins this route to the first one of `reach`']);
  });
});

describe('bends', () => {
  const sheave = (diameter: string): string[] => said(put(badExample('sheave-too-small'), 'sheave  45 mm', `sheave  ${diameter}`), 'sheave-too-small');
  test('a sheave of five times the line is within practice', () => {
    expect(sheave('50 mm')).toEqual([]);
    expect(sheave('49 mm')).toEqual(['48:12 warning: sheave of `snatch` is 49 mm, 4.9 times the 10 mm of `main`, below 5 times']);
  });
  test('where body and pin are as thick, the body is spoken of', () => {
    const text = put(badExample('bend-over-small-pin'), 'pin   22 mm', 'pin   19 mm');
    const related = about(text, 'bend-over-small-pin')[0]!.finding.related.map(({ place }) => (place.chunk as { text: string }).text.slice(place.start, place.end));
    expect(related).toEqual(['19 mm', '11 mm']);
    expect(about(text, 'bend-over-small-pin')[0]!.finding.related[0]!.place.start).toBe('\nshackle bow-22 {\n  form  bow\n  body  '.length);
  });
});

describe('a winch and its line', () => {
  const base = badExample('line-factor-too-low');
  const damaged = (log: string, code: string): string[] => said(put(base, '  outboard  eye thimble tube bury 72 d taper 24 d\n', `  outboard  eye thimble tube bury 72 d taper 24 d\n${log}`), code);
  test('a written working limit is marked where it stands', () => {
    expect(said(badExample('winch-above-working-limit'), 'winch-above-working-limit')).toEqual(['15:13 error: `bow-winch` can pull 42 kN, above the working limit of 28 kN of `main`']);
  });
  test('a line is too weak where its damage stands, at its end, or as its tag says', () => {
    const weaker = (breaking: string, log = '') => said(put(put(base, '92 kN', breaking), '  outboard  eye thimble tube bury 72 d taper 24 d\n', `  strands   12\n  outboard  eye thimble tube bury 72 d taper 24 d\n${log}`), 'line-weaker-than-winch');
    expect(weaker('92 kN')).toEqual([]);
    const saying = (place: string, strength: string, where = ''): string[] => [`${place} error: \`main\` breaks at ${strength}${where}, below the 42 kN that \`bow-winch\` can pull`];
    // A full eye keeps 90 to 100 %: 36 to 40 kN of 40, and 40.5 to 45 of 45, which the tag alone would not be short of.
    expect(weaker('40 kN')).toEqual(saying('14:3', '36 to 40 kN'));
    expect(weaker('45 kN')).toEqual(saying('16:3', '40.5 to 45 kN', ' at its outboard end'));
    // Four strands of twelve: a third of 92 kN.
    expect(weaker('92 kN', '  2026-06-01  damage  cut 8 strands at 10 m from inboard\n')).toEqual(saying('17:3', '30.6 kN', ' at its 8 cut strands at 10 m from inboard'));
    expect(weaker('45 kN', '  2026-06-01  cut  at 20 m from inboard keep tail\n  2026-06-01  join  main to tail bury 72 d taper 24 d\n')).toEqual(saying('18:3', '40.5 to 45 kN', ' at its end-to-end splice'));
  });
  test('a repair that leaves the winch its line as it was says nothing of it again', () => {
    const text = damaged('  2026-06-01  cut  at 20 m from inboard keep tail\n  2026-06-01  splice outboard eye thimble tube bury 72 d taper 24 d\n', 'line-factor-too-low');
    expect(text).toHaveLength(1);
    const repaired = put(base, '  outboard  eye thimble tube bury 72 d taper 24 d\n', '  outboard  eye thimble tube bury 72 d taper 24 d\n  2026-06-01  cut  at 20 m from inboard keep tail\n  2026-06-01  splice outboard eye thimble tube bury 72 d taper 24 d\n') + '\nrepair new-eye on main {\n  splice  tail inboard eye thimble tube bury 72 d taper 24 d\n}\n';
    expect(said(repaired, 'line-factor-too-low')).toEqual(text);
  });
});

test('damage that a repair leaves is cut out, or the line is retired', () => {
  const base = badExample('repair-leaves-damage');
  expect(about(base, 'repair-leaves-damage').map((f) => f.finding.help)).toEqual(['cut on the other side of it too, or farther on']);
  const atDrum = put(put(base, 'damage  melt at 24.4 m', 'damage  melt at 1.2 m'), 'at 25 m', 'at 1.6 m');
  expect(about(atDrum, 'repair-leaves-damage').map((f) => f.finding.help)).toEqual(['cut on the other side of it too, or farther on; `drop inboard` behind the cut drops the end at the drum instead of the outer one']);
  expect(about(put(put(atDrum, 'at 1.6 m from inboard', 'at 0.8 m from inboard drop inboard'), '  splice  outboard eye thimble tube bury 72 d taper 24 d stitched', '  splice  inboard lug'), 'repair-leaves-damage').map((f) => f.finding.help)).toEqual(['cut on the other side of it too, or farther on']);
  expect(about(put(base, 'damage  melt', 'damage  brittle'), 'repair-leaves-damage').map((f) => f.finding.help)).toEqual(['retire the line instead']);
});
