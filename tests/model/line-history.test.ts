import { describe, expect, test } from 'vitest';
import { bindChunk } from '../../src-core/model/bind-chunk.ts';
import type { BoundBlock } from '../../src-core/model/bound.ts';
import { readDay } from '../../src-core/model/day.ts';
import { replayLogbook, replayRepair } from '../../src-core/model/line-history.ts';
import { finishedAt, finishedLength, type LineState, type Scenario } from '../../src-core/model/line-state.ts';
import { splitChunks } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';

// 25 % is Toss, The Complete Rigger's Apprentice, p. 104: the exit hole lies 1 1/3 tail lengths from the entry.
const toss: Scenario = { contraction: 0.25, eyeLoop_d: 20 };
const day = (text: string): number => readDay(text)!;
const blocks = (text: string): BoundBlock[] => splitChunks(text, topHeads).flatMap((c) => bindChunk(c.chunk).blocks);

const line = (entries: string, facts = ''): string => `line main {
  diameter  10 mm
  length    30 m
  inboard   lug
  outboard  eye bury 72 d
  ${facts}
${entries}
}
`;
const replay = (entries: string, until = '2027-01-01', scenario = toss): LineState => replayLogbook(blocks(line(entries))[0]!, day(until), scenario);
const lengths = (state: LineState): Record<string, number | undefined> => Object.fromEntries([...state.pieces].map(([n, p]) => [n, finishedLength(p) === undefined ? undefined : Number(finishedLength(p)!.toFixed(6))]));
const marks = (state: LineState, piece: string): (readonly [number, number])[] => {
  const p = state.pieces.get(piece)!;
  return p.marks.map((m) => [Number(finishedAt(p, m.from!).toFixed(6)), Number(finishedAt(p, m.to!).toFixed(6))] as const);
};

describe('cuts', () => {
  test('where the inboard side goes, the rest keeps the name', () => {
    const cut = (more: string): LineState => replay(`  2026-05-01 damage cut 1 strand at 20 m from inboard\n  2026-06-01 reversed\n  2026-06-01 cut at 1 m from inboard ${more}`);
    expect(lengths(cut(''))).toEqual({ main: 1 });
    const done = cut('drop inboard');
    expect([lengths(done), marks(done, 'main'), done.pieces.get('main')!.inboard.form, done.pieces.get('main')!.outboard.form]).toEqual([{ main: 29 }, [[9, 9]], 'bare', 'lug']);
    // The same as the cut that was made before the line was turned.
    expect(lengths(done)).toEqual(lengths(replay('  2026-06-01 cut at 1 m from outboard\n  2026-06-01 reversed')));
  });

  test('what is not kept is dropped; what is kept starts at its own inboard end', () => {
    expect(lengths(replay('  2026-06-01 cut at 12 m from inboard'))).toEqual({ main: 12 });
    expect(lengths(replay('  2026-06-01 cut at 12 m from outboard keep tail'))).toEqual({ main: 18, tail: 12 });
  });

  test('damage goes with its piece, a stretch across the cut with both', () => {
    const state = replay(`  2026-05-01 damage abrasion light from 10 m to 14 m from inboard
  2026-05-01 damage cut 1 strand at 20 m from inboard
  2026-06-01 cut at 12 m from inboard keep tail`);
    expect(marks(state, 'main')).toEqual([[10, 12]]);
    expect(marks(state, 'tail')).toEqual([[0, 2], [8, 8]]);
  });

  test('an entry later than the day asked for has not happened', () => {
    expect(lengths(replay('  2026-06-02 cut at 12 m from inboard', '2026-06-01'))).toEqual({ main: 30 });
  });

  test('entries count by date, not by line', () => {
    expect(lengths(replay('  2026-06-03 cut at 10 m from inboard\n  2026-06-01 cut at 20 m from inboard'))).toEqual({ main: 10 });
  });

  test('a cut beyond the end is a problem, and how long the line is from then on nobody can say', () => {
    const state = replay('  2026-06-01 cut at 31 m from inboard');
    expect(state.problems.map((p) => [p.code, p.message])).toEqual([['position-beyond-end', 'this position lies 1 m beyond the end of `main`, which is 30 m long here']]);
    expect(lengths(state)).toEqual({ main: undefined });
    expect(state.pieces.get('main')!.incomplete?.says).toBe('a logbook entry does not fit the line');
  });
});

