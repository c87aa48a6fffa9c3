import { defineTextRule } from './rule.ts';

const line = (at: string): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d size 160 mm stitched
  2026-06-20  fitted
  2026-06-21  damage     pulled 1 strand at 12 m from inboard
  2026-06-22  mended     pulled at ${at} from inboard
}
`;

export const mendedNothing = defineTextRule({
  name: 'mended-nothing',
  severity: 'error',
  summary: 'An entry says that a place was put right, and no such damage is written there.',
  why: 'a place that was mended under a wrong position leaves the damage in the logbook, and the other way round',
  source: 'our own careful choice, because two readings of one place by tape agree within 10 cm',
  bad: line('14 m'),
  good: line('12 m'),
});
