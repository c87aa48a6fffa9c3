import { describe, expect, test } from 'vitest';
import { asGiven, isUnknown } from '../../src-core/mechanics/derivation.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { judgedPull, judgedRig, loadOn, shown } from '../support/judged-pull.ts';

const block = (name = 'snatch', wll = 'wll         12 t'): string => `block ${name} {\n  efficiency  100 %\n  ${wll}\n}\n`;
const dipper = 'vehicle dipper {\n  mass   2,000 kg\n  point  bow rated 6 t\n  point  stern rated 6 t\n}\n';
const wren = 'vehicle wren {\n  mass   2,400 kg\n  point  bow rated 6 t\n  point  stern rated 6 t\n}\n';
const two = 'vehicle plover {\n  mass   2,650 kg\n  point  bow rated 6 t\n  point  stern rated 6 t\n}\n';
const strap = (name: string, length = '  length  3 m\n'): string => `strap ${name} {\n${length}  wll     5 t\n}\n`;
const tree = (name: string, holding: string): string => `anchor ${name} {\n  kind     tree\n  holding  ${holding}\n}\n`;
const route = (...routes: string[]): string => `chain to-the-larch {\n${routes.map((r) => `  ${r}\n`).join('')}}\n`;
const said = (text: string, code: string): string[] => judgedRig(text).findings.filter((f) => f.code === code).map((f) => `${f.severity}: ${f.message}`);
const notJudged = (text: string, rule: string): string[] => judgedRig(text).block('pull').notJudged.filter((n) => n.rule === rule).map((n) => n.cause.says);

describe('a standing vehicle has all that pulls on it together', () => {
  // The winch of plover, a block on dipper, the line back to plover: both parts of 15 kN pull on plover.
  const back = (stands: string, resistance = '30 kN', angle = ' angle 0 deg'): string => pullExample({
    vehicle: two, chain: route('main outboard -> bow-22 -> plover stern', 'snatch -> dipper bow'), more: dipper + block(),
    pull: pullWith({ load: 'load      dipper', resistance: `resistance  ${resistance} "load cell"`, via: `via       snatch travelling${angle}${stands}`, reach: 'reach     10 m' }),
  });
  test('the line led back to the vehicle of the winch', () => {
    const pull = judgedPull(back(''));
    expect(loadOn(pull, 'plover stern')).toBe('15 kN');
    expect(loadOn(pull, 'plover')).toBe('0 to 30 kN');
    // 2,650 kg weigh 25.99 kN; one and a half times 30 kN are 45 kN.
    expect(said(back(''), 'anchor-vehicle-too-light')).toEqual(['error: `plover` weighs 25.9 kN, below the 45 kN that an anchor vehicle may need for this pull']);
  });
  // By statics all parts at the one moving block pull on the vehicle as hard as on the load.
  test('by the plan as vectors: both parts at 60 degrees pull with the 20 kN of the load, not with 2 × 11.5 kN', () => {
    const y = (12 * Math.tan(Math.PI / 6)).toFixed(9);
    const pull = judgedPull(back(`\n  stands    bow-winch ahead 12 m left ${y} m\n  stands    plover ahead 12 m right ${y} m`, '20 kN', ''));
    expect(shown(pull.tension)).toBe('11.6 kN');
    expect(loadOn(pull, 'plover')).toBe('20 kN');
  });
  test('a fixed block on the vehicle of the winch', () => {
    // Three parts of 10 kN: the winch pulls 10 kN, the block 20 kN.
    const text = pullExample({
      vehicle: two, chain: route('main outboard -> bow-22 -> dipper stern', 'snatch -> dipper bow', 'other -> plover stern'), more: dipper + block() + block('other'),
      pull: pullWith({ load: 'load      dipper', resistance: 'resistance  30 kN "load cell"', via: 'via       snatch travelling angle 0 deg\n  via       other fixed angle 0 deg', reach: 'reach     6 m' }),
    });
    const pull = judgedPull(text);
    expect(loadOn(pull, 'plover stern')).toBe('20 kN');
    expect(loadOn(pull, 'plover')).toBe('10 to 30 kN');
  });
  // Two legs at 60° carry 30 / (2 cos 30°) = 17.32 kN each; together they are the pull of 30 kN.
  test('both legs of a bridle at one vehicle', () => {
    const text = pullExample({ chain: route('main outboard -> bow-22', 'bow-22 -> trunk -> wren bow', 'bow-22 -> other -> wren stern'), more: wren + strap('other'), pull: pullWith({ resistance: 'resistance  30 kN "load cell"', bridle: 'bridle    60 deg', reach: 'reach     28 m' }) });
    const pull = judgedPull(text);
    expect(['wren bow', 'wren stern', 'wren'].map((name) => loadOn(pull, name))).toEqual(['17.4 kN', '17.4 kN', '30 kN']);
    // 2,400 kg weigh 23.5 kN; 1.5 × 30 = 45 kN.
    expect(said(text, 'anchor-vehicle-too-light')).toEqual(['error: `wren` weighs 23.5 kN, below the 45 kN that an anchor vehicle needs for this pull']);
  });
  // Winch on the load, a block at the anchor vehicle, one on the load, the end at the anchor vehicle: 20 and 10 kN.
  test.each([
    ['two points of it', 'snatch -> wren bow', ''],
    ['a point and an anchor that is the same vehicle', 'snatch -> parked', 'anchor parked {\n  kind     vehicle\n  vehicle  wren\n}\n'],
  ])('%s', (_, held, anchor) => {
    const text = pullExample({
      vehicle: two, chain: route('main outboard -> bow-22 -> wren stern', held), more: wren + block() + block('other') + anchor,
      pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed angle 0 deg\n  via       other travelling on plover angle 0 deg', reach: 'reach     8 m' }),
    });
    const pull = judgedPull(text);
    expect(loadOn(pull, 'wren stern')).toBe('10 kN');
    expect(loadOn(pull, 'wren')).toBe('10 to 30 kN');
    if (anchor !== '') expect(loadOn(pull, 'parked')).toBe('10 to 30 kN');
    expect(said(text, 'anchor-vehicle-too-light')).toEqual([`error: \`wren\` weighs 23.5 kN, below the 45 kN that an anchor vehicle may need for this pull`]);
  });
  test('a written holding of the vehicle is compared with all that pulls on it', () => {
    const text = pullExample({
      vehicle: two, chain: route('main outboard -> bow-22 -> wren stern', 'snatch -> parked'), more: wren + block() + block('other') + 'anchor parked {\n  kind     vehicle\n  vehicle  wren\n  holding  25 kN "pulled"\n}\n',
      pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed angle 0 deg\n  via       other travelling on plover angle 0 deg', reach: 'reach     8 m' }),
    });
    expect(said(text, 'anchor-overloaded')).toEqual(['warning: load on `parked` in `off-the-ford` is 10 to 30 kN, above its holding power of 25 kN']);
  });
});

