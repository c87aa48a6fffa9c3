import { isBelow } from '../base/compare.ts';
import { statementOf } from '../assess/facts.ts';
import type { Draft } from '../assess/finding.ts';
import { show } from '../assess/show.ts';
import { asGiven, isUnknown, type Given } from '../mechanics/derivation.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { printNumber } from '../units/print.ts';
import { limitText, sourceOf } from './force-text.ts';
import { defineRule } from './rule.ts';

/** What is said of gear, or of a point of a vehicle, whose limit lies too near its breaking strength. */
export function factorText({ name, sort, factor, breaking, needed, means }: { readonly name: string; readonly sort: string; readonly factor: number; readonly breaking: Given; readonly needed: Given; readonly means: string }): Omit<Draft, 'place'> {
  return {
    ...(factor <= 1 ? { severity: 'error' as const } : {}),
    message: `breaking strength of \`${name}\` is ${printNumber(factor, 'down', 1)} times its working limit${means}, below the design factor of ${show(needed)}`,
    help: `work it to ${limitText(asGiven(workingLimitFromBreaking({ MBL: breaking, f: needed })))}, or write the maker\'s factor as \`design-factor ${sort}\` in a practice block`,
    source: sourceOf(needed),
  };
}

export const designFactorLow = defineRule({
  name: 'design-factor-low',
  on: 'gear',
  severity: 'warning',
  summary: 'Breaking strength over working limit is below the design factor for this gear.',
  why: 'the limit leaves less for shock, wear and side load than the trade counts on',
  source: 'the design factor of practice; ASME B30.26-2010, 26-1.2 for shackles, CI 1401-15 for fibre',
  bad: `strap trunk {
  length  3 m
  wll     4 t
  breaking  12 t
}
`,
  good: `strap trunk {
  length  3 m
  wll     4 t
  breaking  20 t
}
`,
  check(gear, judge) {
    const { limit, breakingStrength: breaking, designFactor: needed } = gear;
    if (gear.limitFrom !== 'written' || !gear.breakingKnown || isUnknown(limit) || isUnknown(breaking) || isUnknown(needed)) return;
    const factor = breaking.amount.low / limit.amount.high;
    // A written limit above a written strength is a slip, said by itself.
    if (factor <= 1 && gear.breakingWritten) return;
    judge.holds(!isBelow(factor, needed.amount.high), () => ({
      place: statementOf(gear.block, 'wll')!.place,
      ...factorText({ name: gear.name, sort: gear.head, factor, breaking, needed, means: gear.breakingWritten ? '' : ', by the line it is tied from' }),
      related: [{ place: statementOf(gear.block, gear.breakingWritten ? 'breaking' : 'line-breaking')!.place, message: gear.breakingWritten ? 'its breaking strength' : 'breaking strength of its line' }],
    }));
  },
});
