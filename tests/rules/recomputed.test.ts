import { describe, expect, test } from 'vitest';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { sheetOf } from '../../src-core/assess/sheet.ts';
import { judgedPull, judgedRig, loadOn } from '../support/judged-pull.ts';
import { findingsIn } from '../support/judge-text.ts';

// Figures that somebody worked out again by hand, and found too kind.

const said = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.severity}: ${f.message}`);
/** With the 21 m of its reach out, layer 2 is in use: 42 kN x 74 mm / 94 mm = 33.06 kN. */
const chain = (link: string, gear: string): string => pullExample({ chain: `chain to-the-larch {\n  main outboard -> ${link} -> trunk -> larch\n}\n`, more: gear });

describe('a soft shackle and the line it is tied from', () => {
  // Tests of soft shackles: 100 to 170 % of the line with a diamond knot, up to 230 % with a button knot.
  const soft = (statements: string): string => `soft-shackle loop {\n  diameter  11 mm\n${statements.split('; ').map((s) => `  ${s}\n`).join('')}}\n`;
  test('a written limit above what its line may break at', () => {
    const text = chain('loop', soft('wll  60 kN; line-breaking  30 kN'));
    expect(said(text, 'link-above-breaking')).toEqual(['error: load on `loop` is 33.1 kN, above the 30 to 51 kN at which it breaks']);
    expect(said(text, 'design-factor-low')).toEqual(['error: breaking strength of `loop` is 0.5 times its working limit, by the line it is tied from, below the design factor of 5']);
    expect(said(chain('loop', soft('wll  10 kN; line-breaking  50 kN')), 'design-factor-low')).toEqual([]);
  });
  test('a written strength above what any knot leaves', () => {
    expect(said(soft('breaking  116 kN; line-breaking  50 kN'), 'rating-beyond-size')).toEqual(['warning: breaking strength of `loop` is 116 kN, above the 115 kN that the strongest knot leaves of its line']);
    expect(said(soft('breaking  115 kN; line-breaking  50 kN'), 'rating-beyond-size')).toEqual([]);
  });
});

describe('a line of which nothing is left', () => {
  const line = (strands: number): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  140 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n  2026-05-02  fitted\n  2026-06-01  damage  cut ${strands} strands at 5 m from inboard\n}\n`;
  test.each([11, 12])('%i of 12 strands cut', (strands) => {
    // 140 kN × (12 − n)/12 over the factor of 3; the pull is 12 kN.
    const text = pullExample({ line: line(strands), pull: pullWith({ resistance: 'resistance  12 kN "load cell"' }) });
    expect(said(text, 'line-overloaded-by-pull')).toHaveLength(1);
    expect(loadOn(judgedPull(text), 'main outboard')).toBe('12 kN');
  });
});

test('no entry makes a line longer than it was', () => {
  const text = 'line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 40 m\n  inboard lug\n  outboard eye thimble tube bury 72 d taper 24 d size 200 mm\n  2026-05-02 fitted\n  2026-05-03 cut at 9 m from inboard\n  2026-05-04 cut at 11 m from inboard keep mid\n  2026-05-05 cut at 27 m from inboard\n}\n';
  expect(said(text, 'position-beyond-end')).toEqual(['error: this position lies 2 m beyond the end of `main`, which is 9 m long here', 'error: this position lies 18 m beyond the end of `main`, which is 9 m long here']);
});

test('a written limit of a line that may hold less is no limit on the sheet', () => {
  const line = 'line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  140 kN\n  working   30 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n  2026-05-02  fitted\n  2026-06-01  damage  melt at 5 m from inboard\n}\n';
  const rig = judgedRig(pullExample({ line }));
  for (const head of ['chain', 'pull']) {
    const rows = sheetOf(rig.block(head).assessed).flatMap((s) => s.rows).filter((r) => r.group === 'main outboard' && /limit/.test(r.label));
    expect(rows.map((r) => r.value)).toEqual([expect.objectContaining({ unknown: expect.anything(), atMost: expect.anything() })]);
  }
});

