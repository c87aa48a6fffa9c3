import { describe, expect, test } from 'vitest';
import type { AssessedLine, AssessedPiece } from '../../src-core/assess/assess-line.ts';
import { isUnknown, type Value } from '../../src-core/mechanics/derivation.ts';
import { readDay } from '../../src-core/model/day.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

const eye = 'eye thimble tube bury 72 d taper 24 d size 200 mm';
const text = (log: string, { ends = `outboard ${eye}`, more = 'stored covered', length = 'length 30 m', material = 'HMPE', fitted = '2026-04-02 fitted' } = {}): string => `line main {
  material ${material}
  strands 12
  diameter 10 mm
  ${length}
  breaking 92 kN
  ${ends}
  ${more}
  ${fitted}
  ${log.split('\n').map((entry) => entry.trim()).join('\n  ')}
}
`;
const assessed = (rig: string, on = testDay): AssessedLine => projectOf(rig).judge('test.rig', readDay(on)!).files.get('test.rig')!.blocks[0]!.assessed as AssessedLine;
const piece = (rig: string, name = 'main'): AssessedPiece => assessed(rig).pieces.get(name)!;
/** Low end in kN, or why there is none. */
const low = (value: Value): number | string => (isUnknown(value) ? value.unknown.says : Number((value.amount.low / 1000).toFixed(3)));
const codes = (rig: string): string[] => findingsIn(rig).map((f) => f.code);

describe('what a pull left of a line', () => {
  // A full splice keeps 90 % of 92 kN, 82.8 kN; three quarters of that are 62.1 kN.
  test('is not known above the overload share of what it held then', () => {
    expect(low(piece(text('2026-06-02 pulled 62 kN')).strength)).toBe(82.8);
    const over = piece(text('2026-06-02 pulled 62.2 kN'));
    for (const value of [over.strength, over.body, over.outboard.strength]) expect(low(value)).toBe('what a pull of 62.2 kN left of `main` is not known');
    expect(isUnknown(over.strength) && over.strength.unknown.reported).toBe(true);
  });

  test('is said at the pull alone, also of a second one', () => {
    const log = '2026-06-02 pulled 63 kN\n2026-06-03 pulled 64 kN';
    expect(findingsIn(text(log)).filter((f) => ['line-overloaded', 'missing-fact'].includes(f.code)).map((f) => `${f.line} ${f.code}`)).toEqual(['10 line-overloaded', '11 line-overloaded']);
    expect(low(piece(text(log)).strength)).toBe('what a pull of 63 kN left of `main` is not known');
  });

  test('does not come back with a new eye, and goes with every part of the line', () => {
    const log = `2026-06-02 pulled 70 kN\n2026-06-03 cut at 20 m from inboard keep tail\n2026-06-03 splice outboard ${eye} stitched`;
    expect(low(piece(text(log)).strength)).toContain('70 kN');
    expect(low(piece(text(log), 'tail').body)).toContain('70 kN');
    // What was cut off before the pull was not in it.
    const before = `2026-06-01 cut at 20 m from inboard keep tail\n2026-06-01 splice outboard ${eye} stitched\n2026-06-02 pulled 70 kN`;
    expect(low(piece(text(before), 'tail').body)).toBe(92);
  });

  // A cut strand of 12 left 11/12 of 92 kN, 84.3 kN, and the splice less, so the splice counts; six left 46 kN, of which 34.5 kN.
  test('is compared with the line as it was then, damage and all', () => {
    const log = (load: string): string => `2026-06-01 damage cut 6 strands at 10 m from inboard\n2026-06-02 pulled ${load}\n2026-06-03 cut at 8 m from inboard\n2026-06-03 splice outboard ${eye} stitched`;
    expect(low(piece(text(log('34 kN'))).strength)).toBe(82.8);
    expect(low(piece(text(log('35 kN'))).strength)).toContain('35 kN');
  });

  test('where nobody knew what it held, line without damage is what it is compared with: 69 kN', () => {
    const log = (load: string): string => `2026-06-01 damage melt at 10 m from inboard\n2026-06-02 pulled ${load}\n2026-06-03 cut at 8 m from inboard\n2026-06-03 splice outboard ${eye} stitched`;
    expect(low(piece(text(log('68 kN'))).strength)).toBe(82.8);
    expect(low(piece(text(log('70 kN'))).strength)).toContain('70 kN');
    expect(codes(text(log('70 kN')))).toContain('line-overloaded');
  });

  test('is not asked of the line a repair leaves only', () => {
    const rig = text('2026-06-02 pulled 70 kN') + `\nrepair fix on main {\n  cut at 20 m from inboard\n  splice outboard ${eye} stitched\n}\n`;
    const repair = projectOf(rig).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks[1]!.assessed as unknown as { after: AssessedLine };
    expect(low(repair.after.pieces.get('main')!.strength)).toContain('70 kN');
  });
});

