import { describe, expect, test } from 'vitest';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { findingsIn } from '../support/judge-text.ts';

// What a person does rightly is not complained about, and what a message asks for can be written.

const codes = (text: string): string[] => findingsIn(text).filter((f) => f.severity !== 'hint').map((f) => f.code);
const said = (text: string, ...of: string[]): string[] => findingsIn(text).filter((f) => of.includes(f.code)).map((f) => `${f.severity}: ${f.message}`);
const line = (facts: string, log = ''): string => `line main {\n  diameter 9 mm\n  length 25 m\n  breaking 52 kN\n${facts}${log}}\n`;

describe('wire', () => {
  // NAVEDTRA 14160 speaks of fibre; that water takes the grease out of wire is common practice.
  const wire = line('  material wire\n  construction wire-6x19\n  stored outdoors\n  inboard lug\n  outboard hook holds 48 kN\n', '  2020-04-02 fitted\n  2026-06-20 inspected\n  2026-06-20 pulled 30 kN\n');
  test('does not weather like fibre and is not washed', () => {
    expect(codes(wire)).toEqual([]);
    // Who writes either of the two has said that it is steel.
    for (const said of ['  material wire\n', '  construction wire-6x19\n']) expect(codes(wire.replace(said, ''))).toEqual(codes(wire));
    expect(codes(wire.replace('material wire', 'material polyester').replace('  construction wire-6x19\n', ''))).toEqual(expect.arrayContaining(['outdoors-too-long', 'washing-overdue']));
  });
  // 29 CFR 1926.1413(a)(2)(i) and (ii), read.
  test.each([
    ['broken-wires', 'broken wires at 8 m from inboard on `main` are left in service'],
    ['rust', 'rust at 8 m from inboard on `main` is left in service'],
    ['birdcage', 'strands that stand out at 8 m from inboard on `main` are left in service'],
    ['flattened', 'flattening at 8 m from inboard on `main` is left in service'],
    ['kink', 'kink at 8 m from inboard on `main` is left in service'],
  ])('%s takes it out of service there', (kind, message) => {
    const text = wire.replace('  2026-06-20 pulled 30 kN\n', `  2026-06-20 damage ${kind} at 8 m from inboard\n`);
    expect(said(text, 'damage-left-in-service')).toEqual([`error: ${message}`]);
    expect(findingsIn(text).find((f) => f.code === 'damage-left-in-service')!.finding.source).toContain('29 CFR 1926.1413(a)(2)(i)');
  });
  test('and is not mended', () => {
    const text = wire.replace('  2026-06-20 pulled 30 kN\n', '  2026-06-20 damage flattened at 8 m from inboard\n  2026-06-21 mended flattened at 8 m from inboard\n');
    expect(said(text, 'damage-left-in-service', 'mended-nothing')).toEqual(['error: flattening at 8 m from inboard on `main` is left in service', 'error: `main` is wire, which is not mended: what was crushed or kinked stays weak']);
  });
  test('what its end holds is judged by what its maker gives', () => {
    expect(said(wire.replace('pulled 30 kN', 'pulled 40 kN'), 'line-overloaded')).toHaveLength(1);
    expect(said(wire.replace(' holds 48 kN', '').replace('pulled 30 kN', 'pulled 38 kN'), 'missing-fact')).not.toEqual([]);
  });
});

describe('an end that nothing is worked out for', () => {
  const laid = (end: string, construction = 'laid'): string => line(`  material nylon\n  strands 3\n  construction ${construction}\n  wet no\n  stored covered\n  outboard ${end}\n`, '  2026-06-14 fitted\n  2026-06-20 pulled 20 kN\n');
  test('line that is not hollow braid is not asked for a bury', () => {
    expect(codes(laid('eye bury 15 d'))).toEqual(['missing-fact']);
    expect(codes(laid('eye'))).toEqual(['missing-fact']);
    expect(codes(laid('eye bury 15 d', 'hollow-braid'))).toContain('bury-too-short');
  });
  test('what its splice takes is not worked out', () => {
    const spliced = (construction: string, last: string): string[] => said(line(`  material polyester\n  strands 12\n  construction ${construction}\n  stored covered\n  outboard eye holds 45 kN\n`, `  2026-06-14 fitted\n  2026-06-20 cut at 20 m from inboard keep tail\n  2026-06-20 ${last}\n`) + 'winch w {\n  rated 5 kN at layer 1\n  barrel 64 mm\n  width 230 mm\n  flange 165 mm\n  carries main\n}\n', 'missing-fact').filter((m) => m.includes('this splice takes'));
    for (const last of ['splice outboard eye bury 24 d taper 8 d', 'join main to tail bury 24 d taper 8 d']) {
      expect(spliced('double-braid', last)).toHaveLength(1);
      expect(spliced('hollow-braid', last)).toEqual([]);
    }
  });
  test('its maker may say what it holds, and no more than the line does', () => {
    expect(codes(laid('eye holds 45 kN'))).toEqual([]);
    expect(said(laid('eye holds 25 kN'), 'line-overloaded')).toHaveLength(1);
    expect(said(laid('eye holds 900 kN').replace('pulled 20 kN', 'pulled 40 kN'), 'line-overloaded')).toHaveLength(1);
  });
  test('of a splice that is worked out the lower of the two counts', () => {
    const braid = (end: string, pulled: string): string => line(`  material HMPE\n  strands 12\n  stored covered\n  outboard ${end}\n`, `  2026-06-14 fitted\n  2026-06-20 pulled ${pulled}\n`);
    // 36 of 72 diameters are counted at a half of 90 % of 52 kN; three quarters of that are 17.5 kN.
    expect(said(braid('eye bury 36 d taper 24 d holds 50 kN', '18 kN'), 'line-overloaded')).toHaveLength(1);
    expect(said(braid('eye holds 50 kN', '18 kN'), 'line-overloaded', 'taper-missing', 'missing-fact')).toEqual([]);
  });
});