// 30 - 1.6 = 28.4: what lay at x from inboard lies at x - 1.6.
describe('a cut that drops the end at the drum', () => {
  const burnt = '  2026-06-01 damage melt at 1.2 m from inboard\n  2026-06-01 damage cut 1 strand at 20 m from inboard\n';
  const forms = (state: LineState): string[] => [state.pieces.get('main')!.inboard.form, state.pieces.get('main')!.outboard.form];
  const planned = (steps: string, entries = burnt): LineState => {
    const [main, repair] = blocks(`${line(entries)}\nrepair fix on main {\n${steps}\n}\n`);
    return replayRepair(main!, replayLogbook(main!, day('2026-06-30'), toss), repair!, toss);
  };

  test.each(['1.6 m from inboard', '28.4 m from outboard'])('at %s, written in the logbook or planned', (at) => {
    for (const state of [replay(`${burnt}  2026-06-02 cut at ${at} drop inboard`), planned(`  cut at ${at} drop inboard`)]) {
      expect(lengths(state)).toEqual({ main: 28.4 });
      expect(marks(state, 'main')).toEqual([[18.4, 18.4]]);
      expect(forms(state)).toEqual(['bare', 'eye']);
    }
  });
  test('its new end is made without a word about the old one, and a second entry counts from there', () => {
    const state = replay(`${burnt}  2026-06-02 cut at 1.6 m from inboard drop inboard\n  2026-06-02 splice inboard lug\n  2026-06-03 damage cut 1 strand at 1 m from inboard\n  2026-06-04 cut at 0.4 m from inboard drop inboard`);
    expect([lengths(state), marks(state, 'main'), codes(state)]).toEqual([{ main: 28 }, [[18, 18], [0.6, 0.6]], []]);
    // An eye takes 0.72 m of tail, 0.24 m of shortening and half of 0.2 m around it.
    expect(lengths(replay('  2026-06-02 cut at 1.6 m from inboard drop inboard\n  2026-06-02 splice inboard eye bury 72 d size 200 mm'))).toEqual({ main: 27.34 });
  });
  test('beside a cut farther out, in whatever order they are planned', () => {
    const steps = ['  cut at 1.6 m from inboard drop inboard', '  cut at 12 m from inboard keep rest', '  splice inboard lug'];
    for (const state of [planned(steps.join('\n')), planned(steps.toReversed().join('\n'))]) {
      expect([lengths(state), marks(state, 'rest'), codes(state)]).toEqual([{ main: 10.4, rest: 18 }, [[8, 8]], []]);
      expect(forms(state)).toEqual(['lug', 'bare']);
    }
  });
  test('of a piece that has a name of its own, and of a line whose length is not known', () => {
    expect(lengths(replay('  2026-06-01 cut at 12 m from inboard keep rest\n  2026-06-02 cut at 3 m from inboard of rest drop inboard'))).toEqual({ main: 12, rest: 15 });
    expect(lengths(withoutLength('  2026-06-02 cut at 8 m from outboard drop inboard'))).toEqual({ main: 8 });
    const state = withoutLength(`${burnt}  2026-06-02 cut at 1.6 m from inboard drop inboard`);
    expect([lengths(state), state.pieces.get('main')!.marks.map((m) => m.from)]).toEqual([{ main: undefined }, [18.4]]);
  });
  test('a line whose length is not known is planned from its outer end alike', () => {
    const [main, repair] = blocks(`${line('').replace(/^ *length.*\n/m, '')}\nrepair fix on main {\n  cut at 8 m from outboard drop inboard\n  cut at 3 m from outboard keep tail\n}\n`);
    expect(lengths(replayRepair(main!, replayLogbook(main!, day('2026-06-30'), toss), repair!, toss))).toEqual({ main: 5, tail: 3 });
  });
  test('another cut in what is dropped is said, and what is left is in doubt', () => {
    const state = planned('  cut at 1 m from inboard keep stub\n  cut at 1.6 m from inboard drop inboard');
    expect(state.problems.map((p) => [p.code, p.message])).toEqual([['cut-twice', 'this cut is in line that another cut of this repair drops']]);
    expect(doubted(state)).toEqual(['main']);
  });
  test('a name of its own for the part that keeps the name of the line leaves both in doubt', () => {
    expect(doubted(replay('  2026-06-02 cut at 1.6 m from inboard keep rest drop inboard'))).toEqual(['main', 'rest']);
  });
  test.each([0.3, 1.2, 1.6, 14.2, 14.9, 20, 27.6])('at %d m it leaves what the turned line is left with by a cut from its outer end', (at) => {
    const before = `${burnt}  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-01 join main to tail bury 72 d\n`;
    const laidOut = (state: LineState): unknown => {
      const main = state.pieces.get('main')!;
      const near = (s: number | undefined): number | undefined => (s === undefined ? undefined : Number(s.toFixed(6)));
      const ends = [main.inboard, main.outboard].map(({ form, cutThrough }) => [form, cutThrough?.seen]);
      return [lengths(state), marks(state, 'main'), ends, main.joints.map((j) => [near(j.at), j.end.cutThrough?.seen]), main.buried.map((b) => [near(b.from), near(b.to)])];
    };
    const turned = replay(`${before}  2026-06-02 reversed\n  2026-06-02 cut at ${at} m from outboard\n  2026-06-02 reversed`);
    expect(laidOut(replay(`${before}  2026-06-02 cut at ${at} m from inboard drop inboard`))).toEqual(laidOut(turned));
  });
  test('names that were free before are free still', () => {
    expect(lengths(replay('  2026-06-01 cut at 12 m from inboard keep drop\n  2026-06-02 cut at 3 m from inboard of drop'))).toEqual({ main: 12, drop: 3 });
  });
});

