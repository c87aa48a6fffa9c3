import { factOf, statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { fibreStrength } from '../mechanics/fibre-strength.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { softShackleStrength } from '../mechanics/soft-shackle-strength.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { isAbove } from '../base/compare.ts';
import { wordOf } from '../model/bound.ts';
import { fibreStrength_Pa } from '../trade/fibre-strength-table.ts';
import { softShackleNamed } from '../trade/soft-shackle-share.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { limitText } from './force-text.ts';
import { defineRule } from './rule.ts';

const line = (breaking: string): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  ${breaking}
  outboard  eye thimble tube bury 72 d taper 24 d
}
`;

export const strongerThanItsFibre = defineRule({
  name: 'stronger-than-its-fibre',
  on: 'block',
  heads: ['line', 'soft-shackle'],
  severity: 'error',
  summary: 'A line or a soft shackle is rated above what a solid rod of its fibre, as thick, would bear.',
  why: 'no line of that thickness can be so strong: the figure, its unit or the diameter is a slip, and every load is judged by it',
  source: 'aramid fibre maker\'s data, table 3, tensile properties of industrial fibres; break tests of soft shackles: at most 230 % of the line; mechanics: strength times area',
  bad: line('920 kN'),
  good: line('92 kN'),
  check(block, judge, { practice }) {
    const isLine = block.definition.head === 'line';
    const m = statementOf(block, 'material');
    // Of a soft shackle whose fibre nobody wrote, the strongest fibre is taken.
    const strength = fibreStrength_Pa(m === undefined ? undefined : wordOf(m.values, 'material')) ?? (isLine ? undefined : fibreStrength_Pa('aramid'));
    const d = factOf(block, 'diameter');
    if (strength === undefined || isUnknown(d)) return;
    const rod = asGiven(fibreStrength({ σ: { amount: exactly(strength), kind: 'pressure', origin: { from: 'constant', source: sources['fibre-maker-table-3'] } }, d }));
    const best = softShackleNamed('button')!;
    const tied = asGiven(softShackleStrength({ F: rod, k: { amount: exactly(best.high), kind: 'share', origin: { from: 'constant', source: best.sources[0] } } }));
    for (const [head, limit, factor] of isLine ? [['breaking', rod] as const] : [['breaking', tied] as const, ['line-breaking', rod] as const, ['wll', tied, practice.value('design-factor', 'soft-shackle')] as const]) {
      const has = factOf(block, head);
      if (isUnknown(has)) continue;
      const { place } = statementOf(block, head)!;
      judge.atMost(has, factor === undefined ? limit : asGiven(workingLimitFromBreaking({ MBL: limit, f: factor })), place, (_, most) => ({
        place,
        ...(factor !== undefined && !isUnknown(limit) && !isAbove(has.amount.high, limit.amount.high) ? { severity: 'warning' } : {}),
        message: `${head === 'line-breaking' ? 'the line of ' : ''}\`${block.name ?? 'line'}\` is said to ${factor === undefined ? 'break' : 'carry'}${factor === undefined ? ' at' : ''} ${limitText(has)}, above the ${show(most, { unit: unitOf(has), careful: 'down' })} ${factor === undefined || isUnknown(factor) ? '' : `that a factor of ${show(factor)} leaves `}of ${limit === rod ? '' : 'the strongest that is made of '}a solid rod of its fibre, ${show(d)} thick`,
        help: 'read the tag again: the figure, its unit, and the diameter',
      }));
    }
  },
});
