import { describe, expect, test } from 'vitest';
import { isUnknown } from '../../src-core/mechanics/derivation.ts';
import { bow22, frontWinch, larch, mainLine, reachByTrunk } from '../../src-core/rules/example-blocks.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { findingsIn } from '../support/judge-text.ts';
import { judgedPull } from '../support/judged-pull.ts';

const said = (text: string, ...codes: string[]): string[] => findingsIn(text).filter((f) => codes.includes(f.code)).map((f) => `${f.severity}: ${f.message}`);
const asked = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'missing-fact').map((f) => f.message);

describe('what goes round an anchor', () => {
  const chain = (strap: string, route: string, anchor = larch): string => `${frontWinch}\n${mainLine}\n${bow22}\n${anchor}\nchain reach {\n  main outboard -> ${route}\n}\nstrap trunk {\n${strap}  wll  4 t\n}\n`;
  // Common practice: a strap goes round a tree, as a basket or a choker, never the line.
  test.each([
    ['larch', ['warning: `main outboard` cannot go round `larch`, which is a tree']],
    ['bow-22 -> larch', ['warning: `bow-22` cannot go round `larch`, which is a tree']],
    ['bow-22 -> trunk -> larch', []],
  ])('%s', (route, expected) => expect(said(chain('', route), 'nothing-round-anchor')).toEqual(expected));

  test('what has an eye of its own is hooked into', () => {
    for (const kind of ['ground-anchor', 'pickets', 'vehicle']) expect(said(chain('', 'bow-22 -> larch', larch.replace('tree', kind)), 'nothing-round-anchor')).toEqual([]);
    expect(said(chain('', 'bow-22 -> larch', larch.replace('tree', 'rock')), 'nothing-round-anchor')).toHaveLength(1);
  });

  test.each([
    ['  hitch  straight\n', ['warning: `trunk` is hitched end to end, and at `larch`, a tree, something goes round']],
    ['  hitch  basket\n', []],
    ['  hitch  choker\n', []],
    // Geometry, legs 120° apart (29 CFR 1918 app. II table 2 rates no basket wider): round 1.3 m they take 1.3 m x (1/2 + 1/3 + 1/(π tan 60°)) = 1.3222 m.
    ['  length  1.3 m\n', ['warning: `trunk` is 1.3 m long, below the 1.33 m that reach round `larch` with 120° between the legs']],
    ['  length  1.32 m\n  hitch  basket\n', ['warning: `trunk` is 1.32 m long, below the 1.33 m that reach round `larch` with 120° between the legs']],
    ['  length  1.323 m\n', []],
  ])('a strap with %j', (strap, expected) => expect(said(chain(strap, 'bow-22 -> trunk -> larch'), 'strap-not-round-anchor')).toEqual(expected));

  test('a route may begin at the tree', () => {
    const from = chain('  length  1 m\n  hitch  straight\n', 'bow-22\n  larch -> trunk -> bow-22');
    expect(said(from, 'strap-not-round-anchor')).toHaveLength(2);
    expect(said(from, 'nothing-round-anchor')).toEqual([]);
  });

  test('a strap between two shackles is no strap round anything', () => {
    const text = `${frontWinch}\n${mainLine}\n${bow22}\n${reachByTrunk.replace('larch', 'plover bow')}\nstrap trunk {\n  wll  4 t\n  hitch  straight\n}\nvehicle plover {\n  mass  2,650 kg\n  point  bow rated 6 t\n}\n`;
    expect(said(text, 'strap-not-round-anchor', 'nothing-round-anchor')).toEqual([]);
  });
});