describe('splices', () => {
  // Worked by hand from the 1 1/3 rule: a tail of 720 mm needs 960 mm of standing part, so 240 mm are lost to shortening;
  // half of the 200 mm around the eye lies behind the bearing point. 12 - 0.72 - 0.24 - 0.1 = 10.94.
  const cutAndSplice = '  2026-06-01 cut at 12 m from inboard\n  2026-06-01 splice outboard eye bury 72 d size 200 mm';

  test('an eye uses its tail, half its loop and the shortening', () => {
    expect(lengths(replay(cutAndSplice))).toEqual({ main: 10.94 });
  });

  test('the same at the inboard end', () => {
    expect(lengths(replay('  2026-06-01 cut at 18 m from inboard keep tail\n  2026-06-01 splice tail inboard eye bury 72 d size 200 mm'))).toEqual({ main: 18, tail: 10.94 });
  });

  test('an eye whose size is not written takes the scenario\'s', () => {
    expect(lengths(replay('  2026-06-01 cut at 12 m from inboard\n  2026-06-01 splice outboard eye bury 72 d'))).toEqual({ main: 10.94 });
  });

  test('without a bury the length is lost, and says why', () => {
    const state = replay('  2026-06-01 cut at 12 m from inboard\n  2026-06-01 splice outboard eye size 200 mm');
    expect(lengths(state)).toEqual({ main: undefined });
    expect(state.pieces.get('main')!.lost!.says).toBe('the bury of this splice is not given, so the rope that it takes is not known');
  });

  test('a piece too short for its splice is a problem', () => {
    const state = replay('  2026-06-01 cut at 1.5 m from inboard\n  2026-06-01 splice outboard eye bury 72 d size 200 mm');
    expect(state.problems.map((p) => p.code)).toEqual(['splice-longer-than-piece']);
  });

  test('damage measured after a splice is found again on the fibre', () => {
    // Throat at 10.84, standing part over the tail from 10.84 - 0.72 finished; 5 m is plain line.
    const state = replay(`${cutAndSplice}\n  2026-06-02 damage cut 1 strand at 5 m from inboard\n  2026-06-02 damage cut 1 strand at 1 m from outboard\n  2026-06-03 cut at 10.5 m from inboard`);
    expect(marks(state, 'main')).toEqual([[5, 5], [9.94, 9.94]]);
  });

  test('damage near an end that becomes tail or eye stays with the splice', () => {
    const state = replay('  2026-05-01 damage cut 1 strand at 11.9 m from inboard\n  2026-06-01 cut at 12 m from inboard\n  2026-06-01 splice outboard eye bury 72 d size 200 mm');
    const [[from, to]] = marks(state, 'main') as [readonly [number, number]];
    expect(from).toBe(to);
    expect(from).toBeGreaterThan(10.94 - 0.72 - 0.2);
    expect(from).toBeLessThan(10.94);
  });
});