describe('what heat left of a line', () => {
  test.each([
    ['65 degC', 82.8],
    ['66 degC', 'what heat of 66 degC left of `main` is not known'],
    ['66 degC at 5 m from outboard', 'what heat of 66 degC left of `main` is not known'],
  ])('heated to %s', (heat, expected) => expect(low(piece(text(`2026-06-02 heated ${heat}`)).strength)).toBe(expected));

  test('is known of the rest when the place is cut out', () => {
    const cutOut = (at: string): string => text(`2026-06-02 heated 90 degC${at}\n2026-06-03 cut at 20 m from inboard\n2026-06-03 splice outboard ${eye} stitched`);
    expect(low(piece(cutOut(' at 5 m from outboard')).strength)).toBe(82.8);
    expect(codes(cutOut(' at 5 m from outboard'))).not.toContain('line-heated');
    expect(low(piece(cutOut(' at 15 m from outboard')).strength)).toContain('90 degC');
    // Somewhere is everywhere.
    expect(low(piece(cutOut('')).strength)).toContain('90 degC');
  });

  test('is not known of a fibre without a limit', () => {
    expect(low(piece(text('2026-06-02 heated 40 degC', { material: 'polyester' })).strength)).toBe('no heat limit for polyester was found');
  });
});

describe('time outdoors', () => {
  const outdoors = (fitted: string): AssessedPiece => piece(text('', { fitted, more: 'stored outdoors' }));
  // 721 days from 2024-07-10 to 2026-07-01 of the 730.5 over which 30 % is lost: 92 kN (1 - 0.3 * 721 / 730.5) = 64.76 kN.
  test('counts from the earliest fitting, in whatever order they stand', () => {
    for (const fitted of ['2026-04-02 fitted\n  2024-07-10 fitted', '2024-07-10 fitted\n  2026-04-02 fitted']) expect(low(outdoors(fitted).line.base)).toBeCloseTo(64.76, 2);
  });
  test('is not known where the only fitting is still to come', () => {
    expect(low(outdoors('2027-04-02 fitted').strength)).toBe('how long `main` has been outdoors is not given');
  });
});

describe('damage near each other', () => {
  // 28.24 and 28.9 m are 0.66 m apart on the line as it lies, within the 72 d of 10 mm; the rope below is longer, for it has shrunk there.
  test('is measured on the line as it lies, over a buried tail too', () => {
    const log = '2026-06-03 damage cut 1 strand at 28.24 m from inboard\n2026-06-03 damage cut 1 strand at 28.90 m from inboard';
    const made = piece(text(`2026-06-02 splice outboard ${eye} stitched\n${log}`, { ends: 'outboard bare' }));
    expect(made.damages.map((d) => d.strands)).toEqual([2, 2]);
    expect(piece(text(log)).damages.map((d) => d.strands)).toEqual([2, 2]);
    expect(piece(text(log.replace('28.24', '28.1'))).damages.map((d) => d.strands)).toEqual([1, 1]);
  });

  // A joint of 72 d leaves 0.226 m unknown, 2 * 0.72 * (0.333 - 0.176): 12 m from outboard are 16.08 to 16.306 m from inboard.
  test('may be at the same place where one is inboard of the other by one way, and outboard of it by the other', () => {
    const log = (at: string): string => `2026-06-01 cut at 10 m from inboard keep tail\n2026-06-01 join main to tail bury 72 d taper 24 d stitched\n2026-06-02 damage cut 1 strand at ${at} from inboard\n2026-06-02 damage cut 1 strand at 12 m from outboard`;
    const strands = (at: string): number[] => piece(`${text(log(at))}\npractice {\n  near  24 d "as the shop counts it"\n}\n`).damages.map((d) => d.strands);
    expect(strands('16.2 m')).toEqual([2, 2]);
    expect(strands('15.85 m')).toEqual([2, 2]);
    expect(strands('15.8 m')).toEqual([1, 1]);
    expect(strands('16.6 m')).toEqual([1, 1]);
  });
});