describe('figures with more digits than are shown', () => {
  // A limit rounds down and a load up, in whatever unit it was written.
  test('a written limit is not shown as more than it is', () => {
    expect(said(chain('bow-19', 'shackle bow-19 {\n  body 19 mm\n  wll 19.99 kN\n}\n'), 'link-above-limit')).toEqual(['error: load on `bow-19` is 33.1 kN, above its working limit of 19.9 kN (19.99 kN)']);
  });
  test('people who stand a hair too near are not shown to stand right', () => {
    expect(said(pullExample({ pull: pullWith({ people: 'people    32.998 m' }) }), 'people-too-close')).toEqual(['error: people of `off-the-ford` keep 32.99 m off, below the 33 m of the longest line in use']);
  });
});

describe('a vehicle that holds', () => {
  const dipper = 'vehicle dipper {\n  mass   5,200 kg\n  point  stern rated 6 t\n}\n';
  const chainTo = 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper stern\n}\n';
  const rig = (pull: Record<string, string>): string => pullExample({ chain: chainTo, anchor: '', more: dipper, pull: pullWith({ resistance: 'resistance  25 kN "load cell"', ...pull }) });
  // 5,200 kg weigh 50.99 kN. On the level it holds 0.666 of that, 33.96 kN; on 12 deg 50.99 × (0.666 cos 12° − sin 12°) = 22.61 kN.
  const limit = (text: string): string => {
    const found = judgedPull(text).loaded.find((l) => l.name === 'dipper' && l.sort === 'anchor')!;
    return 'unknown' in found.limit ? 'not known' : `${(found.limit.amount.low / 1000).toFixed(2)} to ${(found.limit.amount.high / 1000).toFixed(2)}`;
  };
  test('holds less on the slope that the load is pulled up', () => {
    expect(limit(rig({ grade: 'grade     level' }))).toBe('33.96 to 33.96');
    expect(limit(rig({ grade: 'grade     12 deg' }))).toBe('22.62 to 33.96');
    expect(limit(rig({ grade: 'grade     12 deg', footing: 'footing   dipper level' }))).toBe('33.96 to 33.96');
    expect(limit(rig({ grade: 'grade     12 deg', footing: 'footing   dipper on-slope' }))).toBe('22.62 to 22.62');
    // Steeper than its tyres hold, it holds nothing.
    expect(limit(rig({ grade: 'grade     34 deg', footing: 'footing   dipper on-slope' }))).toBe('0.00 to 0.00');
  });
  test('what it holds only on the level is not judged while nobody says where it stands, and fails on the slope', () => {
    const notGiven = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'missing-fact' && f.message.startsWith('whether `dipper` stands')).map((f) => f.finding.help);
    expect(notGiven(rig({ grade: 'grade     12 deg' }))).toEqual(['add `footing  dipper level` to the pull where it stands so, or `on-slope`']);
    expect(notGiven(rig({ grade: 'grade     12 deg', footing: 'footing   dipper level' }))).toEqual([]);
    expect(said(rig({ grade: 'grade     12 deg', footing: 'footing   dipper on-slope' }), 'anchor-vehicle-too-light')).toEqual(['error: `dipper` holds 22.6 kN in `off-the-ford`, standing on the slope, below the 25 kN on it']);
    expect(said(rig({ grade: 'grade     12 deg', footing: 'footing   dipper level' }), 'anchor-vehicle-too-light')).toEqual([]);
  });
  test('is one thing, whether the route ends at its point or at an anchor of its name', () => {
    // The winch pulls 33.1 kN on the layer in use, and 5,200 kg hold 33.96 kN; 4,000 kg hold 26.12 kN. A tyre that slides breaks nothing.
    const parked = dipper + 'anchor parked {\n  kind     vehicle\n  vehicle  dipper\n}\n';
    const both = ['dipper stern', 'parked'].map((end) => said(pullExample({ chain: `chain to-the-larch {\n  main outboard -> bow-22 -> ${end}\n}\n`, anchor: '', more: parked, pull: pullWith({ resistance: 'resistance  25 kN "load cell"', grade: 'grade     level' }) }), 'anchor-vehicle-slides', 'anchor-overloaded'));
    expect(both).toEqual([[], []]);
    const weak = parked.replace('5,200', '4,000');
    for (const end of ['dipper stern', 'parked']) {
      expect(said(pullExample({ chain: `chain to-the-larch {\n  main outboard -> bow-22 -> ${end}\n}\n`, anchor: '', more: weak, pull: pullWith({ resistance: 'resistance  20 kN "load cell"', grade: 'grade     level' }) }), 'anchor-vehicle-slides')).toHaveLength(1);
    }
  });
});