describe('end for end', () => {
  test('turns stations and ends', () => {
    const state = replay('  2026-05-01 damage cut 1 strand at 8 m from inboard\n  2026-06-01 reversed');
    expect(marks(state, 'main')).toEqual([[22, 22]]);
    expect(state.pieces.get('main')!.inboard.form).toBe('eye');
    expect(state.pieces.get('main')!.outboard.form).toBe('lug');
  });

  test('twice is as before', () => {
    const once = replay('  2026-05-01 damage abrasion light from 7 m to 8 m from inboard\n  2026-05-02 cut at 20 m from inboard\n  2026-05-02 splice outboard eye bury 72 d size 200 mm');
    const twice = replay('  2026-05-01 damage abrasion light from 7 m to 8 m from inboard\n  2026-05-02 cut at 20 m from inboard\n  2026-05-02 splice outboard eye bury 72 d size 200 mm\n  2026-06-01 reversed\n  2026-06-01 reversed');
    expect(marks(twice, 'main')).toEqual(marks(once, 'main'));
    expect(lengths(twice)).toEqual(lengths(once));
  });
});

describe('joins', () => {
  test('two pieces become one, each burying a tail in the other', () => {
    // 12 + 18 less two tails of 720 mm and two shortenings of 240 mm.
    const state = replay('  2026-06-01 cut at 12 m from inboard keep tail\n  2026-06-01 join main to tail bury 72 d');
    expect(lengths(state)).toEqual({ main: 28.08 });
  });
});

describe('repairs', () => {
  const plan = (steps: string): LineState => {
    const [main, repair] = blocks(line('  2026-05-01 damage cut 2 strands at 8.4 m from inboard') + `\nrepair fix on main {\n${steps}\n}\n`);
    return replayRepair(main!, replayLogbook(main!, day('2026-06-01'), toss), repair!, toss);
  };
  const steps = ['  cut at 7.6 m from inboard', '  splice outboard eye bury 72 d size 200 mm', '  cut at 9.4 m from inboard keep tail', '  splice tail inboard eye bury 72 d size 200 mm'];

  test('positions are of the line before, so the order changes nothing', () => {
    const one = plan(steps.join('\n'));
    const other = plan([steps[2], steps[0], steps[3], steps[1]].join('\n'));
    expect(lengths(one)).toEqual({ main: 6.54, tail: 19.54 });
    expect(lengths(other)).toEqual(lengths(one));
    expect(marks(one, 'main')).toEqual([]);
    expect(marks(one, 'tail')).toEqual([]);
  });

  test('two cuts at one place are one too many', () => {
    expect(plan('  cut at 7 m from inboard\n  cut at 23 m from outboard').problems.map((p) => p.code)).toEqual(['cut-twice']);
  });
});

test('a replay in two halves is the replay in one', () => {
  const entries = `  2026-01-01 damage abrasion light from 7 m to 8 m from inboard
  2026-02-01 cut at 26 m from inboard keep off
  2026-02-01 splice outboard eye bury 72 d size 200 mm
  2026-03-01 damage cut 1 strand at 2 m from outboard
  2026-04-01 reversed
  2026-05-01 cut at 20 m from inboard
  2026-05-01 splice outboard eye bury 72 d taper 24 d`;
  const [main] = blocks(line(entries));
  const whole = replayLogbook(main!, day('2027-01-01'), toss);
  for (const middle of ['2025-12-31', '2026-01-15', '2026-02-01', '2026-03-15', '2026-04-15', '2026-06-01']) {
    const first = replayLogbook(main!, day(middle), toss);
    expect(replayLogbook(main!, day('2027-01-01'), toss, { state: first, day: day(middle) }).pieces, middle).toEqual(whole.pieces);
  }
});