describe('a winch without a vehicle', () => {
  const winch = 'winch bow-winch {\n  rated    42 kN\n  barrel   64 mm\n  width    230 mm\n  flange   165 mm\n  keep     10 wraps\n  carries  main\n}\n';
  test('that stands is held by something that is not known', () => {
    const text = pullExample({ winch, chain: route('main outboard -> bow-22 -> plover bow') });
    expect(shown(judgedPull(text).loaded.find((l) => l.name === 'what holds bow-winch')!.limit)).toBe('not known: what holds `bow-winch` is not given');
    expect(judgedRig(text).messages).toContain('what holds `bow-winch` is not given; 1 check not judged');
  });
  test('that moves with the load hangs on nothing that stands', () => {
    expect(judgedPull(pullExample({ winch })).loaded.map((l) => l.name)).not.toContain('what holds bow-winch');
  });
});

describe('a bridle whose fork stands in the middle of a route', () => {
  // Rigging text: two legs at 60° between them carry 577 of 1,000 lb each.
  const more = strap('other') + tree('fir', '60 kN');
  const pull = pullWith({ resistance: 'resistance  10 kN "load cell"', bridle: 'bridle    60 deg', reach: 'reach     20 m' });
  test.each([
    ['routes of their own', ['main outboard -> bow-22', 'bow-22 -> trunk -> larch', 'bow-22 -> other -> fir']],
    ['one leg written on', ['main outboard -> bow-22 -> trunk -> larch', 'bow-22 -> other -> fir']],
    ['the other written first', ['bow-22 -> other -> fir', 'main outboard -> bow-22 -> trunk -> larch']],
    ['turned round', ['main outboard -> bow-22 -> trunk -> larch', 'fir -> other -> bow-22']],
    ['two whole routes', ['main outboard -> bow-22 -> trunk -> larch', 'main outboard -> bow-22 -> other -> fir']],
    ['two whole routes, from the anchors', ['larch -> trunk -> bow-22 -> main outboard', 'fir -> other -> bow-22 -> main outboard']],
    ['from anchor to anchor', ['main outboard -> bow-22', 'larch -> trunk -> bow-22 -> other -> fir']],
  ])('is the same bridle: %s', (_, routes) => {
    const text = pullExample({ chain: route(...routes), more, pull });
    const judged = judgedPull(text);
    expect(['bow-22', 'trunk', 'other', 'larch', 'fir'].map((name) => loadOn(judged, name))).toEqual(['10 kN', '5.78 kN', '5.78 kN', '5.78 kN', '5.78 kN']);
  });
  test('a chain alone does not know the angle: half the pull to all of it', () => {
    // 42 kN x 74 / 94 of winch on the layer of its reach: 16.5 kN where the legs lie together, 33.1 kN at 120°; the strap of 5 t takes 49 kN, one of 3 t 29.4 kN, one of 1.5 t 14.7 kN.
    const limit = (wll: string): string[] => said(pullExample({ chain: route('main outboard -> bow-22 -> trunk -> larch', 'bow-22 -> other -> fir'), more: more.replace('5 t', wll), pull: pullWith({ resistance: 'resistance  10 kN "load cell"', reach: 'reach     20 m' }) }), 'link-above-limit').filter((m) => m.includes('other'));
    expect(limit('5 t')).toEqual([]);
    expect(limit('3 t')).toEqual(['warning: load on `other` is 16.5 to 33.1 kN, above its working limit of 29.4 kN (3 t), by the angle between the legs']);
    expect(limit('1.5 t')).toEqual(['error: load on `other` is 16.5 to 33.1 kN, above its working limit of 14.7 kN (1.5 t), by the angle between the legs']);
  });
  test('with the angle that its pulls give it has one load: the widest counts', () => {
    const chain = route('main outboard -> bow-22 -> trunk -> larch', 'bow-22 -> other -> fir');
    const second = (bridle: string): string => `pull again with bow-winch through to-the-larch {\n${pullWith({ resistance: 'resistance  10 kN "load cell"', reach: 'reach     20 m', ...(bridle === '' ? {} : { bridle: `bridle    ${bridle}` }) })}}\n`;
    const limit = (also: string): string[] => said(pullExample({ chain, more: strap('other').replace('5 t', '1.5 t') + tree('fir', '60 kN') + also, pull }), 'link-above-limit').filter((m) => m.includes('`other`'));
    // 33.06 kN / (2 cos 30°) and 33.06 kN / (2 cos 45°).
    expect(limit('')).toEqual(['error: load on `other` is 19.1 kN, above its working limit of 14.7 kN (1.5 t), by the angle between the legs']);
    expect(limit(second('90 deg'))).toEqual(['error: load on `other` is 23.4 kN, above its working limit of 14.7 kN (1.5 t), by the angle between the legs']);
    // One pull that does not say, places, or a leg that is longer: anything up to all of it.
    const any = ['error: load on `other` is 16.5 to 33.1 kN, above its working limit of 14.7 kN (1.5 t), by the angle between the legs'];
    expect(limit(second(''))).toEqual(any);
    expect(limit(second('60 deg').replace('  people', '  stands    fir ahead 20 m\n  people'))).toEqual(any);
  });
});