describe('damage in a splice', () => {
  // 92 kN, less 1/12 and 20 % in one place, 65.93 kN; a full splice keeps 90 % of that, 59.34 kN.
  test('takes its share of what the splice keeps', () => {
    const made = piece(text(`2026-06-01 damage cut 1 strand at 29.5 m from inboard\n2026-06-01 damage abrasion 20 % at 28.5 m from inboard\n2026-06-02 splice outboard ${eye} stitched`, { ends: 'outboard bare' }));
    expect(low(made.body)).toBe(65.933);
    expect(low(made.outboard.strength)).toBe(59.34);
    expect(low(made.strength)).toBe(59.34);
  });

  // The supplied splice begins 0.82 m from the end: 11/12 of 92 kN is 84.33 kN, and 90 % of that 75.9 kN.
  test.each([['0.5 m', 75.9], ['0.81 m', 75.9], ['0.82 m', 75.9], ['0.83 m', 82.8], ['2 m', 82.8]])('found %s from the end it came with', (at, expected) => {
    expect(low(piece(text(`2026-06-01 damage cut 1 strand at ${at} from outboard`)).strength)).toBe(expected);
  });

  test('counts in a joint', () => {
    const log = '2026-06-01 cut at 15 m from inboard keep tail\n2026-06-01 join main to tail bury 72 d taper 24 d stitched\n2026-06-02 damage cut 1 strand at 14.2 m from inboard';
    expect(low(piece(text(log)).body)).toBe(75.9);
  });

  // A tail of 0.72 m lies under 0.72 / 0.85 = 0.847 to 0.72 / 0.75 = 0.96 m of line, so the joint begins 15 - 0.72 - 0.847 = 13.433 to
  // 13.32 m from either end and runs on for 1.44 m, and the line is 28.306 to 28.08 m long. 14.95 m from the one end is 13.13 to
  // 13.356 m from the other, which may lie in it; 15 m is 13.08 to 13.306 m, which does not. 13.21 m is 14.87 m or more, within the
  // 14.873 m to which the joint may run; 13.2 m is 14.88 m or more.
  test.each([['13.2 m', 82.8], ['13.21 m', 75.9], ['13.32 m', 75.9], ['14.87 m', 75.9], ['14.95 m', 75.9], ['15 m', 82.8]])('at an edge of a joint, seen from either end, before and after the line was turned: %s', (at, expected) => {
    const joined = '2026-06-01 cut at 15 m from inboard keep tail\n2026-06-01 join main to tail bury 72 d taper 24 d stitched';
    for (const end of ['inboard', 'outboard']) for (const after of ['', '\n2026-06-03 reversed', '\n2026-06-03 reversed\n2026-06-04 reversed']) {
      expect(low(piece(text(`${joined}\n2026-06-02 damage cut 1 strand at ${at} from ${end}${after}`)).body)).toBe(expected);
    }
  });

  test('may lie there when nobody knows where it lies, or where the splice does', () => {
    expect(low(piece(text('2026-06-01 damage cut 1 strand at 2 m from inboard', { length: '' })).strength)).toBe(75.9);
  });
});

describe('a splice that is cut through', () => {
  const joined = '2026-06-01 cut at 15 m from inboard keep tail\n2026-06-01 join main to tail bury 72 d taper 24 d stitched';
  test('holds nobody knows what', () => {
    const left = piece(text(`${joined}\n2026-06-03 cut at 14.4 m from inboard`));
    expect(low(left.body)).toBe('what a cut through the splice of the joint in `main` left of it is not known');
    expect(codes(text(`${joined}\n2026-06-03 cut at 14.4 m from inboard`))).toContain('cut-through-splice');
    expect(low(piece(text(`${joined}\n2026-06-03 cut at 16 m from inboard`)).body)).toBe(82.8);
  });
  test('also at the end of the piece that is kept', () => {
    expect(low(piece(text('2026-06-03 cut at 50 cm from outboard keep tail'), 'tail').outboard.strength)).toBe('what a cut through the splice of the outboard end of `tail` left of it is not known');
  });
});