describe('mended', () => {
  const pulled = '  2026-05-01 damage pulled 1 strand at 12 m from inboard';
  test('a pulled strand that is worked back in is gone', () => {
    expect(marks(replay(`${pulled}\n  2026-05-02 mended pulled at 12.05 m from inboard`), 'main')).toEqual([]);
  });
  test('another place is not', () => {
    const state = replay(`${pulled}\n  2026-05-02 mended pulled at 13 m from inboard`);
    expect(marks(state, 'main')).toEqual([[12, 12]]);
    expect(state.problems.map((p) => p.code)).toEqual(['mended-nothing']);
  });
  test('cut strands cannot be mended', () => {
    expect(marks(replay('  2026-05-01 damage cut 1 strand at 12 m from inboard\n  2026-05-02 mended pulled at 12 m from inboard'), 'main')).toEqual([[12, 12]]);
  });
});

test('a line of unknown length is no longer than it was', () => {
  const state = replay('  2026-06-01 splice outboard eye size 200 mm\n  2026-06-02 cut at 100 m from inboard');
  expect(state.problems.map((p) => p.code)).toContain('position-beyond-end');
  expect(lengths(state)).toEqual({ main: undefined });
});

const codes = (state: LineState): string[] => state.problems.map((p) => p.code);
const withoutLength = (entries: string): LineState => replayLogbook(blocks(line(entries).replace(/^ *length.*\n/m, ''))[0]!, day('2027-01-01'), toss);
const doubted = (state: LineState): string[] => [...state.pieces.values()].filter((p) => p.incomplete !== undefined).map((p) => p.name);

describe('what is retired', () => {
  const retired = '  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-02 retired tail';
  test('stays so when it is joined on', () => {
    const state = replay(`${retired}\n  2026-06-03 join main to tail bury 72 d`);
    expect(codes(state)).toEqual(['entry-after-retired']);
    expect(state.problems[0]!.message).toBe('`tail` was retired on 2026-06-02; this entry is later');
    expect(state.pieces.get('main')!.retired?.day).toBe(day('2026-06-02'));
  });

  test('also in a repair', () => {
    const [main, repair] = blocks(line(retired) + '\nrepair fix on main {\n  join main to tail bury 72 d\n}\n');
    const state = replayRepair(main!, replayLogbook(main!, day('2026-06-30'), toss), repair!, toss);
    expect(state.problems.map((p) => p.message)).toEqual(['`tail` was retired on 2026-06-02; a repair does not bring it back']);
    expect(state.pieces.get('main')!.retired?.day).toBe(day('2026-06-02'));
  });
});

test('doubt about one piece is doubt about the piece it is joined into', () => {
  const state = replay('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-02 damage cut 1 strand at 20 m from inboard of tail\n  2026-06-03 join main to tail bury 72 d');
  expect(codes(state)).toEqual(['position-beyond-end']);
  expect(doubted(state)).toEqual(['main']);
});

