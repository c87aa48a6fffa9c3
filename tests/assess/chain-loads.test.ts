import { describe, expect, test } from 'vitest';
import { isUnknown } from '../../src-core/mechanics/derivation.ts';
import { judgedRig, shown } from '../support/judged-pull.ts';

const rig = (chain: string, more = ''): string => `winch bow-winch on plover {
  rated    42 kN at layer 1
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
vehicle plover {
  mass   2,650 kg
  point  bow rated 18 t
}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  150 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d size 150 mm stitched
}
line ext {
  material  HMPE
  strands   12
  diameter  10 mm
  length    20 m
  breaking  250 kN
  inboard   eye thimble tube bury 72 d taper 24 d size 150 mm stitched
  outboard  eye thimble tube bury 72 d taper 24 d size 150 mm stitched
}
shackle bow-22 {
  body  22 mm
  wll   18 t
}
shackle big-s {
  body  32 mm
  wll   18 t
}
block big {
  wll  18 t
}
ring master {
  wll  18 t
}
strap leg-a {
  length  3 m
  wll     18 t
}
strap leg-b {
  length  3 m
  wll     18 t
}
anchor fir {
  kind     tree
  holding  50 kN
}
anchor oak {
  kind     tree
  holding  100 kN
}
${chain}
${more}`;

const assessed = (text: string, name = 'c') => {
  const chain = judgedRig(text).block('chain', name).assessed;
  if (chain.kind !== 'chain') throw new Error('the chain was not assessed');
  return chain;
};
const turned = (...routes: string[]): string[] => assessed(rig(`chain c {\n${routes.map((r) => `  ${r}\n`).join('')}}\n`)).links.filter((link) => link.turned).map((link) => link.name);

// The winch pulls 42 kN on its first layer: with both parts in one direction a block has 84 kN, and so has all that holds it.
describe('both parts of the line pull on what holds a block', () => {
  test.each<[string, string[], string[]]>([
    ['in one route', ['main -> big -> big-s -> fir'], ['big', 'big-s', 'fir']],
    ['in two routes', ['main -> big -> big-s', 'big-s -> fir'], ['big', 'big-s', 'fir']],
    ['the second one first', ['main outboard -> bow-22 -> plover bow', 'big-s -> fir', 'main -> big -> big-s'], ['big-s', 'fir', 'big']],
    ['anchor first', ['with bow-winch', 'fir -> big-s -> big'], ['fir', 'big-s', 'big']],
    ['anchor first, the line behind the block', ['fir -> big-s -> big -> main'], ['fir', 'big-s', 'big']],
    ['anchor first, beside the end of the line', ['main outboard -> bow-22 -> plover bow', 'fir -> big-s -> big'], ['fir', 'big-s', 'big']],
    ['down two legs', ['main outboard -> bow-22 -> plover bow', 'big -> master', 'fir -> leg-a -> master', 'master -> leg-b -> oak'], ['big', 'master', 'fir', 'leg-a', 'leg-b', 'oak']],
    ['along an extension', ['main outboard -> bow-22 -> plover bow', 'big -> big-s -> ext inboard', 'fir -> leg-a -> ext outboard'], ['big', 'big-s', 'ext inboard', 'fir', 'leg-a', 'ext outboard']],
    ['between two anchors', ['with bow-winch', 'fir -> leg-a -> big -> leg-b -> oak'], ['fir', 'leg-a', 'big', 'leg-b', 'oak']],
    ['not back along the line, where both end at one ring', ['main outboard -> bow-22 -> master', 'big -> big-s -> master', 'master -> leg-a -> fir'], ['master', 'big', 'big-s', 'leg-a', 'fir']],
    ['not beyond an anchor that both share', ['main outboard -> bow-22 -> fir', 'big -> big-s -> fir'], ['fir', 'big', 'big-s']],
    ['not where the block hangs in the line itself', ['main outboard -> bow-22 -> big -> leg-a -> fir'], []],
    ['not without a block', ['main outboard -> bow-22 -> master', 'master -> leg-a -> fir', 'master -> leg-b -> oak'], []],
  ])('%s', (_, routes, expected) => expect(turned(...routes)).toEqual(expected));
  test('and is compared with what it holds', () => {
    const { findings } = judgedRig(rig('chain c {\n  with bow-winch\n  fir -> big-s -> big\n}\n'));
    expect(findings.filter((f) => f.code === 'link-above-limit').map((f) => f.message)).toEqual(['load on `fir` is up to 84 kN, above its holding power of 50 kN, because both parts of the line pull at the block']);
  });
  test('a line that runs over the last block of a route is joined to nothing there', () => {
    const { notJudged } = judgedRig(rig('chain c {\n  oak -> big-s -> big -> main\n}\n')).block('chain');
    expect(notJudged.map((n) => n.cause.says)).not.toContain('which end of `main` is joined here is not given');
  });
  test('many routes are gone through once', () => {
    const straps = Array.from({ length: 300 }, (_, i) => `strap s${i} {\n  length  1 m\n  wll     18 t\n}\n`).join('');
    const routes = Array.from({ length: 299 }, (_, i) => `  s${i} -> s${i + 1}\n  s${i} -> big-s -> s${i + 1}\n`).join('');
    expect(assessed(rig(`chain c {\n  with bow-winch\n  big -> s0\n${routes}}\n`, straps)).links.filter((l) => l.turned).length).toBe(302);
  });
});

