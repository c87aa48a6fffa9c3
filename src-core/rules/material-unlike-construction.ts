import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

const line = (material: string, construction: string): string => `line main {
  material      ${material}
  construction  ${construction}
  strands       12
  diameter      10 mm
  length        30 m
  breaking      92 kN
  outboard      eye thimble tube bury 72 d taper 24 d
}
`;

export const materialUnlikeConstruction = defineRule({
  name: 'material-unlike-construction',
  on: 'block',
  heads: ['line'],
  severity: 'error',
  summary: 'A line is made of wire and braided as fibre, or of fibre and laid as wire.',
  why: 'splices, wraps and bends are judged by what the line is, and one of the two is not so',
  source: 'common practice: wire rope is laid of steel strands, hollow and double braid are of fibre',
  bad: line('HMPE', 'wire-6x19'),
  good: line('HMPE', 'hollow-braid'),
  check(block, judge) {
    const [m, c] = [statementOf(block, 'material'), statementOf(block, 'construction')];
    const [material, construction] = [m && wordOf(m.values, 'material'), c && wordOf(c.values, 'construction')];
    if (c === undefined || material === undefined || construction === undefined) return;
    const isWire = construction === 'wire-6x19';
    judge.holds((material === 'wire') === isWire || (material === 'wire' && construction === 'laid'), () => ({
      place: c.place,
      message: `\`${block.name ?? 'line'}\` is of ${material}, and its construction is ${construction}`,
      help: 'correct one of the two',
      related: [{ place: m!.place, message: 'its material' }],
    }));
  },
});