describe('a line whose length is not known', () => {
  test('keeps its joints and its damage when it is turned', () => {
    const state = replay('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-03 join main to tail bury 20 d\n  2026-06-04 damage cut 1 strand at 3 m from inboard\n  2026-06-05 cut at 25 m from inboard\n  2026-06-05 splice outboard eye size 200 mm\n  2026-06-06 reversed');
    const main = state.pieces.get('main')!;
    expect(main.joints.map((j) => [j.at, j.end.bury?.value])).toEqual([[undefined, 20]]);
    expect(main.marks.map((m) => m.from)).toEqual([undefined]);
  });

  test('joined to another has the joint, wherever it lies', () => {
    const state = withoutLength('  2026-06-01 cut at 5 m from outboard keep tail\n  2026-06-03 join main to tail bury 20 d');
    expect(state.pieces.get('main')!.joints.map((j) => j.at)).toEqual([undefined]);
    // Cut from the inboard end, the inner piece has its length: the joint's throat is at 15 - 0.2 m.
    expect(withoutLength('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-03 join main to tail bury 20 d').pieces.get('main')!.joints.map((j) => j.at)).toEqual([14.8]);
  });

  // The joint lies less than 5 m from the outboard end, and how long the line is nobody wrote.
  describe('is cut while its joint lies nobody knows where', () => {
    const joined = '  2026-06-01 cut at 5 m from outboard keep tail\n  2026-06-03 join main to tail bury 20 d\n';
    const inDoubt = (state: LineState): unknown => Object.fromEntries([...state.pieces].map(([name, { joints }]) => [name, joints.map((j) => [j.at, j.doubt?.says])]));
    const says = 'on which side of the cut of 2026-06-04 the joint in `main` lies is not known';
    test.each(['8 m from inboard', '8 m from outboard'])('at %s: either piece may have it', (at) => {
      expect(inDoubt(withoutLength(`${joined}  2026-06-04 cut at ${at} keep rest`))).toEqual({ main: [[undefined, says]], rest: [[undefined, says]] });
    });
    test('cut again, it is the first cut that left the doubt', () => {
      const state = withoutLength(`${joined}  2026-06-04 cut at 8 m from inboard keep rest\n  2026-06-05 cut at 3 m from inboard keep more`);
      expect(inDoubt(state)).toEqual(Object.fromEntries(['main', 'rest', 'more'].map((name) => [name, [[undefined, says]]])));
    });
    test('and joined again it has the joint once, which the cut may have gone through', () => {
      expect(inDoubt(withoutLength(`${joined}  2026-06-04 cut at 8 m from inboard keep rest\n  2026-06-05 join main to rest bury 72 d`))).toEqual({ main: [[undefined, says], [8 - 0.72, undefined]] });
    });
    test('a joint whose place is known stays in doubt where the place of the cut is not', () => {
      const state = withoutLength('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-03 join main to tail bury 20 d\n  2026-06-04 cut at 2 m from outboard keep rest');
      expect(inDoubt(state)).toEqual({ main: [[14.8, says]], rest: [[undefined, says]] });
    });
    test('and what is cut off inboard of that place is free of it', () => {
      const state = withoutLength('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-03 join main to tail bury 20 d\n  2026-06-04 cut at 2 m from outboard keep rest\n  2026-06-05 cut at 8 m from inboard keep more');
      expect(inDoubt(state)).toEqual({ main: [], more: [[14.8 - 8, says]], rest: [[undefined, says]] });
    });
    test('where both places are known there is no doubt', () => {
      expect(inDoubt(replay(`${joined}  2026-06-04 cut at 8 m from inboard keep rest`))).toEqual({ main: [], rest: [[25 - 0.2 - 8, undefined]] });
      expect(inDoubt(withoutLength('  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-03 join main to tail bury 20 d\n  2026-06-04 cut at 8 m from inboard keep rest'))).toEqual({ main: [], rest: [[14.8 - 8, undefined]] });
    });
  });

  // The tail of 0.72 m and half of the 0.2 m around the eye leave the line: 3 - 0.82 = 2.18 m of rope from the new bearing
  // point. The tail lies in 0.96 m of it and shortens it by 0.24 m: 1.94 m as the line lies.
  const eyed = '  2026-06-01 damage cut 6 strands at 3 m from inboard\n  2026-06-02 splice inboard eye bury 72 d size 200 mm';
  test('has its damage nearer to a new inboard eye', () => {
    expect(marks(withoutLength(eyed), 'main')).toEqual([[1.94, 1.94]]);
    expect(marks(withoutLength(`${eyed}\n  2026-06-03 cut at 2.6 m from inboard`), 'main')).toEqual([[1.94, 1.94]]);
    // The same as of a line whose length is known.
    expect(marks(replay(eyed), 'main')).toEqual([[1.94, 1.94]]);
  });

  test('has damage nobody knows where when the new inboard eye takes an unknown length', () => {
    const state = withoutLength('  2026-06-01 damage cut 6 strands at 3 m from inboard\n  2026-06-02 splice inboard eye size 200 mm');
    expect(state.pieces.get('main')!.marks.map((m) => [m.from, m.to])).toEqual([[undefined, undefined]]);
  });

  // Tail 0.72 m, eye 0.2 m, and the 0.96 m over the tail: damage in the tail's end comes to lie so much farther in.
  test('may have had its damage in the tail of a new outboard eye', () => {
    const state = withoutLength('  2026-06-01 damage cut 1 strand at 3 m from inboard\n  2026-06-02 cut at 1 m from outboard\n  2026-06-02 splice outboard eye bury 72 d size 200 mm');
    const [mark] = state.pieces.get('main')!.marks;
    expect([mark!.from!.toFixed(6), mark!.to!.toFixed(6)]).toEqual(['1.120000', '3.000000']);
  });

  test('is cut from its outboard end: the old end is off, and the piece that is kept has its length', () => {
    const state = withoutLength('  2026-05-01 damage cut 1 strand at 3 m from inboard\n  2026-06-01 cut at 5 m from outboard keep tail');
    expect(lengths(state)).toEqual({ main: undefined, tail: 5 });
    const [main, tail] = [state.pieces.get('main')!, state.pieces.get('tail')!];
    expect([main.outboard.form, tail.inboard.form, tail.outboard.form]).toEqual(['bare', 'bare', 'eye']);
    // On which side of the cut the damage lies cannot be told.
    expect([main.marks[0]!.from, tail.marks[0]!.from]).toEqual([3, undefined]);
  });

  test('the same in a plan, whose cuts are counted on the line as it lay', () => {
    const [main, repair] = blocks(line('').replace(/^ *length.*\n/m, '') + '\nrepair fix on main {\n  cut at 8 m from outboard keep middle\n  cut at 5 m from outboard keep tail\n}\n');
    expect(lengths(replayRepair(main!, replayLogbook(main!, day('2026-06-30'), toss), repair!, toss))).toEqual({ main: undefined, middle: 3, tail: 5 });
  });
});

