import { describe, expect, test } from 'vitest';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { sheetOf } from '../../src-core/assess/sheet.ts';
import { judgedPull, judgedRig, loadOn } from '../support/judged-pull.ts';
import { findingsIn } from '../support/judge-text.ts';

// Figures that somebody worked out again by hand, and found too kind.

const said = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.severity}: ${f.message}`);
const chain = (link: string, gear: string): string => pullExample({ chain: `chain to-the-larch {\n  main outboard -> ${link} -> trunk -> larch\n}\n`, more: gear });

describe('a soft shackle and the line it is tied from', () => {
  // Tests of soft shackles: 100 to 170 % of the line with a diamond knot, up to 230 % with a button knot.
  const soft = (statements: string): string => `soft-shackle loop {\n  diameter  11 mm\n${statements.split('; ').map((s) => `  ${s}\n`).join('')}}\n`;
  test('a written limit above what its line may break at', () => {
    const text = chain('loop', soft('wll  60 kN; line-breaking  30 kN'));
    expect(said(text, 'link-above-breaking')).toEqual(['error: load on `loop` is 42 kN, above the 30 to 51 kN at which it breaks']);
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
    const text = pullExample({ line: line(strands), pull: pullWith({ resistance: 'resistance  12 kN' }) });
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
    expect(said(chain('bow-19', 'shackle bow-19 {\n  body 19 mm\n  wll 19.99 kN\n}\n'), 'link-above-limit')).toEqual(['error: load on `bow-19` is 42 kN, above its working limit of 19.9 kN (19.99 kN)']);
  });
  test('people who stand a hair too near are not shown to stand right', () => {
    expect(said(pullExample({ pull: pullWith({ people: 'people    32.998 m' }) }), 'people-too-close')).toEqual(['error: people of `off-the-ford` keep 32.99 m off, below the 33 m of the longest line in use']);
  });
});
