import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { pullExample, pullWith } from '../../src-core/rules/example-pull.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

// What a file does not say is not counted as the kinder case without a word.

const rig = (parts: { strap?: string; block?: string; log?: string } = {}): string => `winch bow-winch {
  rated 12 kN
  carries main
}

line main {
  material HMPE
  strands  12
  diameter 10 mm
  length   30 m
  breaking 92 kN
  inboard  lug
  outboard eye thimble tube bury 72 d taper 24 d
  2026-06-14 fitted
  ${parts.log ?? '2026-06-14 spooled tight under 230 kgf'}
}

shackle bow-22 {
  body 22 mm
  wll  6.5 t
}

strap trunk {
  wll 4 t
  length 3 m
  ${parts.strap ?? 'kind static\n  hitch basket'}
}

block snatch {
  sheave 100 mm
  wll    8 t
  ${parts.block ?? 'takes 12 mm'}
}

anchor larch {
  kind tree
  holding 40 kN
}

chain reach {
  main outboard -> bow-22 -> trunk -> larch
}

pull out with bow-winch through reach {
  load  8 kN
  reach 18 m
  via   snatch fixed on larch angle 90 deg
}
`;
const missing = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'missing-fact').map((f) => f.message.replace(/; \d+ checks? not judged$/, ''));
const asked = /trunk|largest|wound|latch|form/;

describe('a fact that decides between a milder and a graver case', () => {
  test.each([
    ['all of it given', {}, []],
    ['how a strap is hitched: a choker counts half', { strap: 'kind static' }, ['how `trunk` goes round what it holds is not given']],
    ['whether a strap stretches', { strap: 'hitch basket' }, ['whether `trunk` stretches is not given']],
    ['which line a block takes', { block: '' }, ['the largest line that `snatch` takes is not given']],
    ['how the line was wound on', { log: '' }, ['how `main` was wound onto the drum is not given']],
  ])('%s', (_what, parts, expected) => {
    expect(missing(rig(parts)).filter((m) => asked.test(m))).toEqual(expected);
  });

  test('a word that cannot be read is said once, by itself', () => {
    expect(missing(rig({ strap: 'kind static\n  hitch bascket' })).filter((m) => asked.test(m))).toEqual([]);
  });

  test('the latch of a hook, and the form of a shackle that is loaded from the side', () => {
    expect(missing('hook clevis {\n  wll 4 t\n}\n')).toEqual(['whether the latch of `clevis` closes is not given']);
    expect(missing('shackle s {\n  body 19 mm\n  wll 4.7 t\n  load-from 30 deg\n  marking legible\n}\n')).toEqual(['form of `s` is not given']);
    expect(missing('shackle s {\n  body 19 mm\n  wll 4.7 t\n  marking legible\n}\n')).toEqual([]);
  });

  test('a hook made without a latch is warned of', () => {
    const said = (latch: string): string[] => findingsIn(`hook clevis {\n  latch ${latch}\n  wll 4 t\n}\n`).map((f) => `${f.severity}: ${f.message}`);
    expect(said('none')).toEqual(['warning: `clevis` is made without a latch']);
    expect(said('broken')).toEqual(['error: the latch of `clevis` is bent or missing']);
    expect(said('closes')).toEqual([]);
  });

  // NAVEDTRA 14160: outdoors a line loses about 30 % in two years. Who leaves the word out is asked, and does not pass.
  test('where a line lives, as soon as it is in use', () => {
    const line = (stored: string, fitted: string): string => `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  outboard eye bury 72 d taper 24 d\n${stored}${fitted}}\n`;
    const where = 'where `main` lives between pulls is not given';
    expect(missing(line('', '  2020-04-02 fitted\n'))).toContain(where);
    expect(missing(line('  stored indoors\n', '  2020-04-02 fitted\n'))).not.toContain(where);
    expect(missing(line('', ''))).not.toContain(where);
    expect(missing(line('', '  2020-04-02 fitted\n  2026-04-02 retired\n'))).not.toContain(where);
  });

  // Common practice: twelve strands are a hollow braid; three are laid, and no tail goes inside them.
  test('how a line is made, where its strands do not tell', () => {
    const line = (facts: string): string => `line main {\n  material HMPE\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n${facts}  outboard eye bury 72 d taper 24 d\n  2026-06-02 pulled 90 kN\n}\n`;
    const how = (facts: string): string[] => missing(line(facts)).filter((m) => m.includes('made'));
    expect(how('')).toEqual(['how `main` is made is not given']);
    expect(how('  strands 12\n')).toEqual([]);
    expect(how('  strands 16\n')).toEqual(['how `main` is made is not given, and 16 strands do not tell']);
    expect(how('  strands 16\n  construction hollow-braid\n')).toEqual([]);
    expect(how('  strands 16\n  construction braided\n')).toEqual([]);
    // Its splice has no strength to compare with; that of a braid has.
    const codes = (facts: string): string[] => findingsIn(line(facts)).map((f) => f.code);
    expect(codes('  strands 12\n')).toContain('line-overloaded');
    expect(how('  strands 3\n')).toEqual(['how `main` is made is not given, and 3 strands do not tell']);
    expect(codes('  strands 3\n')).toContain('line-overloaded');
    expect(codes('  strands 3\n').filter((c) => c === 'missing-fact')).not.toEqual([]);
  });

  test('what a hook on the line itself may bear', () => {
    const hooked = (route: string): string[] => missing(rig().replace('outboard eye thimble tube', 'outboard hook').replace('main outboard -> bow-22', route) + 'hook clevis {\n  latch closes\n  wll 4 t\n}\n').filter((m) => m.includes('hook'));
    expect(hooked('main outboard -> bow-22')).toEqual(['what the hook at the outboard end of `main` may bear is not given']);
    expect(hooked('main outboard -> clevis -> bow-22')).toEqual([]);
  });

  test('all that the resistance of a pull lacks, at once', () => {
    const asks = (drop: string[]): string[] => missing(pullExample({ pull: pullWith(Object.fromEntries(drop.map((head) => [head, undefined]))) })).filter((m) => m.includes('off-the-ford') || m.includes('is given'));
    expect(asks(['mired', 'dragging', 'grade'])).toEqual(['how deep the load is sunk in `off-the-ford` is not given', 'how steep the way is in `off-the-ford` is not given', 'whether every wheel turns in `off-the-ford` is not given']);
    expect(asks([])).toEqual([]);
  });
});

