import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { judgeText, projectOf, testDay } from '../support/judge-text.ts';

interface LineText {
  readonly facts?: string;
  readonly length?: string;
  readonly ends?: string;
  readonly log?: string;
}

const line = ({ facts = '2026-05-02  spooled tight under 230 kgf', length = '30 m', ends = 'outboard  eye thimble tube bury 72 d taper 24 d', log = '' }: LineText = {}): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  breaking  92 kN
  length    ${length}
  ${ends}
  2026-05-02  fitted
  ${facts}
${log.split('\n').map((entry) => '  ' + entry.trim()).join('\n')}${facts.includes('stored') ? '' : '\n  stored  covered'}
}
`;

const winch = `winch bow-winch {
  rated     42 kN at layer 1
  barrel    64 mm
  width     230 mm
  flange    185 mm
  keep      10 wraps
  carries   main
  fairlead  hawse condition sound
  brake     outside
}
`;

/** Findings of these codes, or all but what is only information. */
const said = (text: string, ...codes: string[]): string[] => judgeText(text).filter((f) => (codes.length === 0 ? !/ (information|hint)\[/.test(f) : codes.some((code) => f.includes(`[${code}]`)))).map((f) => f.replace(/^[\d:]+ /, ''));

describe('damage', () => {
  test('two single cut strands near each other are one place, said once at the later entry', () => {
    const text = line({ log: '2026-06-01 damage cut 1 strand at 8 m from inboard\n2026-06-02 damage cut 1 strand at 8.3 m from inboard' });
    expect(judgeText(text).filter((f) => f.includes('damage-left'))).toEqual(['11:3 error[damage-left-in-service]: 2 cut strands near each other at 8.3 m from inboard on `main`, at the limit of 2, are left in service']);
  });

  test('two single cut strands farther apart than a bury are two places', () => {
    expect(said(line({ log: '2026-06-01 damage cut 1 strand at 8 m from inboard\n2026-06-02 damage cut 1 strand at 9 m from inboard' }))).toEqual([]);
  });

  test('a cut of unknown size is neither passed over nor taken for one strand', () => {
    expect(said(line({ log: '2026-06-01 damage cut at 8 m from inboard' }))).toEqual(['warning[damage-not-measured]: how many strands are cut at 8 m from inboard on `main` is not written, so it counts as damage to cut out']);
  });

  test('known strands beside a cut of unknown size still reach the limit', () => {
    expect(said(line({ log: '2026-06-01 damage cut at 8 m from inboard\n2026-06-01 damage cut 1 strand at 8.1 m from inboard' }), 'damage-left-in-service')).toHaveLength(1);
  });

  test('a measured share at the limit is to be cut out, below it not', () => {
    expect(said(line({ log: '2026-06-01 damage abrasion 25 % at 8 m from inboard' }))).toEqual(['error[damage-left-in-service]: abrasion of 25 % at 8 m from inboard on `main`, at the limit of 25 %, is left in service']);
    expect(said(line({ log: '2026-06-01 damage abrasion 24 % at 8 m from inboard' }))).toEqual([]);
  });

  test('nothing is asked of a retired line', () => {
    expect(said(line({ log: '2026-06-01 damage melt at 8 m from inboard\n2026-06-01 damage cut at 9 m from inboard\n2026-06-02 retired' }))).toEqual([]);
  });

  test('what was cut off is gone', () => {
    expect(said(line({ log: '2026-06-01 damage melt at 20 m from inboard\n2026-06-02 cut at 18 m from inboard\n2026-06-02 splice outboard eye thimble tube bury 72 d taper 24 d stitched' }))).toEqual([]);
  });
});

describe('splices', () => {
  test('the two eyes of a short planned piece overlap, and no strength is pretended', () => {
    const text = `${line()}
repair split on main {
  cut     at 26 m from inboard keep stub
  splice  outboard eye bury 72 d taper 24 d stitched
  splice  stub inboard eye bury 72 d taper 24 d stitched
}

