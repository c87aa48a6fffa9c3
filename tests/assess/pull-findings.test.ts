import { describe, expect, test } from 'vitest';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { judgedRig } from '../support/judged-pull.ts';

const said = (text: string, code: string) => judgedRig(text).findings.filter((f) => f.code === code);
const only = (text: string, code: string) => {
  const found = said(text, code);
  expect(found.length).toBe(1);
  return found[0]!;
};
const resists = (value: string, more: Record<string, string> = {}): string => pullWith({ resistance: `resistance  ${value} "load cell"`, ...more });

describe('an estimate on either side of a limit', () => {
  test('above it with both ends is an error', () => {
    const finding = only(pullExample({ pull: pullWith({ mired: 'mired     to-hubs' }) }), 'winch-too-weak-for-pull');
    expect(finding.severity).toBe('error');
    expect(finding.message).toBe('`off-the-ford` needs a line pull of 57.3 to 66.1 kN, above the 42 kN of `bow-winch`');
    expect(finding.help).toContain('the army\'s estimate asks for 3 parts');
  });
  test('above it with one end is a warning', () => {
    const finding = only(pullExample({ vehicle: 'vehicle plover {\n  mass   9,000 kg\n  point  bow rated 6 t\n}\n' }), 'winch-too-weak-for-pull');
    expect(finding.severity).toBe('warning');
    expect(finding.message).toBe('`off-the-ford` needs a line pull of 36 to 47.8 kN, above the 42 kN of `bow-winch`');
  });
  test('what is missing keeps a pass from being one, and a failure stays', () => {
    const passing = judgedRig(pullExample({ pull: pullWith({ mired: undefined }) })).block('pull');
    expect(passing.failed).toBe(0);
    expect(passing.notJudged.map((n) => n.rule)).toContain('winch-too-weak-for-pull');
    expect(said(pullExample({ pull: pullWith({ mired: 'mired     to-frame', dragging: undefined }) }), 'winch-too-weak-for-pull').length).toBe(1);
  });
});

test('a layer too high says how much line would do', () => {
  const finding = only(pullExample({ pull: resists('38 kN') }), 'pull-on-high-layer');
  expect(finding.message).toBe('`off-the-ford` needs a line pull of 38 kN, above the 33 kN that `bow-winch` has on layer 2');
  // 23 wraps of 232.5 mm stay on the first layer: 5.35 m of 30 m.
  expect(finding.help).toBe('start with more line out, 24.66 m of it, or double the line over a block');
});

describe('what the pull loads', () => {
  test('a rating that was written as a mass shows both', () => {
    const text = pullExample({ pull: resists('30 kN'), gear: 'shackle bow-22 {\n  body  22 mm\n  wll   2 t\n}\nstrap trunk {\n  length  3 m\n  wll     5 t\n}\n' });
    const finding = only(text, 'link-overloaded-by-pull');
    expect(finding.message).toBe('load on `bow-22` in `off-the-ford` is 30 kN, above its working limit of 19.6 kN (2 t)');
    expect(finding.severity).toBe('error');
    expect(finding.related.map((r) => r.message)).toEqual(['what is loaded']);
  });
  test('a limit that only a factor gives is a warning', () => {
    const text = pullExample({ pull: resists('30 kN'), gear: 'shackle bow-22 {\n  body  22 mm\n  breaking  100 kN\n}\nstrap trunk {\n  length  3 m\n  wll     5 t\n}\n' });
    expect(only(text, 'link-overloaded-by-pull').severity).toBe('warning');
    expect(only(text, 'link-overloaded-by-pull').message).toBe('load on `bow-22` in `off-the-ford` is 30 kN, above its working limit of 20 kN, which the factor leaves of its breaking strength');
  });
  test('a load above what breaks is an error all the same', () => {
    const text = pullExample({ pull: resists('30 kN'), gear: 'shackle bow-22 {\n  body  22 mm\n  breaking  25 kN\n}\nstrap trunk {\n  length  3 m\n  wll     5 t\n}\n' });
    expect(only(text, 'link-overloaded-by-pull').severity).toBe('error');
  });
  test('of the two ends of one line the weaker is spoken of', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> spare inboard\n  spare outboard -> larch\n}\n';
    const spare = 'line spare {\n  material  HMPE\n  diameter  10 mm\n  length    5 m\n  breaking  60 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye bury 40 d taper 24 d\n}\n';
    const finding = only(pullExample({ chain, more: spare, pull: resists('30 kN') }), 'line-overloaded-by-pull');
    expect(finding.message).toContain('pull on `spare outboard`');
  });
  test('a finding on a rating cannot be set aside', () => {
    const text = pullExample({ pull: resists('30 kN'), anchor: 'anchor larch {\n  kind     tree\n  holding  20 kN\n}\n' }).replace('pull off-the-ford', '# allow anchor-overloaded: it always held\npull off-the-ford');
    expect(judgedRig(text).codes).toContain('anchor-overloaded');
    expect(judgedRig(text).codes).toContain('cannot-be-set-aside');
  });
  test('two loads on one tree add up', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> larch\n}\n';
    const dipper = 'vehicle dipper {\n  mass   2,000 kg\n  point  bow rated 6 t\n}\nblock snatch {\n  efficiency  100 %\n  wll         12 t\n}\nblock other {\n  efficiency  100 %\n  wll         12 t\n}\n';
    const text = pullExample({ chain, more: dipper, anchor: 'anchor larch {\n  kind     tree\n  holding  25 kN\n}\n', pull: resists('30 kN', { load: 'load      dipper', via: 'via       snatch travelling on dipper angle 0 deg\n  via       other fixed on larch angle 0 deg after 12 m', reach: 'reach     12 m' }) });
    // Winch, block on the load, block at the tree, end at the tree: not a pull of three parts, and said as it is.
    expect(judgedRig(text).block('pull').assessed.kind).toBe('pull');
    expect(only(text, 'anchor-overloaded').message).toBe('load on `larch` in `off-the-ford` is 15 to 45 kN, above its holding power of 25 kN');
  });
});