// Geometry; wire rope users' manual: at most 1.5° on a smooth drum. 7 m across and 20 m along is arctan(7/20) = 19.29°.
describe('how the line comes on to the drum', () => {
  const places = (text: string): string => pullWith({ stands: `stands    ${text}` });
  const dipper = 'vehicle dipper {\n  mass 3 t\n  point stern rated 6 t\n}\n';
  const byOther = { chain: 'chain to-the-larch {\n  main outboard -> bow-22 -> dipper stern\n}\n', more: dipper };
  const heard = (text: string): string[] => findingsIn(text).filter((f) => f.code === 'pull-off-square' || /off square/.test(f.message)).map((f) => `${f.severity}: ${f.message}`);

  test.each([
    ['larch ahead 20 m left 7 m', ['warning: `off-the-ford` comes on to the drum 19.3 deg off square, by the places that are given, above the 1.5 deg at which line spools evenly']],
    ['larch behind 20 m right 7 m', ['warning: `off-the-ford` comes on to the drum 19.3 deg off square, by the places that are given, above the 1.5 deg at which line spools evenly']],
    ['larch ahead 20 m left 3.5 m', []],
    ['larch right 20 m', ['warning: `off-the-ford` comes on to the drum 90 deg off square, by the places that are given, above the 1.5 deg at which line spools evenly']],
    ['larch ahead 20 m left 0.5 m', []],
    ['larch ahead 20 m', []],
  ])('%s', (text, expected) => expect(heard(pullExample({ pull: places(text) }))).toEqual(expected));

  test('what is written counts before the places', () => {
    expect(heard(pullExample({ pull: `${places('larch ahead 20 m left 7 m')}  off-square  1 deg\n` }))).toEqual([]);
    expect(heard(pullExample({ pull: `${places('larch ahead 20 m')}  off-square  5 deg\n` }))).toEqual(['warning: `off-the-ford` comes on to the drum 5 deg off square, above the 1.5 deg at which line spools evenly']);
  });

  test('a vehicle that stands and winches may face anywhere: asked where places are given, and nothing is judged where none are', () => {
    const load = { load: 'load      dipper', footing: 'footing   plover level' };
    const asked = 'information: how far off square the line of `off-the-ford` comes on to the drum is not given; 1 check not judged';
    expect(heard(pullExample({ ...byOther, pull: pullWith({ ...load, stands: 'stands    plover ahead 20 m left 7 m' }) }))).toEqual([asked]);
    const silent = pullExample({ ...byOther, pull: pullWith(load) });
    expect(heard(silent)).toEqual([]);
    expect(projectOf(silent).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.flatMap((b) => b.notJudged).filter((n) => n.rule === 'pull-off-square')).toEqual([]);
  });
});