chain short {
  stub outboard -> stub inboard
}
`;
    expect(said(text, 'overlapping-splices', 'splice-longer-than-piece')).toEqual([]);
    expect(said(text.replace('26 m', '27.2 m'), 'overlapping-splices', 'splice-longer-than-piece')).toEqual([expect.stringMatching(/^error\[overlapping-splices\]: buried tails of `stub` outboard eye and `stub` inboard eye overlap by \d+ mm$/)]);
    const project = projectOf(text.replace('26 m', '27.2 m'));
    const repair = project.judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.find((b) => b.assessed.kind === 'repair')!.assessed;
    expect(repair.kind === 'repair' && repair.after.pieces.get('stub')!.strength).toMatchObject({ unknown: { reported: true } });
    expect(repair.kind === 'repair' && repair.after.pieces.get('main')!.strength).toHaveProperty('amount');
  });

  test('a splice that is longer than its piece has no strength', () => {
    const text = `${winch}\n${line()}\nrepair stub on main {\n  cut     at 1.2 m from inboard\n  splice  outboard eye bury 72 d taper 24 d stitched\n}\n`;
    const repair = projectOf(text).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.find((b) => b.assessed.kind === 'repair')!.assessed;
    expect(repair.kind === 'repair' && repair.after.pieces.get('main')!.strength).toMatchObject({ unknown: { reported: true } });
    expect(said(text, 'splice-longer-than-piece', 'missing-fact')).toHaveLength(1);
  });

  // Published tapers are a third of the bury: half of it is our own careful choice.
  test.each([
    ['bury 72 d taper 72 d', ['warning[taper-too-long]: taper of `main` outboard eye is 72 d, all of its bury of 72 d']],
    ['bury 72 d taper 37 d', ['warning[taper-too-long]: taper of `main` outboard eye is 37 d, more than half of its bury of 72 d']],
    ['bury 72 d taper 36 d', []],
    // What is too short is the bury, and it is said.
    ['bury 46 d taper 24 d', []],
    ['bury 30 d taper 30 d', ['warning[taper-too-long]: taper of `main` outboard eye is 30 d, all of its bury of 30 d']],
    ['bury 72 d taper 90 d', []],
  ])('%s', (splice, expected) => expect(said(line({ ends: `outboard  eye ${splice}` }), 'taper-too-long')).toEqual(expected));

  test('a taper longer than its bury is said once, and nothing about it is called missing', () => {
    expect(said(`${winch}\n${line({ ends: 'outboard  eye bury 72 d taper 90 d' })}`)).toEqual(['warning[line-factor-too-low]: `bow-winch` can pull 42 kN, above 30.6 kN, the most that a factor of 3 leaves of `main`', 'error[taper-longer-than-bury]: taper of `main` outboard eye is 90 d, above its bury of 72 d']);
    expect(said(`${winch}\n${line({ ends: 'outboard  eye bury 72 d taper 90 d' })}`, 'missing-fact')).toEqual([]);
  });

  test('the limit is shown in the unit that stands in the file', () => {
    expect(said(line({ ends: 'outboard  eye bury 72 cm taper 15 cm' }), 'taper-too-short')).toEqual(['warning[taper-too-short]: taper of `main` outboard eye is 15 cm, below the 21 cm for HMPE']);
    expect(said(line({ ends: 'outboard  eye bury 72 d taper 15 d' }), 'taper-too-short')).toEqual(['warning[taper-too-short]: taper of `main` outboard eye is 15 d, below the 21 d for HMPE']);
    expect(said(line({ ends: 'outboard  eye bury 29 in taper 6 in' }), 'taper-too-short')).toEqual(['warning[taper-too-short]: taper of `main` outboard eye is 6 in, below the 8.3 in for HMPE']);
  });

  test('a planned splice gets its taper offered, a supplied one does not', () => {
    const fixes = (text: string): number[] => projectOf(text).findings('test.rig', readDay(testDay)!).filter((f) => f.code === 'taper-missing').map((f) => f.fixes.length);
    expect(fixes(line({ ends: 'outboard  eye bury 72 d' }))).toEqual([0]);
    expect(fixes(`${line()}\nrepair new-eye on main {\n  cut     at 20 m from inboard\n  splice  outboard eye bury 72 d stitched\n}\n`)).toEqual([1]);
  });

  test('a temporary splice is due on its day and overdue on the next', () => {
    const text = line({ log: '2026-06-01 cut at 18 m from inboard\n2026-06-01 splice outboard eye bury 72 d taper 24 d stitched temporary' });
    expect(judgeText(text, '2026-07-01').filter((f) => f.includes('temporary'))).toEqual(['11:3 information[temporary-splice]: `main` outboard eye is temporary and falls due on 2026-07-01']);
    expect(judgeText(text, '2026-07-02').filter((f) => f.includes('temporary'))).toEqual(['11:3 warning[temporary-splice-overdue]: `main` outboard eye has been temporary for 31 days, above the 30 days that it may stay']);
  });

  test('a cut in the logbook is measured against the splices of its own day', () => {
    const first = '2026-05-10 cut at 20 m from inboard\n2026-05-10 splice outboard eye size 150 mm bury 72 d taper 24 d stitched';
    const again = (at: string): string => line({ log: `${first}\n2026-06-01 cut at ${at}\n2026-06-01 splice outboard eye size 150 mm bury 72 d taper 24 d stitched` });
    expect(said(again('50 cm from outboard'), 'cut-through-splice')).toHaveLength(1);
    expect(said(again('1.2 m from outboard'), 'cut-through-splice')).toEqual([]);
  });
});

describe('logbook', () => {
  test('a pull is compared with the line as it was before it', () => {
    const pulled = (before: string, after = ''): string[] => said(line({ log: `${before}\n2026-06-10 pulled 55 kN\n${after}`.trim() }), 'line-overloaded');
    expect(pulled('')).toEqual([]);
    expect(pulled('', '2026-06-10 damage abrasion moderate at 8 m from inboard')).toEqual([]);
    expect(pulled('2026-06-10 damage abrasion moderate at 8 m from inboard')).toHaveLength(1);
  });

  test('what was mended before a pull does not count any more', () => {
    const worked = (between: string): string[] => said(line({ log: `2026-06-02 damage pulled 6 strands at 8.4 m from inboard\n${between}\n2026-06-10 pulled 50 kN\n2026-06-11 damage abrasion light at 3 m from inboard` }), 'line-overloaded');
    expect(worked('')).toHaveLength(1);
    expect(worked('2026-06-03 mended pulled at 8.4 m from inboard')).toEqual([]);
  });

  test('a line that lies outdoors is compared with what it held on the day of the pull', () => {
    const text = line({ facts: 'stored outdoors', log: '2026-06-02 pulled 58 kN\n2026-06-28 pulled 58 kN' });
    expect(said(text, 'line-overloaded')).toEqual([]);
    const old = text.replace('2026-05-02  fitted', '2024-05-02  fitted').replace('2026-06-02 pulled', '2024-06-02 pulled');
    expect(said(old, 'line-overloaded')).toHaveLength(1);
  });

  test('a line of which nothing is left by the figure for time outdoors has no strength to compare with', () => {
    const text = line({ facts: 'stored outdoors', log: '2026-06-28 pulled 5 kN' }).replace('2026-05-02  fitted', '2019-05-02  fitted');
    expect(said(text, 'missing-fact', 'line-overloaded')).toEqual([]);
    expect(said(text, 'outdoors-too-long')).toEqual([expect.stringMatching(/^warning\[outdoors-too-long\]: `main` has been outdoors for 2,617 days, /)]);
  });

  test('a pull above the strength is an error', () => {
    expect(said(line({ log: '2026-06-10 pulled 85 kN' }), 'line-overloaded')).toEqual(['error[line-overloaded]: pull of 85 kN is above the 82.8 to 92 kN at which `main` may have broken then']);
  });

  test('a pull below the limit is not judged while an end is unknown, and above it fails all the same', () => {
    expect(said(line({ ends: '', log: '2026-06-10 pulled 31 kN' }), 'missing-fact')).toHaveLength(1);
    expect(said(line({ ends: '', log: '2026-06-10 pulled 70 kN' }), 'line-overloaded')).toHaveLength(1);
  });

  test('without a date of fitting nothing is overdue and nothing is passed', () => {
    const text = line().replace('  2026-05-02  fitted\n', '');
    expect(said(text, 'missing-fact')).toEqual(['information[missing-fact]: when `main` was fitted is not given; 2 checks not judged']);
    expect(said(text, 'inspection-overdue', 'washing-overdue')).toEqual([]);
  });

  test('an interval that the shop wrote is shown as written, and in days', () => {
    const text = `practice {\n  inspection-interval  3 months\n}\n\n${line({ log: '2026-05-03 washed' }).replace('2026-05-02', '2026-02-02')}`;
    expect(said(text, 'inspection-overdue')).toEqual(['warning[inspection-overdue]: `main` was fitted on 2026-02-02, 149 days ago, and not inspected since; the limit is 3 months (89 days)']);
  });

  test('half a year is counted by the calendar', () => {
    const text = (then: string): string => line({ log: `${then} inspected` }).replaceAll('2026-05-02', '2025-06-01');
    const overdue = (then: string, day: string): string[] => judgeText(text(then), day).filter((f) => f.includes('[inspection-overdue]')).map((f) => f.slice(-30));
    expect(overdue('2026-05-27', '2026-11-27')).toEqual([]);
    expect(overdue('2026-05-27', '2026-11-28')).toEqual([expect.stringMatching(/the limit is 184 days$/)]);
    // The last of February stands for days that it lacks.
    expect(overdue('2025-08-31', '2026-02-28')).toEqual([]);
    expect(overdue('2025-08-31', '2026-03-01')).toHaveLength(1);
  });

  test('entries after the day that is judged are counted in one finding', () => {
    expect(said(line({ log: '2026-07-02 inspected\n2026-07-03 washed' }), 'entry-not-yet')).toEqual(['information[entry-not-yet]: 2 entries from 2026-07-02 on are after 2026-07-01, the day that is judged, and not counted']);
  });
});

describe('winch', () => {
  test('a sound winch and line are judged without a word but the factor', () => {
    expect(judgeText(`${winch}\n${line()}`)).toEqual(['18:3 warning[line-factor-too-low]: `bow-winch` can pull 42 kN, above the 27.6 to 30.7 kN that a factor of 3 leaves of `main`']);
  });

  test('a repair is judged with what it leaves on the drum', () => {
    const repair = (at: string): string => `${winch}\n${line()}\nrepair fix on main {\n  cut     at ${at} from inboard\n  splice  outboard eye bury 20 d taper 20 d stitched\n}\n`;
    expect(said(repair('20 m'), 'line-weaker-than-winch')).toEqual([expect.stringMatching(/^error\[line-weaker-than-winch\]: `main` breaks at [\d.]+ to [\d.]+ kN at its outboard end after `fix`, below the 42 kN that `bow-winch` can pull$/)]);
    expect(said(repair('20 m'), 'keep-wraps-lost')).toEqual([]);
    expect(said(repair('2.6 m'), 'keep-wraps-lost')).toEqual([expect.stringMatching(/^error\[keep-wraps-lost\]: `main` is [\d.]+ to [\d.]+ m long after `fix`, below the 2.33 m in the 10 wraps kept on `bow-winch`$/)]);
  });

  test('burnt line at the drum goes out where the repair says so, and the rest is judged as the line of the winch', () => {
    const repaired = (steps: string): string[] => said(`${winch}\n${line({ ends: 'inboard  lug\n  outboard  eye thimble tube bury 72 d taper 24 d', log: '2026-06-21  damage melt at 1.2 m from inboard "brake heat"' })}\nrepair fix on main {\n${steps}}\n\nchain reach after fix {\n  out  24 m\n  main outboard -> larch\n}\n\nanchor larch {\n  kind     tree\n  holding  90 kN "tested"\n}\n`, 'keep-wraps-lost', 'wraps-lost-at-out', 'repair-leaves-damage', 'longer-piece-dropped', 'chain-longer-than-reach', 'bare-end', 'end-not-cut', 'unused-piece');
    expect(repaired('  cut at 1.6 m from inboard drop inboard\n  splice inboard lug\n')).toEqual([]);
    expect(repaired('  cut at 1.6 m from inboard drop inboard\n')).toEqual(['warning[bare-end]: the end of `main` that goes onto the drum is as the cut left it']);
    // Nearer to the drum than the damage: it is still in the line.
    expect(repaired('  cut at 1 m from inboard drop inboard\n  splice inboard lug\n')).toEqual(['error[repair-leaves-damage]: `fix` leaves melted fibre at 0.2 m from inboard on `main`']);
    // 30 m - 27.8 m = 2.2 m, and the kept wraps take 2.33 m.
    expect(repaired('  cut at 27.8 m from inboard drop inboard\n  splice inboard lug\n').join('\n')).toMatch(/error\[keep-wraps-lost\]: `main` is 2\.2 m long after `fix`, below the 2.33 m/);
    expect(repaired('  cut at 1.6 m from inboard\n').map((f) => f.replace(/:.*/s, ''))).toEqual(expect.arrayContaining(['error[keep-wraps-lost]', 'error[repair-leaves-damage]', 'warning[longer-piece-dropped]']));
  });

  test('a drum that cannot be is said once and leaves nothing missing', () => {
    const text = `${winch.replace('185 mm', '40 mm').replace('230 mm', '8 mm')}\n${line()}`;
    expect(judgeText(text).map((f) => f.replace(/:.*/s, '') + f.replace(/^.*\[(.*?)\].*$/s, ' $1'))).toEqual(['4 drum-impossible', '5 drum-impossible', '18 line-factor-too-low']);
  });

  test('the shop may set its own factor, and cannot lower what cites a rating', () => {
    const own = 'practice {\n  line-factor  1.5 "rule 4"\n  severity  line-weaker-than-winch hint\n}\n\n';
    expect(said(`${own}${winch}\n${line()}`, 'line-factor-too-low', 'line-weaker-than-winch')).toEqual([]);
    expect(said(`${own}${winch}\n${line().replace('92 kN', '40 kN')}`, 'line-factor-too-low', 'line-weaker-than-winch')).toEqual(['error[line-weaker-than-winch]: `main` breaks at 36 to 40 kN, below the 42 kN that `bow-winch` can pull']);
  });

  test('fewer wraps than the material asks for are not taken for enough while the material is unknown', () => {
    const text = `${winch.replace('10 wraps', '6 wraps')}\n${line().replace('  material  HMPE\n', '')}`;
    expect(said(text, 'wraps-below-practice')).toEqual([]);
    expect(said(text, 'missing-fact').join()).toMatch(/material of `main` is not given; \d+ checks not judged/);
  });

  test('a line that stands too near the flange is a warning, above it an error', () => {
    const flange = (size: string): string[] => said(`${winch.replace('185 mm', size)}\n${line()}`, 'drum-overfull');
    expect(flange('185 mm')).toEqual([]);
    expect(flange('153 mm')).toEqual(['warning[drum-overfull]: flange of `bow-winch` stands 4.5 mm above `main`, below the 10 mm of practice']);
    expect(flange('140 mm')).toEqual(['error[drum-overfull]: `main` stands 2 mm above the flange of `bow-winch` on layer 4']);
  });
});

// The joint runs from 13.32 m on, so that a cut at 14.3 m leaves 0.98 m of it and one at 14.6 m 1.28 m: no other splice shares more than that with it.
test.each([['14.3 m', '980 mm'], ['14.6 m', '1.28 m']])('of a joint cut through at %s a long new splice covers what is left of it, and no more', (at, left) => {
  const text = `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  inboard lug\n  outboard bare\n  2026-01-01 fitted\n  2026-02-01 cut at 15 m from inboard keep tail\n  2026-02-01 join main to tail bury 72 d taper 24 d\n  2026-06-21 cut at ${at} from inboard\n  2026-06-21 splice outboard eye bury 200 d taper 21 d size 160 mm stitched\n}\n`;
  expect(said(text, 'overlapping-splices')).toEqual([`error[overlapping-splices]: buried tails of the joint in \`main\` and \`main\` outboard eye overlap by ${left}`]);
});
