import { factOf, statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { fibreStrength } from '../mechanics/fibre-strength.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { wordOf } from '../model/bound.ts';
import { fibreStrength_Pa } from '../trade/fibre-strength-table.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
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
  heads: ['line'],
  severity: 'error',
  summary: 'A breaking strength is above that of a solid rod of the fibre as thick as the line.',
  why: 'no line of that thickness can be so strong: the figure, its unit or the diameter is a slip, and every load is judged by it',
  source: 'aramid fibre maker\'s data, table 3, tensile properties of industrial fibres; mechanics: strength times area',
  bad: line('920 kN'),
  good: line('92 kN'),
  check(block, judge) {
    const m = statementOf(block, 'material');
    const strength = m === undefined ? undefined : fibreStrength_Pa(wordOf(m.values, 'material'));
    const [breaking, d] = [factOf(block, 'breaking'), factOf(block, 'diameter')];
    if (strength === undefined || isUnknown(breaking) || isUnknown(d)) return;
    const place = statementOf(block, 'breaking')!.place;
    judge.atMost(breaking, asGiven(fibreStrength({ σ: { amount: exactly(strength), kind: 'pressure', origin: { from: 'constant', source: sources['fibre-maker-table-3'] } }, d })), place, (has, most) => ({
      place,
      message: `\`${block.name ?? 'line'}\` is said to break at ${show(has)}, above the ${show(most, { unit: unitOf(has), careful: 'down' })} of a solid rod of its fibre, ${show(d)} thick`,
      help: 'read the tag again: the figure, its unit, and the diameter',
    }));
  },
});