// WAC 296-304-07005(1) and WAC 296-24-29419(13): a shackle or a sling without legible marks is not used.
describe('whether the rating can be read', () => {
  const gear = (head: string, name: string, more = ''): string => `${head} ${name} {\n  wll 4 t\n${more}}\n`;
  const asked = (text: string): string[] => findingsIn(text).filter((f) => f.message.includes('can still be read')).map((f) => `${f.line}: ${f.severity}: ${f.message}`);
  const says = 'information: whether the rating can still be read on every shackle and strap is not given';
  test('is asked once for all that does not say it', () => {
    expect(asked(`${gear('shackle', 'a')}${gear('shackle', 'b', '  marking legible\n')}${gear('strap', 'c')}`)).toEqual([`1: ${says}; 2 checks not judged`]);
    expect(asked(`${gear('shackle', 'a', '  marking legible\n')}${gear('strap', 'c')}`)).toEqual([`5: ${says}; 1 check not judged`]);
    expect(asked(`${gear('shackle', 'a', '  marking legible\n')}${gear('strap', 'c', '  marking faded\n')}`)).toEqual([]);
  });
  test('is not asked of what has no such document, nor where the word cannot be read', () => {
    expect(asked(gear('ring', 'a'))).toEqual([]);
    expect(asked(gear('shackle', 'a', '  marking lgible\n'))).toEqual([]);
  });
});

// Common practice: webbing lies flat over its whole width in what it hangs by.
describe('a strap in a shackle', () => {
  const joined = (shackle: string, width: string): string[] =>
    findingsIn(rig({ strap: `kind static\n  hitch basket${width}` }).replace('body 22 mm\n', `body 22 mm${shackle}\n`)).filter((f) => f.code === 'strap-bunched' || / inside, /.test(f.message)).map((f) => `${f.severity}: ${f.message}`);
  test.each([
    ['', '\n  width 75 mm', ['information: how wide `bow-22` is inside, where `trunk` lies in it, is not given; 1 check not judged']],
    ['\n  inside 51 mm', '\n  width 75 mm', ['warning: `trunk` is 75 mm wide and lies in 51 mm of `bow-22`: it bunches']],
    ['\n  inside 80 mm', '\n  width 75 mm', []],
    ['\n  inside eighty', '\n  width 75 mm', []],
    ['', '', []],
  ])('%s beside %s', (shackle, width, expected) => expect(joined(shackle, width)).toEqual(expected));
  test('one that the route gives by its size has nowhere to write it', () => {
    const sized = findingsIn(rig({ strap: 'kind static\n  hitch basket\n  width 75 mm' }).replace('-> bow-22 ->', '-> shackle bow 22 mm AS-2741 ->')).filter((f) => / inside, /.test(f.message));
    expect(sized.map((f) => f.finding.help)).toEqual(['write the shackle as a block with its `inside`, measured']);
  });
});