test('in US units the findings are in US units', () => {
  const text = pullExample({
    vehicle: 'vehicle plover {\n  mass   5,800 lb\n  point  bow rated 9,500 lb\n}\n',
    winch: 'winch bow-winch on plover {\n  rated    9,500 lbf\n  barrel   2 1/2 in\n  width    9 in\n  flange   6 1/2 in\n  keep     10 wraps\n  carries  main\n}\n',
    line: 'line main {\n  material  HMPE\n  strands   12\n  diameter  3/8 in\n  length    98 ft\n  breaking  31,000 lbf\n  outboard  eye bury 72 d taper 24 d\n}\n',
    gear: 'shackle bow-22 {\n  body  7/8 in\n  wll   6 1/2 short-tons\n}\nstrap trunk {\n  length  10 ft\n  wll     10,000 lb\n}\n',
    pull: pullWith({ mired: 'mired     to-hubs', reach: 'reach     110 ft', people: 'people    50 ft' }),
  });
  expect(only(text, 'winch-too-weak-for-pull').message).toBe('`off-the-ford` needs a line pull of 12,800 to 14,800 lbf, above the 9,500 lbf of `bow-winch`');
  expect(only(text, 'reach-too-short').message).toBe('`off-the-ford` takes 100 to 110 ft of line; `main` is 98 ft long');
  expect(only(text, 'people-too-close').message).toBe('people of `off-the-ford` keep 50 ft off, below the 108 ft of the longest line in use');
});

describe('a joint in a line that goes over a block', () => {
  const spare = (length: string): string => `line spare {\n  material  HMPE\n  diameter  10 mm\n  length    ${length}\n  breaking  140 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye bury 72 d taper 24 d\n}\nblock snatch {\n  wll  12 t\n}\n`;
  const joints = (length: string, via = 'via       snatch fixed on larch angle 0 deg', reach = '20 m'): string[] =>
    said(pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> spare inboard\n  spare outboard -> plover bow\n}\n', more: spare(length), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via, reach: `reach     ${reach}`, people: 'people    90 m' }) }), 'joint-drawn-to-block').map((f) => f.message);
  // Twice 20 m of line, of which the extension is 15 or 21 m: the rest is on the winch's side of the joint.
  test('lies behind the block while more line is out than the block is off', () => {
    expect(joints('15 m')).toEqual(['the joint of `main` and `spare` lies behind `snatch` in `off-the-ford`: 25 m of line are out, and the block is 20 m off']);
    expect(joints('21 m')).toEqual([]);
  });
  test('or than the pull says that it is off', () => {
    expect(joints('15 m', 'via       snatch fixed on larch angle 0 deg after 30 m', '10 m')).toEqual([]);
  });
});