describe('an entry that does not fit', () => {
  const two = '  2026-06-01 cut at 15 m from inboard keep tail\n';
  test.each([
    ['damage cut 1 strand at 3 m from inboard of maim', ['main', 'tail']],
    ['retired t6', ['main', 'tail']],
    ['cut at 3 m from inboard of maim', ['main', 'tail']],
    ['pulled 80 kN maim', ['main', 'tail']],
    ['cut at 16 m from inboard', ['main']],
    ['join main to tial bury 72 d', ['main', 'tail']],
    ['join main to main bury 72 d', ['main', 'tail']],
    ['join main to tail bury 800 d', ['main', 'tail']],
    ['damage cut 1 strand at 16 m from inboard', ['main', 'tail']],
    ['inspected maim', []],
    ['washed', []],
  ])('%s', (entry, expected) => expect(doubted(replay(`${two}  2026-06-02 ${entry}`))).toEqual(expected));

  test('a pull whose load cannot be read is in doubt too', () => {
    expect(doubted(replay('  2026-06-02 pulled 80'))).toEqual(['main']);
  });
});

describe('damage right at a cut', () => {
  test('may lie on either side of it', () => {
    const state = replay('  2026-06-01 damage cut 2 strands at 20 m from inboard\n  2026-06-02 cut at 20 m from inboard keep tail');
    expect(marks(state, 'main')).toEqual([[20, 20]]);
    expect(marks(state, 'tail')).toEqual([[0, 0]]);
  });
  test('a stretch cut out at its stated ends is out', () => {
    const state = replay('  2026-06-01 damage abrasion heavy from 20 m to 21 m from inboard\n  2026-06-02 cut at 21 m from inboard keep tail\n  2026-06-02 cut at 20 m from inboard');
    expect(marks(state, 'main')).toEqual([]);
    expect(marks(state, 'tail')).toEqual([]);
  });
});

test('how much line a knot takes is not known', () => {
  const state = replay('  2026-06-01 cut at 20 m from inboard\n  2026-06-01 splice outboard knot');
  expect(lengths(state)).toEqual({ main: undefined });
  expect(state.pieces.get('main')!.lost!.says).toBe('how much line this knot takes is not known');
  expect(codes(state)).toEqual([]);
});

test('an eye that came with the line is cut off as well before a new one', () => {
  expect(codes(replay('  2026-06-01 splice outboard eye bury 72 d size 200 mm'))).toEqual(['end-not-cut']);
  expect(codes(replay('  2026-06-01 cut at 25 m from inboard\n  2026-06-01 splice outboard eye bury 72 d size 200 mm'))).toEqual([]);
});