// Statics: T₁ = P sin β ÷ sin θ. At 60° between the legs a pull that lies along one of them has all of it there; at 120°, square to the other, 1.155 P. The line goes to
// the middle of the two: 2 m aside in 20 m are 10 / cos 5.7° = 10.05 kN in it, 5 m aside 10.31 kN.
describe('a bridle whose legs do not share alike', () => {
  const long = (length: string): string => `line far {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length ${length}\n  breaking 240 kN\n  inboard eye bury 72 d taper 24 d\n  outboard eye bury 72 d taper 24 d\n}\n`;
  const legs = (stands: string, { angle = '60 deg', second = 'bow-22 -> other -> fir', length = '8 m' } = {}): string[] => {
    const judged = judgedPull(pullExample({ chain: route('main outboard -> bow-22', 'bow-22 -> trunk -> larch', second), more: strap('other') + tree('fir', '60 kN') + long(length), pull: pullWith({ resistance: 'resistance  10 kN "load cell"', bridle: `bridle    ${angle}`, reach: 'reach     20 m', stands: `stands    ${stands}` }) }));
    return ['trunk', 'larch', 'fir'].map((name) => loadOn(judged, name));
  };
  const even = ['5.78 kN', '5.78 kN', '5.78 kN'];
  test.each([
    ['the pull comes from the middle', 'larch ahead 20 m left 5 m\n  stands    fir ahead 20 m right 5 m', {}, even],
    ['nearly from the middle', 'larch ahead 20 m left 5 m\n  stands    fir ahead 20 m right 1 m', {}, ['5.81 kN', '5.81 kN', '5.81 kN']],
    ['one stands straight ahead, the other aside', 'larch ahead 20 m\n  stands    fir ahead 20 m right 10 m', {}, ['0 to 10.4 kN', '0 to 10.4 kN', '0 to 10.4 kN']],
    ['the same at 120°', 'larch ahead 20 m\n  stands    fir ahead 20 m right 10 m', { angle: '120 deg' }, ['0 to 12 kN', '0 to 12 kN', '0 to 12 kN']],
    ['of one only the place is given', 'larch ahead 20 m', {}, even],
    ['one leg is longer by an extension', 'larch ahead 20 m', { second: 'bow-22 -> far inboard\n  far outboard -> fir' }, ['0 to 10 kN', '0 to 10 kN', '0 to 10 kN']],
    ['a strap of 3 m may be as long as a line of 2.9 m', 'larch ahead 20 m', { second: 'bow-22 -> far inboard\n  far outboard -> fir', length: '2.9 m' }, even],
  ])('%s', (_what, stands, more, expected) => expect(legs(stands, more)).toEqual(expected));
});