describe('what an anchor is written to hold', () => {
  const dipper = 'vehicle dipper {\n  mass  4,000 kg\n  point  stern rated 6 t\n}\n';
  const anchor = (lines: string): string => `anchor larch {\n${lines}}\n`;
  // Towing training text: 0.666 of the weight, 0.666 x 4,000 kg x 9.80665 = 26.12 kN.
  test.each([
    ['26.4 kN', ['warning: `larch` is written to hold 26.4 kN; braked, `dipper` holds 26.1 kN']],
    // Rounded, as in another unit, it is the same figure.
    ['26.2 kN', []],
  ])('a vehicle, %s', (holding, expected) => expect(said(dipper + anchor(`  kind  vehicle\n  vehicle  dipper\n  holding  ${holding} "old hand"\n`), 'holding-above-published')).toEqual(expected));

  // US Army TM 5-5420-278-10, WP 0035: a single picket in loam holds 700 lb.
  test('pickets in loam, and in ground for which nothing is published', () => {
    const pickets = (soil: string): string => anchor(`  kind  pickets\n  pickets  single\n  soil  ${soil}\n  holding  60 kN "book"\n`);
    expect(said(pickets('loam'), 'holding-above-published')).toEqual(['warning: `larch` is written to hold 60 kN; published figures make 3.11 kN of it']);
    expect(said(pickets('wet'), 'holding-above-published')).toEqual([]);
  });

  test('somebody answers for it', () => {
    expect(said(anchor('  kind  tree\n  holding  40 kN\n'), 'holding-without-source')).toEqual(['warning: what `larch` holds does not say who tested it, or who answers for it']);
    expect(said(anchor('  kind  tree\n  holding  40 kN "warden, 2026-05-02"\n'), 'holding-without-source')).toEqual([]);
  });

  test('a vehicle called an anchor is held by one of its points, which nobody names there', () => {
    const parked = pullExample({ anchor: anchor('  kind  vehicle\n  vehicle  dipper\n'), more: dipper.replace('4,000', '9,000') });
    expect(asked(parked)).toContain('which recovery point of `dipper` is used is not given; 1 check not judged');
    expect(judgedPull(parked).loaded.filter((l) => l.sort === 'point').map((l) => [l.name, isUnknown(l.limit)])).toEqual([['point of dipper', true]]);
  });

  // The towing training text speaks of firm ground.
  test.each([
    ['gravel', '', false],
    ['snow', '', true],
    ['snow', '\n  footing   dipper level', true],
    ['snow', '\n  footing   dipper level firm', false],
    ['snow', '\n  footing   plover level firm', true],
  ])('a braked vehicle beside a pull over %s%s', (surface, footing, isAsked) => {
    const text = pullExample({ anchor: '', chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper stern\n}\n', more: dipper.replace('4,000', '9,000'), pull: pullWith({ surface: `surface   ${surface}${footing}`, grade: 'grade     level' }) });
    expect(asked(text).some((f) => f.includes('whether `dipper` stands on firm ground is not given, and `off-the-ford` leads over snow'))).toBe(isAsked);
  });
});

describe('what a pull moves', () => {
  const load = (written: string): string => pullExample({ pull: pullWith({ load: `load      ${written}` }) });
  test.each([
    ['plover 2,620 kg', ['warning: `plover` counts with 2,620 kg in `off-the-ford`, less than the 2,650 kg that it weighs by its own block']],
    ['plover 2,620 kg "weighbridge"', []],
    ['plover 5,840 lb', []],
    ['plover 2,650 kg', []],
    ['plover 3 t', []],
  ])('%s', (written, expected) => expect(said(load(written), 'load-lighter-than-mass')).toEqual(expected));

  test('a weight alone is not what the winch draws itself along with', () => {
    expect(said(load('1 t'), 'pull-without-load')).toEqual(['error: what the line of `off-the-ford` moves is `plover`, and the load is written as a weight of its own, fast to nothing']);
    // A block on the load draws the load.
    expect(said(pullExample({ pull: pullWith({ load: 'load      1 t', via: 'via       snatch travelling' }), more: 'block snatch {\n  wll  8 t\n}\n' }), 'pull-without-load')).toEqual([]);
  });

  test('a resistance far below what the tables make of the same ground is looked at once more', () => {
    const pull = (resistance: string): string => pullExample({ pull: pullWith({ grade: 'grade     level', mired: 'mired     to-hubs', surface: 'surface   hard-road', resistance: `resistance  ${resistance} "load cell"` }) });
    // Fire service handbook: to the hubs twice the weight, 2 x 25.988 kN; a hard road takes at most a tenth of the weight besides.
    expect(said(pull('25.9 kN'), 'resistance-below-tables')).toEqual(['warning: the resistance in `off-the-ford` is 25.9 kN; the tables make 51.9 to 54.6 kN of what else is written']);
    expect(said(pull('26 kN'), 'resistance-below-tables')).toEqual([]);
  });

  test('a block whose gear nobody wrote', () => {
    const pull = (chain: string): string => pullExample({ chain, anchor: larch + larch.replace('larch', 'birch'), more: 'block snatch {\n  takes  12 mm\n  wll  8 t\n}\n', pull: pullWith({ via: 'via       snatch fixed on birch angle 90 deg after 10 m' }) });
    const to = 'main outboard -> bow-22 -> trunk -> larch';
    expect(asked(pull(`chain to-the-larch {\n  ${to}\n}\n`))).toContain('by what `snatch` hangs on `birch` is not given; 1 check not judged');
    expect(asked(pull(`chain to-the-larch {\n  ${to}\n  snatch -> shackle bow 25 mm AS-2741 -> birch\n}\n`)).some((f) => f.includes('by what'))).toBe(false);
    expect(said(pull('chain to-the-larch {\n  main outboard -> bow-22 -> snatch -> trunk -> larch\n}\n').replace(/ {2}via.*\n/, ''), 'block-left-out')).toEqual(['warning: `snatch` hangs in `to-the-larch`, and `off-the-ford` does not lead its line over it']);
  });

  // E = F x / 2 over all that is stretched: statics.
  test('the energy counts the lines behind the line of the winch', () => {
    const tail = 'line tail {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    12 m\n  breaking  140 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye thimble tube bury 72 d taper 24 d\n}\n';
    const energy = (more: object): number => {
      const { energy: found } = judgedPull(pullExample({ pull: pullWith({ resistance: 'resistance  10 kN "load cell"', stretch: 'stretch   3 %' }), ...more }));
      expect(found !== undefined && 'amount' in found).toBe(true);
      return (found as { amount: { high: number } }).amount.high;
    };
    const alone = energy({});
    const behind = energy({ more: tail, chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> tail inboard\n  tail outboard -> trunk -> larch\n}\n' });
    // 21 m along the line, of which 12 m and the strap are not the winch's.
    expect(alone).toBeLessThan(0.5 * 10_000 * 0.03 * 21 * 1.0001);
    expect(behind).toBeLessThan(0.5 * 10_000 * 0.03 * 21 * 1.0001);
    expect(behind).toBeGreaterThan(0.5 * 10_000 * 0.03 * 17.9);
  });
});

test('a shackle of no known form that joins three', () => {
  const text = (form: string): string => `${frontWinch}\n${mainLine}\n${bow22.replace('  form  bow\n', form)}\n${larch}${larch.replace('larch', 'birch')}\nchain reach {\n  main outboard -> bow-22\n  bow-22 -> trunk -> larch\n  bow-22 -> branch -> birch\n}\nstrap trunk {\n  wll  4 t\n}\nstrap branch {\n  wll  4 t\n}\n`;
  expect(asked(text('')).some((f) => f.startsWith('form of `bow-22` is not given, and it joins `main outboard`, `trunk` and `branch`'))).toBe(true);
  expect(asked(text('  form  bow\n')).some((f) => f.startsWith('form of'))).toBe(false);
});

describe('help that can be followed', () => {
  const help = (text: string, code: string, message = ''): string => findingsIn(text).find((f) => f.code === code && f.message.includes(message))!.finding.help;
  test('a winch that is too weak', () => {
    const pull = (via: string | undefined): string => pullExample({ anchor: larch, more: 'block snatch {\n  takes  12 mm\n  wll  12 t\n}\n', chain: `chain to-the-larch {\n  main outboard -> bow-22 -> ${via === undefined ? 'trunk -> larch' : 'plover bow'}\n${via === undefined ? '' : '  snatch -> trunk -> larch\n'}}\n`, pull: pullWith({ resistance: 'resistance  99 kN "load cell"', via }) });
    expect(help(pull(undefined), 'winch-too-weak-for-pull')).toMatch(/or double the line over a block: the army's estimate asks for \d+ parts$/);
    // Half of 60° loses 13 % of the pull: cos 30°.
    for (const angle of [20, 60]) expect(help(pull(`via       snatch fixed angle ${angle} deg`), 'winch-too-weak-for-pull')).toMatch(/or rig one more part of line/);
    for (const angle of [60.5, 150]) expect(help(pull(`via       snatch fixed angle ${angle} deg`), 'winch-too-weak-for-pull')).toMatch(/or lead the parts of the line closer together$/);
  });
  test('a fairlead, a drum without a line, a hook on wire', () => {
    expect(help(`winch w {\n  rated  20 kN\n  fairlead  roller\n  carries  main\n}\n${mainLine}`, 'missing-fact', 'fairlead')).toContain('`fairlead roller condition sound`');
    expect(help(pullExample({ winch: 'winch bow-winch on plover {\n  rated  42 kN\n}\n' }), 'missing-fact', 'which line is on the drum of `bow-winch` is not given')).toBe('add `carries` with its name');
    const wire = `${frontWinch}\nline main {\n  material  wire\n  construction  wire-6x19\n  diameter  10 mm\n  length  30 m\n  breaking  60 kN\n  inboard  lug\n  outboard  hook\n}\n`;
    expect(help(wire, 'missing-fact', 'how the hook is fixed')).toBe('write what its maker says it `holds`');
  });
  // US Army TM 5-5420-278-10, WP 0035: of a log longer than five times its thickness no more counts.
  test('a slender log is not made to hold by more of its length', () => {
    const log = (length: string): string => pullExample({ anchor: `anchor larch {\n  kind   buried-log\n  log    ${length} face 10 cm\n  depth  1.5 m\n  slope  3\n  soil   loam\n}\n`, pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) });
    for (const length of ['60 cm', '5 m']) expect(said(log(length), 'deadman-too-short')[0]).toContain('the log of `larch` counts with 500 mm, below');
  });
});

test('a drum that is full only wrap beside wrap', () => {
  const drum = (length: string): string => `winch bow-winch {\n  rated  42 kN at layer 1\n  barrel  64 mm\n  width  230 mm\n  flange  165 mm\n  keep  10 wraps\n  carries  main\n}\n${mainLine.replace('30 m', length)}`;
  // SAE J706-2017: 0.9 at most; 0.9 pi x 230 mm x 40.5 mm x (64 + 40.5) mm / (10 mm)2 = 27.52 m with one diameter of the flange free.
  expect(said(drum('27.6 m'), 'drum-nearly-full')).toEqual(['information: `main` is 27.6 m long; wound on as line is in the field, `bow-winch` takes 27.52 m or less']);
  expect(said(drum('27.5 m'), 'drum-nearly-full')).toEqual([]);
  // What is too full anyhow is said as that.
  expect(said(drum('31 m'), 'drum-nearly-full', 'drum-overfull').map((f) => f.split(':')[0])).toEqual(['warning']);
  expect(said(`practice {\n  freeboard  0 d\n}\n${drum('30 m')}`, 'drum-overfull')).toEqual([]);
});

test('a holding that cannot be read is not compared', () => {
  expect(said('anchor{kind pickets\noding\nsoil loam\npickets three-two-one', 'holding-above-published', 'holding-without-source')).toEqual([]);
});

test('a pull that takes longer than the winch may run at once', () => {
  const pull = (duty: string, reach = '21 m'): string => pullExample({ winch: `winch bow-winch on plover {\n  rated  42 kN\n  barrel  64 mm\n  width  230 mm\n  flange  170 mm\n  keep  10 wraps\n  speed  2 m/min at layer 1\n${duty}  carries  main\n}\n`, pull: pullWith({ reach: `reach     ${reach}` }) });
  // Of 30 m 9 are left on layer 2, where 94 mm turn for 74: 2 m/min x 94 / 74 for 8 min are 20.32 m.
  expect(said(pull('  duty  8 min rest 20 min\n'), 'pull-longer-than-one-run')).toEqual(['information: `off-the-ford` begins with 18 to 21 m of line out; `bow-winch` winds on 20.32 m in the one run that its duty allows']);
  expect(said(pull('  duty  9 min\n'), 'pull-longer-than-one-run')).toEqual([]);
  expect(said(pull(''), 'pull-longer-than-one-run')).toEqual([]);
});

describe('no false alarm', () => {
  test('a tucked splice whose maker says what it holds may be blunt', () => {
    const line = (more: string): string => mainLine.replace('bury 72 d taper 24 d', `bury 31.5 d tucked ${more}`);
    expect(said(line(''), 'taper-missing')).toHaveLength(1);
    expect(said(line('holds 70 kN'), 'taper-missing')).toEqual([]);
  });
  test('a ring that is set in rock', () => {
    const chain = (kind: string): string => `${frontWinch}\n${mainLine}\n${bow22}\n${larch.replace('tree', kind)}\nring bolt {\n  wll  6 t\n}\nchain reach {\n  main outboard -> bow-22 -> bolt -> larch\n}\n`;
    expect(said(chain('rock'), 'nothing-round-anchor')).toEqual([]);
    expect(said(chain('tree'), 'nothing-round-anchor')).toHaveLength(1);
  });
  test('a strap that a pull hangs its block on', () => {
    const text = (via: string): string => pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> plover bow\n  trunk -> larch\n}\n', more: 'block snatch {\n  wll  8 t\n}\n', pull: pullWith(via === '' ? {} : { via }) });
    expect(said(text('via       snatch fixed on trunk angle 0 deg'), 'routes-not-joined')).toEqual([]);
    expect(said(text(''), 'routes-not-joined')).toHaveLength(1);
  });
  test('a log that hangs at the end itself', () => {
    const text = (load: string): string => pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk\n}\n', pull: pullWith({ load: `load      ${load}`, dragging: 'dragging  all' }) });
    expect(said(text('900 kg "spruce log"'), 'chain-without-anchor')).toEqual([]);
    expect(said(text('plover'), 'chain-without-anchor')).toHaveLength(1);
  });
  test('a log that somebody answers for needs no sizes', () => {
    expect(asked('anchor deadman {\n  kind  buried-log\n  holding  45 kN "engineer, proof pull"\n}\n')).toEqual([]);
    expect(asked('anchor deadman {\n  kind  buried-log\n}\n').length).toBeGreaterThan(0);
  });
  test('a point that the vehicle has is named, by the vehicle or by the anchor that it stands as', () => {
    const parked = pullExample({ anchor: 'anchor larch {\n  kind  vehicle\n  vehicle  dipper\n  holding  40 kN "tested 2026-05-02"\n}\n', pull: pullWith({ resistance: 'resistance  20 kN "load cell"' }), more: 'vehicle dipper {\n  mass  9 t\n  point  hitch rated 6 t opening 40 mm\n}\n' });
    const asks = (text: string): string[] => findingsIn(text).filter((f) => f.message.startsWith('which recovery point of `dipper`')).map((f) => f.finding.help);
    expect(asks(parked)).toEqual(['write it behind the anchor where a route ends at it: `larch hitch`']);
    const named = parked.replace('-> larch', '-> larch hitch');
    expect([...asks(named), ...said(named, 'unknown-name', 'point-overloaded', 'anchor-overloaded', 'does-not-fit')]).toEqual([]);
    // Both are judged: what was tested, and the point. The winch brings 42 kN.
    expect(said(named.replace('hitch rated 6 t', 'hitch rated 1.9 t'), 'point-overloaded', 'link-above-limit')).toEqual(['error: load on `larch hitch` is 33.1 kN, above its working limit of 18.6 kN (1.9 t)', 'error: load on `dipper hitch` in `off-the-ford` is 20 kN, above its rating of 18.6 kN (1.9 t)']);
    expect(said(named.replace('holding  40 kN', 'holding  19 kN'), 'anchor-overloaded', 'link-above-limit')).toEqual(['error: load on `larch hitch` is 33.1 kN, above its holding power of 19 kN', 'error: load on `larch` in `off-the-ford` is 20 kN, above its holding power of 19 kN']);
    expect(said(named.replace('opening 40 mm', 'opening 18 mm').replace('trunk -> larch', 'trunk -> bow-22 -> larch').replace('main outboard -> bow-22 -> trunk -> bow-22', 'main outboard -> trunk -> bow-22'), 'does-not-fit')).toHaveLength(1);
    expect(said(named.replace('hitch rated 6 t', 'hitch'), 'unrated-point')).not.toEqual([]);
  });
  test('a point that it does not have is told, and of what is no vehicle', () => {
    const parked = pullExample({ anchor: 'anchor larch {\n  kind  vehicle\n  vehicle  dipper\n}\n', chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch stern\n}\n', more: 'vehicle dipper {\n  mass  9 t\n  point  hitch rated 6 t\n}\n' });
    expect(said(parked, 'unknown-name')).toEqual(['error: `dipper` has no recovery point `stern`']);
    expect(said(parked.replace('kind  vehicle\n  vehicle  dipper', 'kind  tree'), 'unknown-name')).toEqual(['error: `larch` is an anchor and has no point named `stern`']);
  });
  test('one point has the pull of all that hangs on it, whatever it is called', () => {
    const text = pullExample({
      chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper hitch\n  snatch -> trunk -> larch hitch\n}\n',
      anchor: 'anchor larch {\n  kind  vehicle\n  vehicle  dipper\n  holding  80 kN "tested 2026-05-02"\n}\n',
      more: 'vehicle dipper {\n  mass  9 t\n  point  hitch rated 3 t\n}\nblock snatch {\n  efficiency 100 %\n  wll 12 t\n}\nblock other {\n  efficiency 100 %\n  wll 12 t\n}\n',
      pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed angle 0 deg\n  via       other travelling on plover angle 0 deg', reach: 'reach     8 m' }),
    });
    // Three parts of 10 kN: one ends there, two turn.
    expect(said(text, 'point-overloaded')).toEqual(['warning: load on `dipper hitch` in `off-the-ford` is 10 to 30 kN, above its rating of 29.4 kN (3 t)']);
  });
});