describe('wire over a block', () => {
  // Hoist manual, table B: at 6 times its diameter wire keeps 79 %, at 10 times 86 %; 90 kN over the factor of 3 is 30 kN.
  const wire = 'line main {\n  material      wire\n  construction  wire-6x19\n  strands       6\n  diameter      10 mm\n  length        30 m\n  breaking      90 kN\n  inboard       lug\n  outboard      eye thimble heart\n}\n';
  const over = (sheave: string, line = wire): string =>
    pullExample({ line, chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> plover bow\n}\n', more: `block snatch {\n  sheave      ${sheave}\n  takes       12 mm\n  wll         12 t\n  efficiency  95 %\n}\n`, pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', reach: 'reach     12 m', people: 'people    50 m' }) });
  const limit = (text: string): string => {
    const { limit: value } = judgedPull(text).loaded.find((l) => l.sort === 'line')!;
    const most = 'unknown' in value ? value.atMost : value;
    return `${'unknown' in value ? 'at most ' : ''}${most === undefined ? 'not known' : (most.amount.high / 1000).toFixed(1)}`;
  };
  test.each([
    ['60 mm', 'at most 23.7'],
    ['100 mm', 'at most 25.8'],
    ['59 mm', 'at most 30.0'],
  ])('of %s', (sheave, expected) => expect(limit(over(sheave))).toBe(expected));
  test('sharper than anything published is a finding, with what is published', () => {
    expect(said(over('59 mm'), 'sheave-too-small')).toEqual(['warning: sheave of `snatch` is 59 mm, 5.9 times the 10 mm of `main`, below the 6 times from which what a bend leaves of wire is published']);
    expect(said(over('60 mm'), 'sheave-too-small')).toEqual([]);
  });
  test('fibre has no such figure, and keeps its limit', () => {
    const fibre = 'line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  90 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n}\n';
    expect(limit(over('60 mm', fibre))).toBe(limit(over('200 mm', fibre)));
  });
});

test('an angle that is not the one between the places', () => {
  const text = (angle: string): string =>
    pullExample({
      more: 'block snatch {\n  sheave      110 mm\n  takes       12 mm\n  wll         20 t\n  efficiency  95 %\n}\nanchor rock {\n  kind     rock\n  holding  200 kN "tested 2026-05-02"\n}\n',
      pull: pullWith({ resistance: 'resistance  12 kN "load cell"', via: `via       snatch fixed on rock angle ${angle}`, stands: 'stands    rock ahead 12 m\n  stands    larch ahead 12 m left 12 m', reach: 'reach     12 m', people: 'people    50 m' }),
    });
  expect(said(text('0 deg'), 'angle-unlike-plan')).toEqual(['error: the angle at `snatch` is 0 deg, and by the places that are given it is 90 deg']);
  expect(said(text('79 deg'), 'angle-unlike-plan')).toHaveLength(1);
  expect(said(text('81 deg'), 'angle-unlike-plan')).toEqual([]);
});

test('the kept wraps hold the inboard end of a line on its drum, however it is made', () => {
  const weaker = (inboard: string, outboard = 'eye thimble tube bury 72 d taper 24 d'): string[] => said(pullExample({ line: `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  140 kN\n  inboard   ${inboard}\n  outboard  ${outboard}\n}\n` }), 'line-weaker-than-winch');
  expect(weaker('knot')).toEqual([]);
  expect(weaker('lug')).toEqual([]);
  // Knots in HMPE slip at 20 to 35 % of break (sailing-press tests): 28 kN of 140 kN are less than the 42 kN of the winch.
  expect(weaker('lug', 'knot')).toEqual(['error: `main` breaks at 28 to 49 kN at its outboard end, below the 42 kN that `bow-winch` can pull']);
});