describe('legs that meet again', () => {
  // Forces in balance: two legs at 60° carry 30 / (2 cos 30°) = 17.32 kN each, and behind the shackle where they meet all 30 kN.
  const more = wren + strap('other') + 'shackle bow-a {\n  wll  6.5 t\n}\n';
  const pull = pullWith({ resistance: 'resistance  30 kN "load cell"', bridle: 'bridle    60 deg', reach: 'reach     28 m' });
  test.each([
    ['the first goes on', ['bow-22 -> trunk -> bow-a -> wren bow', 'bow-22 -> other -> bow-a']],
    ['the second goes on', ['bow-22 -> trunk -> bow-a', 'bow-22 -> other -> bow-a -> wren bow']],
    ['a route of its own goes on', ['bow-22 -> trunk -> bow-a', 'bow-22 -> other -> bow-a', 'bow-a -> wren bow']],
  ])('have the whole pull behind the place: %s', (_, legs) => {
    const text = pullExample({ chain: route('main outboard -> bow-22', ...legs), more, pull });
    const judged = judgedPull(text);
    expect(['trunk', 'other', 'bow-a', 'wren bow', 'wren'].map((name) => loadOn(judged, name))).toEqual(['17.4 kN', '17.4 kN', '30 kN', '30 kN', '30 kN']);
    expect(said(text, 'anchor-vehicle-too-light')).toHaveLength(1);
    expect(said(text, 'chain-closes-on-itself')).toEqual([]);
  });
});

