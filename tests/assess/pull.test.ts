import { describe, expect, test } from 'vitest';
import { fadesAt } from '../../src-core/assess/least-line-out.ts';
import { asGiven, isUnknown } from '../../src-core/mechanics/derivation.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { judgedPull, judgedRig, loadOn, shown } from '../support/judged-pull.ts';

// 2,650 kg weigh 25.99 kN (NIST SP 811: standard gravity). Everything below is that, worked by hand.

const block = (efficiency = '100 %', name = 'snatch'): string => `block ${name} {
  efficiency  ${efficiency}
  wll         12 t
}
`;
const backToBow = 'chain to-the-larch {\n  main outboard -> bow-22 -> plover bow\n}\n';
const dipper = 'vehicle dipper {\n  mass   2,000 kg\n  point  bow rated 6 t\n}\n';
/** The high end in pounds, to compare with published numbers. */
const pounds = (pull: ReturnType<typeof judgedPull>, name: string): number => {
  const { load } = pull.loaded.find((loaded) => loaded.name === name)!;
  return isUnknown(load) ? NaN : load.amount.high / 4.4482216152605;
};
const kilonewtons = (value: Parameters<typeof shown>[0]): [number, number] => {
  if (isUnknown(value)) throw new Error(value.unknown.says);
  return [value.amount.low / 1000, value.amount.high / 1000];
};

describe('resistance', () => {
  test('gravel and 12 degrees: 1/5 to 1/3 of the weight and its sine', () => {
    const { resistance } = judgedPull(pullExample());
    const [low, high] = kilonewtons(resistance.total);
    expect(low).toBeCloseTo(25.9876 * (1 / 5 + Math.sin((12 * Math.PI) / 180)), 2);
    expect(high).toBeCloseTo(25.9876 * (1 / 3 + Math.sin((12 * Math.PI) / 180)), 2);
  });
  // Winching guide, p. 8: 20 % of grade take 20 % of the weight, on ground that takes none.
  test('a grade in per cent', () => {
    const pull = judgedPull(pullExample({ pull: pullWith({ load: 'load      plover 10,000 lbf', surface: 'surface   gravel takes 0 %', grade: 'grade     20 %' }) }));
    expect(shown(pull.resistance.total)).toBe('1,970 lbf');
  });
  // Fire-service winching table: sunk to the hubs resists twice the weight.
  test('sunk to the hubs: the mire alone, up to mire and ground together', () => {
    const pull = judgedPull(pullExample({ pull: pullWith({ grade: 'grade     level', mired: 'mired     to-hubs' }) }));
    const [low, high] = kilonewtons(pull.resistance.total);
    expect(low).toBeCloseTo(2 * 25.9876, 2);
    expect(high).toBeCloseTo((2 + 1 / 3) * 25.9876, 2);
  });
  test('two wheels of four that do not turn drag half of the weight at two thirds', () => {
    const [low] = kilonewtons(judgedPull(pullExample({ pull: pullWith({ grade: 'grade     level', dragging: 'dragging  2 wheels of 4' }) })).resistance.drag);
    expect(low).toBeCloseTo((25.9876 * 2) / 3 / 2, 2);
  });
  test('wheels that drag of nobody knows how many', () => {
    expect(shown(judgedPull(pullExample({ pull: pullWith({ dragging: 'dragging  2 wheels' }) })).resistance.total)).toContain('on how many wheels the load stands is not given');
  });
  // 62.4 lb a cubic foot (from memory): 30 cubic feet hold 1,872 lb.
  test('water that comes out with the load weighs with it', () => {
    expect(shown(judgedPull(pullExample({ pull: pullWith({ load: 'load      plover 4,000 lbf water 1 ft over 30 ft2' }) })).resistance.weight)).toBe('5,880 lbf');
  });
  test('a resistance that somebody measured replaces the four', () => {
    const pull = judgedPull(pullExample({ pull: '  load        plover\n  resistance  9 kN "load cell"\n  reach       21 m\n' }));
    expect(shown(pull.resistance.total)).toBe('9 kN');
    expect(pull.incomplete).toBeUndefined();
  });
  test.each(['surface', 'grade', 'mired', 'dragging'])('without `%s` it is that or more', (head) => {
    const { resistance } = judgedPull(pullExample({ pull: pullWith({ [head]: undefined }) }));
    expect(isUnknown(resistance.total)).toBe(true);
    expect(resistance.incomplete?.key).toBe(`${head} of off-the-ford`);
    expect(isUnknown(resistance.atLeast)).toBe(false);
  });
});