describe('a joint of a line whose length is not known', () => {
  test('still counts, and is still judged', () => {
    const log = '2026-06-01 cut at 15 m from inboard keep tail\n2026-06-03 join main to tail bury 20 d taper 10 d stitched\n2026-06-04 cut at 2 m from outboard\n2026-06-04 splice outboard eye thimble tube taper 24 d\n2026-06-05 reversed';
    // 20 of 72 d, with 10 of 21 d of taper: 92 kN * 0.9 * 20/72 * (1 - 0.087 * 11/21) = 21.95 kN.
    expect(low(piece(text(log)).joints[0]!.strength)).toBeCloseTo(21.95, 2);
    expect(codes(text(log))).toContain('bury-too-short');
  });
});

describe('a knot with damage in it', () => {
  const made = (log: string, length = 'length 30 m'): string => text(log, { length, ends: 'outboard knot' });
  // A knot keeps 0.2 of 92 kN at least; 1 of 12 strands and 20 % of the volume leave 0.71667 of that.
  test('keeps what the damage leaves of it', () => {
    expect(low(piece(made('')).outboard.strength)).toBe(18.4);
    expect(low(piece(made('2026-06-01 damage cut 1 strand at 2 cm from outboard\n2026-06-01 damage abrasion 20 % at 5 cm from outboard')).outboard.strength)).toBeCloseTo(13.187, 3);
  });
  test('and all of it where the damage is far from it', () => {
    expect(low(piece(made('2026-06-01 damage cut 1 strand at 2 m from outboard')).outboard.strength)).toBe(18.4);
    expect(low(piece(made('2026-06-01 damage cut 1 strand at 2 m from inboard', '')).outboard.strength)).toBeCloseTo(16.867, 3);
  });
});

describe('a joint beside an eye', () => {
  // 1.8 m are cut off and joined on again. Each tail of 0.72 m lies in line of its own length, of the joint on both sides: too much for 1.8 m.
  const close = '2026-06-01 cut at 1.8 m from outboard keep tail\n2026-06-03 join main to tail bury 72 d taper 24 d stitched';
  const made = (log: string, length: string): string => text(log, { length, more: 'inboard lug', ends: 'outboard eye thimble tube bury 72 d taper 24 d size 160 mm stitched' });
  test('that overlaps it leaves nobody knows what', () => {
    expect(low(piece(made(close, 'length 30 m')).body)).toBe('what overlapping splices leave of `main` is not known');
  });
  test('is not taken for apart from it where the length of the line is not known', () => {
    const left = piece(made(close, ''));
    expect(low(left.body)).toBe(82.8);
    expect(left.incomplete?.says).toBe('length of `main` is not given');
    const winch = '\nwinch bow-winch {\n  rated 5 kN\n  carries main\n}\n';
    const overdue = projectOf(made(close, '') + winch).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.flatMap((b) => b.notJudged);
    expect(overdue.filter((n) => n.rule === 'line-factor-too-low').map((n) => n.cause.says)).toEqual(['length of `main` is not given']);
  });
  test('two eyes have the line between them', () => {
    expect(piece(text('', { length: '', ends: 'inboard eye bury 72 d taper 24 d stitched\noutboard eye bury 72 d taper 24 d stitched' })).incomplete).toBeUndefined();
  });
});

describe('a cut beside a joint that lies nobody knows where', () => {
  const joined = '2026-06-01 cut at 5 m from outboard keep tail\n2026-06-03 join main to tail bury 20 d taper 10 d stitched';
  const cut = `${joined}\n2026-06-04 cut at 8 m from inboard keep rest`;
  const made = (log: string, length = ''): string => text(log, { length, more: 'inboard lug' });
  const notJudged = (rig: string): string[] => projectOf(rig).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.flatMap((b) => b.notJudged).map((n) => n.cause.says);
  // 92 kN * 0.9 * 20/72 * (1 - 0.087 * 11/21) = 21.95 kN, as in the joint above.
  test('leaves no piece stronger than the joint, and what holds with it not judged', () => {
    for (const name of ['main', 'rest']) {
      const left = piece(made(cut), name);
      expect(low(left.body)).toBeCloseTo(21.95, 2);
      expect(left.incomplete?.says).toBe('on which side of the cut of 2026-06-04 the joint in `main` lies is not known');
    }
    const winch = '\nwinch bow-winch {\n  rated 5 kN\n  carries main\n}\n';
    expect(notJudged(made(cut) + winch)).toContain('on which side of the cut of 2026-06-04 the joint in `main` lies is not known');
    expect(notJudged(made(cut, 'length 30 m') + winch)).not.toContain('on which side of the cut of 2026-06-04 the joint in `main` lies is not known');
  });
  test('is said of either piece as what may be', () => {
    expect(findingsIn(made(cut)).filter((f) => f.code === 'bury-too-short').map((f) => f.message)).toEqual(['main', 'rest'].map((name) => `bury of the joint that may be in \`${name}\` is 20 d, below the 72 d for HMPE hollow braid`));
    expect(findingsIn(made(cut, 'length 30 m')).filter((f) => f.code === 'bury-too-short').map((f) => f.message)).toEqual(['bury of the joint in `rest` is 20 d, below the 72 d for HMPE hollow braid']);
  });
});