test('three whole routes part where each leaves the one that it goes along with farthest', () => {
  const whole = (routes: readonly string[]): string => pullExample({ chain: route(...routes), more: strap('other') + strap('third') + 'shackle bow-a {\n  body  22 mm\n  wll   6.5 t\n}\n' + tree('fir', '60 kN') + tree('rowan', '60 kN'), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', bridle: 'bridle    60 deg' }) });
  const judged = judgedPull(whole(['main outboard -> bow-22 -> trunk -> larch', 'main outboard -> bow-22 -> other -> bow-a -> fir', 'main outboard -> bow-22 -> other -> bow-a -> third -> rowan']));
  expect(['trunk', 'other', 'bow-a', 'fir', 'rowan'].map((name) => loadOn(judged, name))).toEqual(['11.6 kN', '11.6 kN', '11.6 kN', '0 to 11.6 kN', '0 to 11.6 kN']);
});

describe('a leg that forks again', () => {
  // 20 / (2 cos 30°) = 11.55 kN come to the second fork, and either leg behind it may take all of it.
  const forked = (weak: string, rowan: string): string => pullExample({
    chain: route('main outboard -> bow-22', 'bow-22 -> trunk -> larch', 'bow-22 -> other -> bow-a', 'bow-a -> weak -> fir', 'bow-a -> third -> rowan'),
    more: strap('other') + strap('third') + `strap weak {\n  length  3 m\n  wll     ${weak}\n}\n` + 'shackle bow-a {\n  body  22 mm\n  wll   6.5 t\n}\n' + tree('fir', '60 kN') + tree('rowan', rowan),
    pull: pullWith({ resistance: 'resistance  20 kN "load cell"', bridle: 'bridle    60 deg' }),
  });
  test('loads each leg with anything up to all of it', () => {
    const pull = judgedPull(forked('5 t', '60 kN'));
    expect(loadOn(pull, 'bow-a')).toBe('11.6 kN');
    expect(['weak', 'fir', 'third', 'rowan'].map((name) => loadOn(pull, name))).toEqual(Array(4).fill('0 to 11.6 kN'));
  });
  test('what that passes is said', () => {
    expect(said(forked('0.2 t', '2 kN'), 'anchor-overloaded')).toEqual(['warning: load on `rowan` in `off-the-ford` is 0 to 11.6 kN, above its holding power of 2 kN']);
    expect(said(forked('0.2 t', '2 kN'), 'link-overloaded-by-pull')).toEqual(['warning: load on `weak` in `off-the-ford` is 0 to 11.6 kN, above its working limit of 1.96 kN (0.2 t)']);
  });
  test('what it does not pass is not judged, because wide legs carry more', () => {
    expect(said(forked('5 t', '60 kN'), 'anchor-overloaded')).toEqual([]);
    expect(notJudged(forked('5 t', '60 kN'), 'anchor-overloaded')).toEqual(Array(2).fill('how the legs behind `bow-a` share their load in `off-the-ford` is not known'));
  });
  test('a block that hangs on two legs loads both', () => {
    const text = pullExample({ chain: route('main outboard -> bow-22 -> plover bow', 'snatch -> bow-a', 'bow-a -> other -> larch', 'bow-a -> third -> rowan'), more: block() + strap('other') + strap('third') + 'shackle bow-a {\n  body  22 mm\n  wll   6.5 t\n}\n' + tree('rowan', '8 kN'), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed angle 0 deg', reach: 'reach     12 m' }) });
    expect(loadOn(judgedPull(text), 'third')).toBe('0 to 20 kN');
    expect(said(text, 'anchor-overloaded')).toEqual(['warning: load on `rowan` in `off-the-ford` is 0 to 20 kN, above its holding power of 8 kN']);
  });
});

// The block of a doubled line hangs on two legs. Without friction, at 0° between its parts, it has twice 10 kN; legs at 60° have 1 / (2 cos 30°) of that each, by
// the rigging text 577 of 1,000 lb.
describe('a bridle that holds a block', () => {
  const more = block() + strap('other') + tree('fir', '60 kN');
  const rig = (routes: readonly string[], { bridle = 'bridle    60 deg', stands = '', more: also = '' } = {}): string =>
    pullExample({ chain: route('main outboard -> plover bow', ...routes), more: more + also, pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: `via       snatch fixed angle 0 deg${stands}`, bridle, reach: 'reach     12 m' }) });
  const fork = ['snatch -> bow-22 -> trunk -> larch', 'bow-22 -> other -> fir'];
  test.each([
    ['the second leg begins at the fork', fork],
    ['routes of their own', ['snatch -> bow-22', 'bow-22 -> trunk -> larch', 'bow-22 -> other -> fir']],
    ['two whole routes', ['snatch -> bow-22 -> trunk -> larch', 'snatch -> bow-22 -> other -> fir']],
    ['from anchor to anchor', ['larch -> trunk -> bow-22 -> other -> fir', 'snatch -> bow-22']],
  ])('is judged by its angle: %s', (_, routes) => {
    const judged = judgedPull(rig(routes));
    expect(['snatch', 'bow-22'].map((name) => loadOn(judged, name))).toEqual(['20 kN', '20 kN']);
    expect(['trunk', 'larch', 'other', 'fir'].map((name) => loadOn(judged, name))).toEqual(Array(4).fill('11.6 kN'));
    for (const code of ['routes-not-joined', 'bridle-not-in-chain']) expect(said(rig(routes), code)).toEqual([]);
  });
  test('may part at the block itself', () => {
    for (const routes of [['snatch -> trunk -> larch', 'snatch -> other -> fir'], ['larch -> trunk -> snatch -> other -> fir']]) {
      expect(['trunk', 'larch', 'other', 'fir'].map((name) => loadOn(judgedPull(rig(routes)), name))).toEqual(Array(4).fill('11.6 kN'));
      for (const code of ['routes-not-joined', 'bridle-not-in-chain']) expect(said(rig(routes), code)).toEqual([]);
    }
  });
  test('shares otherwise where one leg is longer, or the places say so', () => {
    expect(loadOn(judgedPull(rig(['snatch -> bow-22 -> trunk -> larch', 'bow-22 -> far -> fir'], { more: 'strap far {\n  length  9 m\n  wll     5 t\n  hitch   straight\n}\n' }).replace('length  3 m', 'length  3 m\n  hitch   straight')), 'larch')).toBe('11.6 kN');
    const stands = (larch: string, fir: string): string => loadOn(judgedPull(rig(fork, { stands: `\n  stands    snatch ahead 12 m\n  stands    larch ${larch}\n  stands    fir ${fir}` })), 'larch');
    expect(stands('ahead 15 m left 2 m', 'ahead 15 m right 2 m')).toBe('11.6 kN');
    // The line between the two trees stands 27° off square to the pull.
    expect(stands('ahead 15 m left 2 m', 'ahead 13 m right 2 m')).toBe('0 to 20 kN');
  });
  test('without its angle it may have all in either leg, and within that is not judged', () => {
    const text = rig(fork, { bridle: '' });
    expect(loadOn(judgedPull(text), 'larch')).toBe('0 to 20 kN');
    const { notJudged: unknown } = judgedRig(text).block('pull');
    expect(unknown.map((n) => n.cause.help)).toContain('add `bridle` with the angle between the legs, where they are the only ones of the pull; else let each leg end at an anchor');
  });
  test('is too wide above 120 degrees', () => expect(said(rig(fork, { bridle: 'bridle    130 deg' }), 'bridle-too-wide')).toHaveLength(1));
  test('in the chain the fork has what the block has, and each leg its share', () => {
    // 42 kN on the first layer make 84 kN on the block and its fork; at 60° 48.5 kN on each leg, at no angle that is given up to all.
    const limits = (bridle: string): string[] => said(rig(fork, { bridle }), 'link-above-limit');
    expect(limits('bridle    60 deg')).toEqual(['error: load on `bow-22` is up to 84 kN, above its working limit of 63.7 kN (6.5 t), because both parts of the line pull at the block']);
    expect(limits('bridle    90 deg')).toEqual([limits('bridle    60 deg')[0], ...['trunk', 'other'].map((name) => `error: load on \`${name}\` is 59.4 kN, above its working limit of 49 kN (5 t), by the angle between the legs`)]);
    expect(limits('')).toEqual([limits('bridle    60 deg')[0], ...[['trunk', 'larch'], ['other', 'fir']].flatMap(([leg, tree]) => [`warning: load on \`${leg}\` is 42 to 84 kN, above its working limit of 49 kN (5 t), by the angle between the legs`, `warning: load on \`${tree}\` is 42 to 84 kN, above its holding power of 60 kN, by the angle between the legs`])]);
  });
});

// By hand: a block that hangs on 8 m of line is 8 m nearer than what holds it, and 3 m of strap around a tree are anything from nothing to 3 m more.
test('a chain of very many blocks and routes is gone through in its time', () => {
  const many = Array.from({ length: 1500 }, (_, i) => i);
  const text = pullExample({ chain: route('main outboard -> plover bow', ...many.map((i) => `b${i} -> s${i} -> b${i + 1}`), ...many.map((i) => `main outboard -> bow-22 -> s${i} -> larch`)), more: many.map((i) => `block b${i} {\n  wll 12 t\n}\nshackle s${i} {\n  wll 6 t\n}\n`).join('') });
  const started = performance.now();
  judgedRig(text);
  expect(performance.now() - started).toBeLessThan(20_000);
}, 60_000);

describe('an extension that holds a block', () => {
  const ext = 'line ext {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 8 m\n  breaking 240 kN\n  inboard eye bury 72 d taper 24 d\n  outboard eye bury 72 d taper 24 d\n}\n';
  const rig = (routes: readonly string[], changes: Parameters<typeof pullWith>[0], more = ''): string =>
    pullExample({ chain: route(...routes), more: block() + ext + more, pull: pullWith({ resistance: 'resistance  20 kN "load cell"', ...changes }) });
  const out = (text: string): string => shown(judgedPull(text).reach.lineOut);
  const doubled = ['main outboard -> plover bow', 'snatch -> ext inboard', 'ext outboard -> bow-22 -> trunk -> larch'];
  const via = 'via       snatch fixed';
  test('takes its length from both parts: twice 20 - 8 - 3 m to twice 20 - 8 m', () => {
    expect(out(rig(doubled, { via, reach: 'reach     20 m' }))).toBe('18 to 24 m');
    expect(said(rig(doubled, { via, reach: 'reach     23 m' }), 'reach-too-short')).toEqual([]);
    expect(said(rig(doubled, { via, reach: 'reach     25 m' }), 'reach-too-short')).toEqual(['warning: `off-the-ford` takes 28 to 34 m of line; `main` is 30 m long']);
  });
  test('between the end of the line and the load it takes its length once', () => {
    expect(out(rig(['main outboard -> bow-22 -> ext inboard', 'ext outboard -> plover bow', 'snatch -> trunk -> larch'], { via, reach: 'reach     18 m' }))).toBe('22 to 28 m');
  });
  test('so does a block that travels on one', () => {
    const travelling = ['main outboard -> trunk -> larch', 'snatch -> ext inboard', 'ext outboard -> bow-22 -> dipper bow'];
    expect(out(rig(travelling, { load: 'load      dipper', via: 'via       snatch travelling', reach: 'reach     20 m' }, dipper))).toBe('21 to 24 m');
  });
  test('behind a block that only turns the line the reach may count from the block', () => {
    const turned = ['main outboard -> bow-22 -> dipper bow', 'snatch -> ext inboard', 'ext outboard -> larch'];
    expect(out(rig(turned, { load: 'load      dipper', via: 'via       snatch fixed angle 90 deg after 6 m', reach: 'reach     12 m' }, dipper))).toBe('10 to 18 m');
  });
  test('longer than the reach it is told', () => {
    expect(said(rig(doubled, { via, reach: 'reach     6 m' }), 'chain-longer-than-reach')[0]).toContain('2.0 m longer than its reach');
  });
  // 20 m ahead less 8 m are 12 m, and 5 m aside: 13 m each way, 2 atan 5/12 = 45.2° between them.
  test('draws the block to where both parts pull it, by the places', () => {
    const planned = (more = ''): string => rig(['main outboard -> plover bow', 'snatch -> ext inboard', 'ext outboard -> larch'], { via: `${via}\n  stands    larch ahead 20 m\n  stands    bow-winch left 5 m\n  stands    plover right 5 m${more}`, reach: undefined });
    expect(out(planned())).toBe('26 m');
    expect((judgedPull(planned()).rigging.plannedAngles[0]! * 180) / Math.PI).toBeCloseTo(45.24, 1);
    // A place of its own goes before it, and an extension as long as the way leaves none.
    expect(out(planned('\n  stands    snatch ahead 12 m'))).toBe('26 m');
    expect(out(planned('\n  stands    snatch ahead 16 m'))).toBe('33.53 m');
    expect(out(planned().replace('larch ahead 20 m', 'larch ahead 6 m'))).toContain('not known');
  });
});

describe('what the file does not know well', () => {
  const line = (entry: string): string => `line main {\n  material  HMPE\n  strands   12\n  diameter  10 mm\n  length    30 m\n  breaking  140 kN\n  inboard   lug\n  outboard  eye thimble tube bury 72 d taper 24 d\n  ${entry}\n}\n`;
  const without = (entry: string): string => pullExample({ header: 'pull off-the-ford with bow-winch', chain: '', line: line(entry), more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', 'back-to': 'back-to   plover', reach: 'reach     12 m' }) });
  test('a line that no chain speaks of is not judged within its limit while its logbook cannot be read', () => {
    expect(notJudged(without('2026-05-01  inspected'), 'line-overloaded-by-pull')).toEqual([]);
    expect(notJudged(without('2026-05-02  damage cut four strands at 5 m from inboard'), 'line-overloaded-by-pull')).toEqual(['a logbook entry cannot be read']);
    expect(notJudged(without('2026-05-02  retired'), 'line-overloaded-by-pull')).toEqual(['`main` is retired']);
  });
});

describe('loss at a sheave', () => {
  const lost = (bearing: string, practice: string): number => {
    const { efficiency } = judgedPull(pullExample({ chain: route('main outboard -> bow-22 -> plover bow'), more: `block snatch {\n  ${bearing}\n  wll      12 t\n}\n` + practice, pull: pullWith({ via: 'via       snatch fixed on larch angle 0 deg', reach: 'reach     12 m' }) })).rigging.blocks[0]!;
    return isUnknown(efficiency) ? NaN : Math.round((1 - efficiency.amount.low) * 1e6) / 1e6;
  };
  const practice = 'practice "measured" {\n  sheave-loss  plain 30 % "measured on ours"\n}\n';
  test('practice says it: 10 % on a plain bearing, up to 5 % on rollers', () => {
    expect([lost('bearing  plain', ''), lost('bearing  roller', ''), lost('', '')]).toEqual([0.1, 0.05, 0.1]);
  });
  test('a shop that measured it puts its own figure there, which is the worst for a bearing that is not told', () => {
    expect([lost('bearing  plain', practice), lost('bearing  roller', practice), lost('', practice)]).toEqual([0.3, 0.05, 0.3]);
  });
  test('the efficiency of the block itself goes before it', () => expect(lost('efficiency  96 %', practice)).toBe(0.04));
});

describe('how far off people keep', () => {
  const off = (text: string): string => shown(asGiven(judgedPull(text).standOff));
  const long = (length: string): string => `strap long {\n${length}  wll     8 t\n}\n`;
  const extended = (length: string, people = '35 m'): string => pullExample({ chain: route('main outboard -> bow-22 -> long -> bow-a -> larch'), more: long(length) + 'shackle bow-a {\n  body  22 mm\n  wll   6.5 t\n}\n', pull: pullWith({ reach: 'reach     60 m', people: `people    ${people}` }) });
  test('an extension counts with its length, a strap as well as a line', () => {
    // 30 m of line and the 45 m that are joined on.
    expect(off(extended('  length  45 m\n'))).toBe('75 m');
    expect(said(extended('  length  45 m\n'), 'people-too-close')).toEqual(['error: people of `off-the-ford` keep 35 m off, below the 75 m of the longest line in use']);
  });
  test('so does what holds a block', () => {
    const spare = 'line spare {\n  material  HMPE\n  diameter  10 mm\n  length    60 m\n  breaking  140 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye bury 72 d taper 24 d\n}\n';
    expect(off(pullExample({ chain: route('main outboard -> bow-22 -> plover bow', 'snatch -> spare inboard', 'spare outboard -> larch'), more: spare + block(), pull: pullWith({ via: 'via       snatch fixed angle 0 deg', reach: 'reach     12 m' }) }))).toBe('60 m');
  });
  test('while one length is not known, nobody is far enough, and who is too near stays it', () => {
    expect(off(extended(''))).toBe('not known: length of `long` is not given');
    expect(notJudged(extended(''), 'people-too-close')).toEqual(['length of `long` is not given']);
    expect(said(extended('', '12 m'), 'people-too-close')).toEqual(['error: people of `off-the-ford` keep 12 m off, below the 30 m of the longest line in use']);
  });
});

describe('what the legs of a bridle bridge', () => {
  // Two legs of 3 and 6 m reach anything up to 6 m towards what holds them: 20 m take 14 to 20 m of line.
  const legs = (length: string): string => pullExample({ chain: route('main outboard -> bow-22', 'bow-22 -> trunk -> larch', 'bow-22 -> other -> fir'), more: strap('other', length) + tree('fir', '60 kN'), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', bridle: 'bridle    20 deg', reach: 'reach     20 m' }) });
  test('is anything up to the longest', () => expect(shown(judgedPull(legs('  length  6 m\n')).reach.lineOut)).toBe('14 to 20 m'));
  test('is not known while one of them is not', () => expect(shown(judgedPull(legs('')).reach.lineOut)).toBe('not known: length of `other` is not given'));
  // 30 m of line: the first layer takes 23 wraps of π (64 + 10) mm, 5.35 m, the second 23 of π 94 mm, 6.79 m: with 14 m out 16 m lie on three layers.
  test('the winch pulls as on the highest layer that may be in use', () => expect(shown(judgedPull(legs('  length  6 m\n')).layer)).toBe('2 to 3'));
});

// The least layer that a pull can be on when its load sticks is the one it begins on.
describe('a chain is judged at the layer that its pulls begin on', () => {
  const load = (parts: object): string => {
    const chain = judgedRig(pullExample(parts)).block('chain').assessed;
    return chain.kind === 'chain' ? shown(chain.load) : '';
  };
  const another = (reach: string): string => `pull again with bow-winch through to-the-larch {\n${pullWith({ reach })}}\n`;
  test.each([
    ['one pull', {}, '33 kN'],
    ['the longest reach counts', { more: another('reach     27 m') }, '42 kN'],
    ['a shorter one does not', { more: another('reach     12 m') }, '33 kN'],
    ['one that does not say', { more: another('people    35 m') }, '42 kN'],
    ['a block on the way', { pull: pullWith({ via: 'via       snatch fixed on larch angle 90 deg after 12 m' }), more: 'block snatch {\n  wll  8 t\n}\n' }, '42 kN'],
    ['a reach that takes an extension', { pull: pullWith({ reach: 'reach     32 m' }) }, '42 kN'],
  ])('%s', (_, parts, expected) => expect(load(parts)).toBe(expected));
});
