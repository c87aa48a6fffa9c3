import { missingFact, statementOf } from '../assess/facts.ts';
import { defineRule } from './rule.ts';

const pickets = (soil: string): string => `anchor holdfast {
  kind     pickets
  pickets  three-two-one
  soil     ${soil}
}
`;
const called: Readonly<Record<string, string>> = { hardpan: 'hardpan', wet: 'wet or sandy ground' };

export const picketsInWrongSoil = defineRule({
  name: 'pickets-in-wrong-soil',
  on: 'anchor',
  severity: 'warning',
  summary: 'Pickets stand in a soil for which no holding power is published.',
  why: 'the published figures hold for undisturbed loam; in wet or sandy ground pickets walk out',
  source: 'NAVEDTRA 14251, picket holdfasts in loam',
  bad: pickets('wet'),
  good: pickets('loam'),
  check({ block, name, form, soil, holdingFrom }, judge) {
    if (form !== 'pickets' || holdingFrom === 'written') return;
    if (soil === undefined) return judge.cannot({ ...missingFact(block, 'soil'), help: 'add `soil`; a figure is published for loam' }, block.namePlace);
    const place = statementOf(block, 'soil')!.place;
    judge.holds(soil === 'loam', () => ({
      place,
      message: `the pickets of \`${name}\` stand in ${called[soil] ?? soil}; a holding power is published for loam only`,
      help: 'bury a log instead, or prove the pickets by a pull and write `holding`',
    }));
  },
});