describe('rigging', () => {
  test('a straight pull takes what the load resists', () => {
    const pull = judgedPull(pullExample({ pull: pullWith({ resistance: 'resistance  30 kN "load cell"' }) }));
    expect(shown(pull.needed)).toBe('30 kN');
    expect(pull.tensions.map(shown)).toEqual(['30 kN']);
    expect(loadOn(pull, 'larch')).toBe('30 kN');
  });
  test('the line over a block at a tree and back: half of it, less friction', () => {
    const pull = judgedPull(pullExample({ chain: backToBow, more: block('90 %'), pull: pullWith({ resistance: 'resistance  19 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', reach: 'reach     12 m' }) }));
    expect(shown(pull.rigging.advantage)).toBe('1.9');
    expect(shown(pull.needed)).toBe('10 kN');
    expect(pull.tensions.map(shown)).toEqual(['10 kN', '9 kN']);
    expect(loadOn(pull, 'snatch')).toBe('19 kN');
    expect(loadOn(pull, 'larch')).toBe('19 kN');
    expect(loadOn(pull, 'plover bow')).toBe('9 kN');
    // Both parts cross from the vehicle to the tree.
    expect(shown(pull.reach.lineOut)).toBe('24 m');
  });
  test('parts at an angle pull less: 60 degrees leave the cosine of 30', () => {
    const pull = judgedPull(pullExample({ chain: backToBow, more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch angle 60 deg', reach: 'reach     12 m' }) }));
    expect(kilonewtons(pull.needed)[1]).toBeCloseTo(20 / (2 * Math.cos(Math.PI / 6)), 6);
  });
  test('the same from places in plan', () => {
    const y = 12 * Math.tan(Math.PI / 6);
    const pull = judgedPull(pullExample({ chain: backToBow, more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch', stands: `stands    larch ahead 12 m\n  stands    bow-winch left ${y.toFixed(9)} m\n  stands    plover right ${y.toFixed(9)} m` }) }));
    expect(kilonewtons(pull.needed)[1]).toBeCloseTo(20 / (2 * Math.cos(Math.PI / 6)), 5);
    expect(isUnknown(pull.reach.lineOut) ? NaN : pull.reach.lineOut.amount.low).toBeCloseTo((2 * 12) / Math.cos(Math.PI / 6), 6);
  });
  // Rigging catalogues: 1,000 lb at 50° load the block with 1,810 lb.
  test('a block that turns the line of a standing winch', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper bow\n}\n';
    const turned = (more: string): string => pullExample({ chain, more: dipper + block(), pull: pullWith({ load: 'load      dipper', resistance: 'resistance  1,000 lbf "load cell"', via: `via       snatch fixed on larch angle 50 deg${more}` }) });
    const pull = judgedPull(turned(' after 8 m'));
    expect(shown(pull.rigging.advantage)).toBe('1');
    expect(Math.abs(pounds(pull, 'snatch') / 1810 - 1)).toBeLessThan(0.002);
    expect(shown(pull.reach.lineOut)).toBe('29 m');
    // The standing winch's own vehicle is an anchor too.
    expect(pounds(pull, 'plover')).toBeCloseTo(1000, 6);
    expect(shown(judgedPull(turned('')).reach.lineOut)).toContain('how much line lies between `bow-winch` and `snatch` is not given');
  });
  test('a block that travels with the load, the line back to an anchor', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> larch\n  snatch -> trunk -> dipper bow\n}\n';
    const pull = judgedPull(pullExample({ chain, more: dipper + block(), pull: pullWith({ load: 'load      dipper', resistance: 'resistance  20 kN "load cell"', via: 'via       snatch travelling angle 0 deg', reach: 'reach     10 m' }) }));
    expect(shown(pull.needed)).toBe('10 kN');
    expect(loadOn(pull, 'trunk')).toBe('20 kN');
    expect(loadOn(pull, 'dipper bow')).toBe('20 kN');
    expect(loadOn(pull, 'larch')).toBe('10 kN');
    // A strap of 3 m between block and load takes up to 3 m from each part.
    expect(shown(pull.reach.lineOut)).toBe('14 to 20 m');
  });
  test('three parts: a block at the tree, one on the load, the end at another tree', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> birch\n}\n';
    const birch = 'anchor birch {\n  kind     tree\n  holding  60 kN\n}\n';
    const pull = judgedPull(pullExample({ chain, more: birch + block() + block('100 %', 'other'), pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg\n  via       other travelling on plover angle 0 deg', reach: 'reach     8 m' }) }));
    expect(shown(pull.needed)).toBe('10 kN');
    expect(loadOn(pull, 'larch')).toBe('20 kN');
    expect(loadOn(pull, 'birch')).toBe('10 kN');
    expect(shown(pull.reach.lineOut)).toBe('24 m');
  });
  test('`back-to` says the end where no chain does; which point is used is then not known', () => {
    const pull = judgedPull(pullExample({ header: 'pull off-the-ford with bow-winch', chain: '', more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', 'back-to': 'back-to   plover', reach: 'reach     12 m' }) }));
    expect(shown(pull.needed)).toBe('10 kN');
    expect(shown(pull.loaded.find((loaded) => loaded.name === 'plover')!.limit)).toContain('which recovery point of `plover` is used is not given');
    expect(loadOn(pull, 'main', 'line')).toBe('10 kN');
  });
  test('a chain that only holds the block says nothing of the end', () => {
    const parts = { more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed angle 0 deg', 'back-to': 'back-to   plover', reach: 'reach     12 m' }) };
    for (const route of ['snatch -> trunk -> larch', 'larch -> trunk -> snatch']) {
      const pull = judgedPull(pullExample({ chain: `chain to-the-larch {\n  ${route}\n}\n`, ...parts }));
      // Two parts pull on the load: half of 20 kN in the line, all of it on what holds the block.
      expect(shown(pull.needed)).toBe('10 kN');
      for (const name of ['larch', 'trunk']) expect(loadOn(pull, name)).toBe('20 kN');
      expect(loadOn(pull, 'plover')).toBe('10 kN');
    }
    const named = judgedPull(pullExample({ chain: 'chain to-the-larch {\n  trunk -> larch\n}\n', ...parts, pull: parts.pull.replace('snatch fixed', 'snatch fixed on trunk') }));
    expect([shown(named.needed), loadOn(named, 'larch'), loadOn(named, 'plover')]).toEqual(['10 kN', '20 kN', '10 kN']);
  });
  test('a block on a strap that the pull names hangs on what the chain says holds the strap', () => {
    const pull = judgedPull(pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> plover bow\n  trunk -> larch\n}\n', more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on trunk angle 0 deg', reach: 'reach     12 m' }) }));
    expect(loadOn(pull, 'larch')).toBe('20 kN');
    expect(loadOn(pull, 'trunk')).toBe('20 kN');
  });
  test('a block that nothing is said to hold is not judged there', () => {
    const { findings } = judgedRig(pullExample({ chain: backToBow, more: block(), pull: pullWith({ via: 'via       snatch fixed', reach: 'reach     12 m' }) }));
    expect(findings.map((f) => f.message)).toContain('what holds `snatch` is not given; 1 check not judged');
  });
  test('an angle that nobody wrote counts for the worse', () => {
    const pull = judgedPull(pullExample({ chain: backToBow, more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch', reach: 'reach     12 m' }) }));
    expect(kilonewtons(pull.needed)[1]).toBeCloseTo(20 / (2 * Math.cos((15 * Math.PI) / 180)), 6);
  });
  test('a ring over which the line slides has no friction that is published', () => {
    const ring = 'block snatch {\n  bearing  ring\n  wll      12 t\n}\n';
    expect(shown(judgedPull(pullExample({ chain: backToBow, more: ring, pull: pullWith({ via: 'via       snatch fixed on larch' }) })).needed)).toContain('what is lost over `snatch` is not given');
  });
  // Rigging text: two legs at 60° from the horizontal, 60° between them, carry 577 of 1,000 lb each.
  test('a bridle halves the pull by its angle', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22\n  bow-22 -> trunk -> larch\n  bow-22 -> other -> birch\n}\n';
    const more = 'strap other {\n  length  3 m\n  wll     5 t\n}\nanchor birch {\n  kind     tree\n  holding  60 kN\n}\n';
    const pull = judgedPull(pullExample({ chain, more, pull: pullWith({ resistance: 'resistance  1,000 lbf "load cell"', bridle: 'bridle    60 deg' }) }));
    for (const name of ['trunk', 'other', 'larch', 'birch']) expect(Math.abs(pounds(pull, name) / 577 - 1)).toBeLessThan(0.001);
    expect(pounds(pull, 'bow-22')).toBeCloseTo(1000, 6);
    expect(loadOn(judgedPull(pullExample({ chain, more })), 'larch')).toContain('the angle between the legs in `off-the-ford` is not given');
  });
  test('a route that only says again how the line comes is no leg', () => {
    const again = (second: string): number => pounds(judgedPull(pullExample({ chain: `chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> larch\n  main outboard -> ${second}\n}\n`, pull: pullWith({ resistance: 'resistance  1,000 lbf "load cell"', bridle: 'bridle    60 deg' }) })), 'larch');
    for (const second of ['bow-22 -> trunk -> larch', 'bow-22']) expect(again(second)).toBeCloseTo(1000, 6);
    const twice = 'chain to-the-larch {\n  main outboard -> bow-22\n  bow-22 -> trunk -> larch\n  main outboard -> bow-22\n}\n';
    expect(pounds(judgedPull(pullExample({ chain: twice, pull: pullWith({ resistance: 'resistance  1,000 lbf "load cell"' }) })), 'larch')).toBeCloseTo(1000, 6);
  });
});

describe('winch and line', () => {
  test('line out, layer and pull at the reach', () => {
    const pull = judgedPull(pullExample());
    expect(shown(pull.reach.lineOut)).toBe('18 to 21 m');
    expect(shown(pull.layer)).toBe('2');
    // 42 kN (64 + 10) / (64 + 30) mm
    expect(kilonewtons(pull.available)[0]).toBeCloseTo((42 * 74) / 94, 6);
  });
  test('the tension is never more than the winch pulls', () => {
    expect(shown(judgedPull(pullExample({ pull: pullWith({ resistance: 'resistance  90 kN "load cell"' }) })).tension)).toBe('33.1 kN');
  });
  // 23 wraps a layer: two layers take pi 23 (74 + 94) mm of 30 m; the third one pulls 42 kN (64 + 10) / (64 + 50), 27.3 kN.
  test('a pull that the drum gets too full for says with how much line out', () => {
    const fades = (kN: number) => fadesAt(judgedPull(pullExample({ pull: pullWith({ resistance: `resistance  ${kN} kN "load cell"` }) })));
    expect(fades(30)!.amount.high).toBeCloseTo(30 - Math.PI * 23 * 0.168, 6);
    // The fourth layer, the last, pulls 23.2 kN; the second, on which it begins, 33 kN.
    expect(fades(23)).toBeUndefined();
    expect(fades(34)).toBeUndefined();
    // Less line out than the pull begins with.
    expect(fades(33)!.amount.high).toBeLessThan(18);
  });
  test('after a repair the winch carries what is left', () => {
    const repair = 'repair short on main {\n  cut     at 20 m from inboard\n  splice  outboard eye thimble tube bury 72 d taper 24 d size 200 mm\n}\n';
    const chain = 'chain to-the-larch after short {\n  main outboard -> bow-22 -> trunk -> larch\n}\n';
    const pull = judgedPull(pullExample({ chain, more: repair, pull: pullWith({ reach: 'reach     15 m' }) }));
    // 20 m less 0.1 m of eye and 0.72 m of bury over 0.75 to 0.85.
    expect(isUnknown(pull.line!.length) ? NaN : pull.line!.length.amount.low).toBeCloseTo(20 - 0.1 - 0.72 / 0.75, 6);
    expect(judgedRig(pullExample({ chain, more: repair })).codes).toContain('reach-too-short');
  });
  test('an extension bridges its own length', () => {
    const chain = 'chain to-the-larch {\n  main outboard -> bow-22 -> spare inboard\n  spare outboard -> larch\n}\n';
    const spare = 'line spare {\n  material  HMPE\n  diameter  10 mm\n  length    12 m\n  breaking  140 kN\n  inboard   eye bury 72 d taper 24 d\n  outboard  eye bury 72 d taper 24 d\n}\n';
    const pull = judgedPull(pullExample({ chain, more: spare, pull: pullWith({ reach: 'reach     34 m' }) }));
    expect(shown(pull.reach.lineOut)).toBe('22 m');
    expect(shown(asGiven(pull.standOff))).toBe('42 m');
  });
  test('stored energy only where the stretch is written: half of force times stretch', () => {
    expect(judgedPull(pullExample()).energy).toBeUndefined();
    const { energy } = judgedPull(pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> larch\n}\n', pull: pullWith({ resistance: 'resistance  20 kN "load cell"', stretch: 'stretch   2 %' }) }));
    expect(shown(asGiven(energy!))).toBe('4.2 kJ');
  });
  // US Army lesson 63H34F01, arithmetic on its formulas: 24,000 lb with 9,500 lb of winch take four parts and 7,800 lb.
  test('the army\'s estimate stands beside', () => {
    const winch = 'winch bow-winch on plover {\n  rated    9,500 lbf\n  barrel   64 mm\n  width    400 mm\n  flange   165 mm\n  carries  main\n}\n';
    const { army } = judgedPull(pullExample({ winch, pull: pullWith({ resistance: 'resistance  24,000 lbf "load cell"', reach: 'reach     25 m' }) }));
    if (isUnknown(army)) throw new Error(army.unknown.says);
    expect(army.answer.parts).toBe(4);
    expect(shown(asGiven(army.answer.fallLineForce))).toBe('7,800 lbf');
  });
});

describe('what cannot be', () => {
  test.each([
    ['a chain that closes on itself', pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk -> bow-22\n}\n' }), 'chain-closes-on-itself'],
    ['a pull without an anchor', pullExample({ chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> trunk\n}\n' }), 'pull-without-anchor'],
    ['a block that travels with what stands', pullExample({ more: block(), pull: pullWith({ via: 'via       snatch travelling on larch' }) }), 'block-cannot-move'],
    ['no chain at all', pullExample({ header: 'pull off-the-ford with bow-winch' }), 'pull-without-anchor'],
  ])('%s has its own finding, and no number behind it', (_, text, code) => {
    expect(judgedRig(text).codes).toContain(code);
    const pull = judgedPull(text);
    expect(isUnknown(pull.needed)).toBe(true);
    expect(pull.loaded.every((loaded) => isUnknown(loaded.load))).toBe(true);
  });
  // Statics: forces inside what is pulled cancel out, whatever name the file has for it.
  describe('nothing but what is pulled holds the pull', () => {
    const own = `anchor own {\n  kind     vehicle\n  vehicle  plover\n}\n`;
    const chainTo = (...routes: string[]): string => `chain to-the-larch {\n${routes.map((route) => `  ${route}\n`).join('')}}\n`;
    const holds = '`off-the-ford` has no anchor: `own` is `plover`, which moves with the load';
    const ring = 'ring gathers {\n  wll  8 t\n}\n';
    test.each([
      ['an anchor that is the very vehicle', { chain: chainTo('main outboard -> bow-22 -> own') }, 'pull-without-anchor', holds],
      ['with a tested holding power too', { chain: chainTo('main outboard -> bow-22 -> own'), anchor: own.replace('}', '  holding  60 kN "tested 2026-05-02"\n}') }, 'pull-without-anchor', holds],
      ['as `back-to`', { header: 'pull off-the-ford with bow-winch', chain: '', pull: pullWith({ 'back-to': 'back-to   own' }) }, 'pull-without-anchor', holds],
      ['the load given by weight, and the winch moves with it', { chain: chainTo('main outboard -> bow-22 -> own'), pull: pullWith({ load: 'load      2,650 kg' }) }, 'pull-without-anchor', holds],
      ['a vehicle that nobody declared', { chain: chainTo('main outboard -> bow-22 -> own'), vehicle: '' }, 'pull-without-anchor', holds],
      ['an anchor whose kind is not written', { chain: chainTo('main outboard -> bow-22 -> own'), anchor: own.replace('  kind     vehicle\n', '') }, 'pull-without-anchor', holds],
      ['both legs of a bridle', { chain: chainTo('main outboard -> bow-22 -> gathers', 'gathers -> own', 'gathers -> plover bow'), more: ring, pull: pullWith({ bridle: 'bridle    40 deg' }) }, 'pull-without-anchor', holds],
      ['a block that is to stand', { chain: chainTo('main outboard -> bow-22 -> plover bow'), more: block(), pull: pullWith({ via: 'via       snatch fixed on own', reach: 'reach     12 m' }) }, 'block-cannot-move', '`snatch` is to stand still, and `own`, which holds it, is `plover` and moves with the load'],
      ['a block that a route makes fast to it, whatever `on` says', { anchor: own + 'anchor larch {\n  kind  tree\n}\n', chain: chainTo('main outboard -> bow-22 -> plover bow', 'snatch -> trunk -> own'), more: block(), pull: pullWith({ via: 'via       snatch fixed on larch', reach: 'reach     12 m' }) }, 'block-cannot-move', '`snatch` is to stand still, and `own`, which holds it, is `plover` and moves with the load'],
      ['a block that `on` makes fast to it, whatever the route says', { anchor: own + 'anchor larch {\n  kind  tree\n}\n', chain: chainTo('main outboard -> bow-22 -> plover bow', 'snatch -> trunk -> larch'), more: block(), pull: pullWith({ via: 'via       snatch fixed on own', reach: 'reach     12 m' }) }, 'block-cannot-move', '`snatch` is to stand still, and `own`, which holds it, is `plover` and moves with the load'],
      ['a block whose two legs come back to it', { chain: chainTo('main outboard -> bow-22 -> plover bow', 'snatch -> gathers', 'gathers -> own', 'gathers -> plover bow'), more: ring + block(), pull: pullWith({ via: 'via       snatch fixed', reach: 'reach     12 m' }) }, 'block-cannot-move', '`snatch` is to stand still, and `own`, which holds it, is `plover` and moves with the load'],
    ])('%s', (_what, parts, code, message) => {
      const { findings } = judgedRig(pullExample({ anchor: own, ...parts }));
      expect(findings.filter((f) => f.code === code).map((f) => `${f.severity}: ${f.message}`)).toEqual([`error: ${message}`]);
      const pull = judgedPull(pullExample({ anchor: own, ...parts }));
      expect(isUnknown(pull.needed)).toBe(true);
      expect(pull.loaded.every((loaded) => isUnknown(loaded.load))).toBe(true);
    });

    const errors = (text: string): string[] => judgedRig(text).block('pull').findings.filter((f) => f.severity === 'error').map((f) => f.message);
    // The two parts of a line that comes back from a tree pull on the vehicle alike, under whatever name the end is fast to it.
    test('its own point holds the end of a line that comes back from an anchor', () => {
      const text = pullExample({ anchor: own + 'anchor larch {\n  kind     tree\n  holding  60 kN "tested 2026-05-02"\n}\n', chain: chainTo('main outboard -> bow-22 -> own'), more: block(), pull: pullWith({ resistance: 'resistance  20 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg', reach: 'reach     12 m' }) });
      expect(errors(text)).toEqual([]);
      const pull = judgedPull(text);
      expect(shown(pull.needed)).toBe('10 kN');
      expect(loadOn(pull, 'larch')).toBe('20 kN');
      // It holds nothing: it is a point of what moves, and which one nobody wrote.
      expect(loadOn(pull, 'own', 'anchor')).toBe('not loaded');
      expect(loadOn(pull, 'own', 'point')).toBe('10 kN');
      expect(shown(pull.loaded.find((l) => l.name === 'own')!.limit)).toContain('which recovery point of `plover` is used is not given');
    });
    test('a block may travel on it', () => {
      const text = pullExample({ anchor: own + 'anchor larch {\n  kind     tree\n  holding  60 kN "tested 2026-05-02"\n}\n', chain: chainTo('main outboard -> bow-22 -> larch'), more: block() + block('100 %', 'other'), pull: pullWith({ resistance: 'resistance  30 kN "load cell"', via: 'via       snatch fixed on larch angle 0 deg\n  via       other travelling on own angle 0 deg', reach: 'reach     8 m' }) });
      expect(errors(text)).toEqual([]);
      expect(shown(judgedPull(text).needed)).toBe('10 kN');
    });
    test('the vehicle of a winch that stands is an anchor for its own line', () => {
      const text = pullExample({ anchor: own, chain: chainTo('main outboard -> bow-22 -> own', 'snatch -> trunk -> dipper bow'), vehicle: 'vehicle plover {\n  mass   2,650 kg\n  point  bow rated 6 t\n}\n', more: dipper + block(), pull: pullWith({ load: 'load      dipper', resistance: 'resistance  12 kN "load cell"', via: 'via       snatch travelling angle 0 deg', reach: 'reach     10 m' }) });
      expect(errors(text)).toEqual([]);
      expect(shown(judgedPull(text).needed)).toBe('6 kN');
      expect(loadOn(judgedPull(text), 'own', 'anchor')).toBe('0 to 12 kN');
    });
    test('what is pulled by another one may be called an anchor of other pulls', () => {
      const text = pullExample({ anchor: own.replace('plover', 'dipper'), chain: chainTo('main outboard -> bow-22 -> own'), more: dipper, pull: pullWith({ load: 'load      dipper', resistance: 'resistance  12 kN "load cell"' }) });
      expect(errors(text)).toEqual([]);
      expect(loadOn(judgedPull(text), 'own', 'anchor')).toBe('not loaded');
      expect(loadOn(judgedPull(text), 'plover', 'anchor')).toBe('12 kN');
    });
  });

  test('a vehicle that nobody named may be the one that is pulled, whatever it was proved to hold', () => {
    const parked = (more: string): string => pullExample({ anchor: `anchor larch {\n  kind     vehicle\n  holding  60 kN "tested 2026-05-02"\n${more}}\n`, more: dipper });
    const notJudged = (text: string): string[] => judgedRig(text).block('pull').notJudged.map((n) => n.cause.says);
    expect(notJudged(parked(''))).toContain('which vehicle stands as `larch` is not given');
    expect(new Set(notJudged(parked('  vehicle  dipper\n')))).toEqual(new Set([...notJudged(pullExample()), 'which recovery point of `dipper` is used is not given']));
  });

  // A leg that goes where the pull goes takes nothing of it, so the other one has all.
  describe('what holds the end stands and moves', () => {
    const ring = 'ring gathers {\n  wll  8 t\n}\n';
    const legs = (...ends: string[]): string => `chain to-the-larch {\n  main outboard -> bow-22 -> gathers\n${ends.map((e) => `  gathers -> ${e}\n`).join('')}}\n`;
    const bridle = pullWith({ bridle: 'bridle    40 deg' });
    test.each([
      ['a bridle between a tree and the pulled vehicle', { chain: legs('larch', 'plover bow'), more: ring, pull: bridle }],
      ['in the other order', { chain: legs('plover bow', 'larch'), more: ring, pull: bridle }],
      ['the chain and `back-to` do not say the same', { pull: pullWith({ 'back-to': 'back-to   plover' }) }],
      ['a bridle between a tree and a load that another vehicle pulls', { chain: legs('larch', 'dipper bow'), more: ring + dipper, pull: pullWith({ bridle: 'bridle    40 deg', load: 'load      dipper' }) }],
    ])('%s', (_what, parts) => {
      expect(judgedRig(pullExample(parts)).codes).toContain('end-stands-and-moves');
      expect(isUnknown(judgedPull(pullExample(parts)).needed)).toBe(true);
    });
    test('two legs to what stands, or two to the load, are a bridle', () => {
      const birch = 'anchor birch {\n  kind     tree\n  holding  60 kN\n}\n';
      expect(judgedRig(pullExample({ chain: legs('larch', 'birch'), more: ring + birch, pull: bridle })).codes).not.toContain('end-stands-and-moves');
      expect(judgedRig(pullExample({ chain: legs('dipper bow', 'dipper stern'), more: ring + dipper.replace('}', '  point  stern rated 6 t\n}'), pull: pullWith({ bridle: 'bridle    40 deg', load: 'load      dipper' }) })).codes).not.toContain('end-stands-and-moves');
    });
  });

  test('a name that is not declared is said once, as that', () => {
    const { codes } = judgedRig(pullExample({ anchor: '' }));
    expect(codes).toContain('unknown-name');
    expect(codes).not.toContain('pull-without-anchor');
  });
});