// Statics: two parts at 150° between them pull with 2 T cos 75° at a block: 42 kN give 21.7 kN, and 84 kN where they lie together.
test('a chain is judged at the angle that its pull gives', () => {
  const more = 'block snatch {\n  sheave 110 mm\n  takes 12 mm\n  wll 12 t\n}\n\nanchor rock {\n  kind rock\n  holding 30 kN "tested 2026-05-02"\n}\n';
  const turned = (via: string): string[] => said(pullExample({ more, chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n  snatch -> rock\n}\n', pull: pullWith({ resistance: 'resistance  6 kN "load cell"', via }) }), 'link-above-limit').filter((m) => m.includes('rock'));
  expect(turned('via       snatch fixed angle 150 deg after 9 m')).toEqual([]);
  expect(turned('via       snatch fixed angle 120 deg after 9 m')).toEqual(['error: load on `rock` is up to 42 kN, above its holding power of 30 kN, because both parts of the line pull at the block']);
  expect(turned('via       snatch fixed after 9 m')).toEqual(['error: load on `rock` is up to 84 kN, above its holding power of 30 kN, because both parts of the line pull at the block']);
  // Places may say something else than the angle: both parts are taken to pull the same way.
  expect(turned('via       snatch fixed angle 150 deg after 9 m\n  stands    larch ahead 21 m')[0]).toContain('84 kN');
  // From the rock, 9 m ahead, the winch is seen behind and the larch ahead to the left: the line turns by the angle whose tangent is 9/9, and 135° lie between its parts: 32.2 kN.
  const places = (larch: string, angle = ''): string[] => turned(`via       snatch fixed${angle}\n  stands    rock ahead 9 m\n  stands    larch ${larch}`);
  expect(places('ahead 18 m left 9 m')).toEqual(['error: load on `rock` is up to 32.2 kN, above its holding power of 30 kN, because both parts of the line pull at the block']);
  expect(places('ahead 21 m left 4 m')).toEqual([]);
  // Of two that differ, the one that loads more.
  expect(places('ahead 21 m left 4 m', ' angle 120 deg')[0]).toContain('42 kN');
  expect(places('ahead 9 m left 9 m', ' angle 150 deg')[0]).toContain('59.4 kN');
});
test('of the pulls through a chain the one with the least angle counts, in words or by its places', () => {
  const rig = pullExample({
    more: `block snatch {\n  sheave 110 mm\n  takes 12 mm\n  wll 12 t\n}\n\nanchor rock {\n  kind rock\n  holding 30 kN "tested 2026-05-02"\n}\n\npull again with bow-winch through to-the-larch {\n${pullWith({ resistance: 'resistance  6 kN "load cell"', via: 'via       snatch fixed\n  stands    rock ahead 9 m\n  stands    larch ahead 9 m left 9 m' })}}\n`,
    chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n  snatch -> rock\n}\n',
    pull: pullWith({ resistance: 'resistance  6 kN "load cell"', via: 'via       snatch fixed angle 150 deg after 9 m' }),
  });
  // At 90° both parts pull with 42 √2.
  const rock = (text: string): string[] => said(text, 'link-above-limit').filter((m) => m.includes('rock'));
  expect(rock(rig)[0]).toContain('59.4 kN');
  expect(rock(rig.replace('larch ahead 9 m left 9 m', 'larch ahead 21 m left 4 m'))).toEqual([]);
  expect(rock(rig.replace('  stands    larch ahead 9 m left 9 m\n', ''))[0]).toContain('84 kN');
});

test('a choker of which the label gives the limit is not told of again', () => {
  const choker = (hitch: string): string[] => said(`strap trunk {\n  kind    static\n  length  3 m\n  wll     4 t\n  hitch   ${hitch}\n}\n`, 'strap-as-choker');
  expect(choker('choker')).toEqual(['information: as a choker `trunk` counts with 19.6 kN, half of its 39.2 kN (4 t)']);
  expect(choker('choker wll 3.2 t')).toEqual([]);
});

test('a block of a chain that another pull leads its line over is not left out', () => {
  const second = (via: string): string => `pull again with bow-winch through to-the-larch {\n${pullWith({ via })}}\n`;
  const left = (via: string | undefined, also: string): string[] => said(pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n  snatch -> rock\n}\n', more: `block snatch {\n  sheave 110 mm\n  takes 12 mm\n  wll 12 t\n}\n\nanchor rock {\n  kind rock\n  holding 200 kN "tested 2026-05-02"\n}\n\nblock other {\n  wll 12 t\n}\n\n${also}`, pull: pullWith({ via }) }), 'block-left-out');
  const over = 'via       snatch fixed angle 30 deg after 9 m';
  expect(left(undefined, second(over))).toEqual([]);
  expect(left(over, second(over))).toEqual([]);
  // Where none does, or over another block, both are told.
  expect(left(undefined, second('via       other fixed on rock angle 30 deg after 9 m'))).toEqual(['off-the-ford', 'again'].map((name) => `warning: \`snatch\` hangs in \`to-the-larch\`, and \`${name}\` does not lead its line over it`));
});

test('a load that is let down is not called level', () => {
  expect(findingsIn(pullExample({ pull: pullWith({ grade: 'grade     -8 deg' }) })).find((f) => f.code === 'value-out-of-range')!.finding.help).toContain('let down is not worked out here');
});

test('a log drags with all of its weight', () => {
  const needed = (dragging: string): string[] => said(pullExample({ winch: 'winch bow-winch on plover {\n  rated 1 kN\n}\n', pull: pullWith({ dragging: `dragging  ${dragging}` }) }), 'winch-too-weak-for-pull');
  expect(needed('all')).toEqual(needed('4 wheels of 4'));
  expect(needed('all')).toHaveLength(1);
  expect(needed('all')).not.toEqual(needed('none'));
  expect(said(pullExample({ pull: pullWith({ dragging: 'dragging  all 2 wheels of 4' }) }), 'says-two-things')).toHaveLength(1);
});

test('a hook that is on the line is not looked for in the bag', () => {
  const rig = (end: string): string[] => said(pullExample({
    line: `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 140 kN\n  inboard lug\n  outboard ${end} bury 72 d taper 24 d\n}\n`,
    chain: 'chain to-the-larch {\n  main outboard -> clevis -> trunk -> larch\n}\n',
    more: 'hook clevis {\n  latch closes\n  wll 8 t\n}\n\nkit bag {\n  holds gloves\n}\n',
  }), 'kit-lacks-gear').filter((m) => m.includes('clevis'));
  expect(rig('hook')).toEqual([]);
  expect(rig('eye thimble tube')).toHaveLength(1);
});

// Maker's published instruction, 12-strand high-modulus eye splice: three fids, 63 diameters.
test('a bury of three fids is told where to write its maker\'s figure', () => {
  const help = (bury: string): string[] => findingsIn(line(`  material HMPE\n  strands 12\n  outboard eye bury ${bury} taper 24 d\n`)).filter((f) => f.code === 'bury-too-short').map((f) => f.finding.help);
  expect(help('63 d')[0]).toContain('`bury HMPE 63 d "maker\'s sheet"`');
  expect(help('62.9 d')[0]).not.toContain('practice');
  expect(findingsIn(`practice {\n  bury  HMPE 63 d "maker's sheet"\n}\n${line('  material HMPE\n  strands 12\n  outboard eye bury 63 d taper 24 d\n')}`).filter((f) => f.severity === 'error' || f.severity === 'warning')).toEqual([]);
});

test('few strands, of which nobody wrote how they are made, are spliced no more than laid ones', () => {
  const takes = (strands: number): string[] => said(line(`  material nylon\n  strands ${strands}\n  stored covered\n  outboard eye holds 45 kN\n`, '  2026-06-14 fitted\n  2026-06-20 cut at 20 m from inboard\n  2026-06-20 splice outboard eye bury 24 d taper 8 d\n') + 'winch w {\n  rated 5 kN at layer 1\n  barrel 64 mm\n  width 230 mm\n  flange 165 mm\n  carries main\n}\n', 'missing-fact').filter((m) => m.includes('this splice takes'));
  expect(takes(3)).toHaveLength(1);
  expect(takes(12)).toEqual([]);
});