describe('after a repair', () => {
  // 13 m less the eye and the new bury leave about 12 m; with 9 m out some 3 m stay, which the first layer of 23 π 74 mm = 5.35 m takes whole: 42 kN.
  // Before it 21 m stay, on the third layer and more: 42 (64 + 10) / (64 + 70) = 23.2 kN.
  const fix = 'repair fix on main {\n  cut     at 13 m from inboard\n  splice  outboard eye thimble tube bury 72 d taper 24 d size 150 mm stitched\n}\n';
  test('a chain is loaded by the winch with the line that is left', () => {
    const text = rig('chain before {\n  out  9 m\n  main outboard -> bow-22 -> oak\n}\nchain c after fix {\n  out  9 m\n  main outboard -> bow-22 -> oak\n}\n', fix);
    expect(shown(assessed(text, 'before').load)).toBe('23.1 kN');
    expect(shown(assessed(text).load)).toBe('42 kN');
  });
  test('also where the chain names the winch', () => {
    expect(shown(assessed(rig('chain c after fix {\n  with  bow-winch\n  out   9 m\n  big -> big-s -> oak\n}\n', fix)).load)).toBe('42 kN');
  });
  test('a line that the repair joins to another is not on the drum any more', () => {
    const joined = rig('chain c after fix {\n  with  bow-winch\n  out   9 m\n  big -> big-s -> oak\n}\n', 'repair fix on main {\n  join  main to tail bury 72 d taper 24 d\n}\n')
      .replace('carries  main', 'carries  tail').replace('bury 72 d taper 24 d size 150 mm stitched\n}', 'bury 72 d taper 24 d size 150 mm stitched\n  2026-05-01  cut at 12 m from inboard keep tail\n}');
    expect(shown(assessed(joined).load)).toBe('not known: which line `bow-winch` carries after `fix` is not known: `tail` is gone');
  });
});

describe('gear that is loaded from the side or as a choker breaks at less', () => {
  // A choker counts with half: 60 kN break at 30 kN. At 90° a shackle keeps half as well.
  const loaded = (gear: string) => assessed(rig('chain c {\n  main outboard -> it -> oak\n}\n', gear)).links.find((link) => link.name === 'it')!;
  test.each([
    ['strap it {\n  length    3 m\n  hitch     choker\n  breaking  60 kN\n}\n', '30 kN'],
    ['strap it {\n  length    3 m\n  hitch     basket\n  breaking  60 kN\n}\n', '60 kN'],
    ['shackle it {\n  body       19 mm\n  wll        4.7 t\n  breaking   60 kN\n  load-from  90 deg\n}\n', '30 kN'],
    ['shackle it {\n  body       19 mm\n  wll        4.7 t\n  breaking   60 kN\n}\n', '60 kN'],
  ])('%s', (gear, breaking) => expect(shown(loaded(gear).breaking)).toBe(breaking));
  test('beyond 90 degrees nobody knows', () => expect(isUnknown(loaded('shackle it {\n  body       19 mm\n  breaking   60 kN\n  load-from  100 deg\n}\n').breaking)).toBe(true));
  test('a load above that is an error', () => {
    const { findings } = judgedRig(rig('chain c {\n  main outboard -> it -> oak\n}\n', 'strap it {\n  length    3 m\n  hitch     choker\n  breaking  60 kN\n}\n'));
    expect(findings.filter((f) => f.code === 'link-above-breaking').map((f) => f.message)).toEqual(['load on `it` is 42 kN, above the 30 kN at which it breaks']);
  });
});