// The joint lies in 0.96 m of line on both sides of its throat at 15 - 0.72 m.
describe('a cut through a splice', () => {
  const joined = '  2026-06-01 cut at 15 m from inboard keep tail\n  2026-06-01 join main to tail bury 72 d\n';
  const cutThrough = (state: LineState, piece: string): (boolean | undefined)[] => state.pieces.get(piece)!.joints.map((j) => j.end.cutThrough?.seen);
  test('is known of a joint', () => {
    expect(cutThrough(replay(`${joined}  2026-06-03 cut at 14.4 m from inboard`), 'main')).toEqual([true]);
    expect(cutThrough(replay(`${joined}  2026-06-03 cut at 16 m from inboard`), 'main')).toEqual([undefined]);
    expect(cutThrough(replay(`${joined}  2026-06-03 cut at 13.5 m from inboard keep tail`), 'tail')).toEqual([true]);
  });
  // The throat lies half of the 0.2 m around the eye from its bearing point, and the tail 0.72 m farther.
  test.each([['0.81 m', { seen: true }], ['0.05 m', { seen: false }], ['0.83 m', undefined]])('and of the eye that came with the line, %s from it', (at, expected) => {
    const text = `  2026-06-03 cut at ${at} from outboard keep tail`;
    for (const state of [replay(text), withoutLength(text)]) {
      const cut = state.pieces.get('tail')!.outboard.cutThrough;
      expect(cut === undefined ? undefined : { seen: cut.seen }).toEqual(expected);
    }
  });
});

describe('a splice that is drawn out and made again', () => {
  const short = '  2026-06-01 cut at 20 m from inboard\n  2026-06-01 splice outboard eye size 160 mm bury 46 d temporary\n';
  const full = 'splice outboard eye size 160 mm bury 72 d';
  const codes = (state: LineState): string[] => state.problems.map((p) => p.code);

  test('leaves the line as if it had been made so in the first place', () => {
    const made = replay(`  2026-06-01 cut at 20 m from inboard\n  2026-06-01 ${full}`);
    const remade = replay(`${short}  2026-06-21 ${full} remade`);
    expect(lengths(remade)).toEqual(lengths(made));
    // 20 m less the tail, half of the eye, and 0.72 m / 0.75 × 0.25 by which the line over the tail shortens.
    expect(lengths(remade)).toEqual({ main: Number((20 - 0.72 - 0.08 - 0.24).toFixed(6)) });
    expect([codes(remade), remade.pieces.get('main')!.buried.length]).toEqual([[], 1]);
    expect(codes(replay(`${short}  2026-06-21 ${full}`))).toEqual(['end-not-cut']);
  });

  test('at either end, and in a plan', () => {
    const turnedRound = `${short}  2026-06-02 reversed\n`;
    expect(lengths(replay(`${turnedRound}  2026-06-21 splice inboard eye size 160 mm bury 72 d remade`))).toEqual(lengths(replay(`${short}  2026-06-21 ${full} remade`)));
    const text = `${line(short)}\nrepair fix on main {\n  ${full} remade\n}\n`;
    const [own, plan] = blocks(text);
    expect(lengths(replayRepair(own!, replayLogbook(own!, day('2027-01-01'), toss), plan!, toss))).toEqual(lengths(replay(`${short}  2026-06-21 ${full} remade`)));
  });

  test('damage before it stays where it was, and damage that was found in the old splice reaches to the end that came back', () => {
    const found = (at: string): { from: number | undefined; to: number | undefined }[] => replay(`${short}  2026-06-10 damage cut 1 strand at ${at} from inboard\n  2026-06-21 splice outboard bare remade`).pieces.get('main')!.marks.map(({ from, to }) => ({ from, to }));
    expect(found('10 m')).toEqual([{ from: 10, to: 10 }]);
    // The old splice covers 0.46 m / 0.75 before its throat at 20 − 0.46 − 0.16 m.
    expect(found('19 m')[0]!.to).toBeCloseTo(20, 9);
    expect(found('19 m')[0]!.from).toBeGreaterThan(18.7);
  });

  test('what came out of an eye that the line came with nobody knows', () => {
    const state = replay(`  2026-06-21 ${full} remade\n  2026-06-22 damage cut 1 strand at 31 m from inboard`);
    expect([codes(state), lengths(state)]).toEqual([[], { main: undefined }]);
    expect(state.pieces.get('main')!.lost!.says).toBe('how much line came out of the old splice of `main` is not known');
  });
});