describe('a cut that goes through a splice by one of the two ways it may have come out', () => {
  const joined = '2026-06-01 cut at 15 m from inboard keep tail\n2026-06-01 join main to tail bury 72 d taper 24 d stitched\n';
  const lost = 'what a cut through the splice of the joint in `tail` left of it is not known';
  // The joint begins 13.433 to 13.32 m from inboard, and ends 1.44 m farther on.
  test.each([['13.3 m', 82.8], ['13.4 m', lost], ['13.5 m', lost]])('leaves nobody knows what, as one right through it does: %s', (at, expected) => {
    expect(low(piece(text(`${joined}2026-06-03 cut at ${at} from inboard keep tail`), 'tail').body)).toBe(expected);
  });
  test.each([['14.7 m', 'main'], ['14.8 m', 'main'], ['14.9 m', undefined]])('and at its other edge: %s', (at, where) => {
    const left = piece(text(`${joined}2026-06-03 cut at ${at} from inboard keep tail`));
    expect(low(left.body)).toBe(where === undefined ? 82.8 : lost.replace('tail', where));
  });
  // The eye has 12 to 40 d around it, so that its tail ends 60 to 200 mm and 720 mm from the bearing point.
  test.each([['0.77 m', 'what a cut through the splice of the outboard end of `rest` left of it is not known'], ['0.85 m', 'what a cut through the splice of the outboard end of `rest` left of it is not known'], ['0.93 m', 82.8]])('of an eye whose size is not written, %s from its end', (at, expected) => {
    expect(low(piece(text(`2026-06-03 cut at ${at} from outboard keep rest`, { ends: 'outboard eye thimble tube bury 72 d taper 24 d stitched' }), 'rest').outboard.strength)).toBe(expected);
  });
  // A splice of 5 d is 0.1 m long. The one of 72 d inboard of it takes 0.72 m twice and shortens two covers by 0.127 to 0.24 m each: the
  // short one runs from 18.197 to 18.297 m or from 17.963 to 18.063 m from inboard.
  test('or between the two, which leaves it in doubt', () => {
    const short = '2026-06-01 cut at 20 m from inboard keep tail\n2026-06-01 join main to tail bury 5 d taper 2 d stitched\n2026-06-02 cut at 8 m from inboard keep rest\n2026-06-02 join main to rest bury 72 d taper 24 d stitched\n';
    const left = (at: string, name: string) => {
      const { joints, incomplete } = piece(text(`${short}2026-06-03 cut at ${at} from inboard keep end`), name);
      return [joints.map((j) => [low(j.strength), j.isInDoubt]), incomplete?.says];
    };
    // 92 kN * 0.9 * 5/72 * (1 - 0.087 * 19/21) = 5.297 kN of the short one, 82.8 kN of the other.
    const [one, other] = [[5.297, false], [82.8, false]];
    const through = (name: string) => `what a cut through the splice of the joint in \`${name}\` left of it is not known`;
    expect(left('17.9 m', 'end')).toEqual([[one], undefined]);
    expect(left('18 m', 'end')[0]).toEqual([[through('end'), false]]);
    expect(left('18.13 m', 'end')).toEqual([[[5.297, true]], 'whether the joint in `end` lies in it is not known']);
    expect(left('18.13 m', 'main')).toEqual([[other, [5.297, true]], 'whether the joint in `main` lies in it is not known']);
    expect(left('18.25 m', 'main')[0]).toEqual([other, [through('main'), false]]);
    expect(left('18.4 m', 'main')).toEqual([[other, one], undefined]);
  });
});

test('an inboard splice that cannot be made holds nobody knows what', () => {
  const log = `2026-06-01 cut at 1.5 m from inboard\n2026-06-01 splice inboard ${eye} stitched`;
  expect(low(piece(text(log)).inboard.strength)).toBe('`main` is too short for its splice');
});
