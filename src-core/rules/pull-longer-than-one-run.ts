import { statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { lineWoundInRun } from '../mechanics/line-wound-in-run.ts';
import { exactly } from '../units/amount.ts';
import { pullExample } from './example-pull.ts';
import { defineRule } from './rule.ts';

const winch = (duty: string): string => `winch bow-winch on plover {
  rated    42 kN
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  speed    1.5 m/min at layer 1
  duty     ${duty} rest 10 min
  carries  main
}
`;

export const pullLongerThanOneRun = defineRule({
  name: 'pull-longer-than-one-run',
  on: 'pull',
  severity: 'information',
  summary: 'The line that is out takes the winch longer to wind on than it may run at full load.',
  why: 'a motor that is run on heats its windings and what is near them, and fails with the load on the line',
  source: 'the winch\'s own duty, as its maker gives it',
  bad: pullExample({ winch: winch('3 min') }),
  good: pullExample({ winch: winch('30 min') }),
  check({ block, name, winch: own, reach, layer }, judge) {
    const duty = own === undefined ? undefined : statementOf(own.block, 'duty');
    if (own?.runTime === undefined || own.speedOn === undefined || duty === undefined || isUnknown(layer) || isUnknown(reach.lineOut)) return;
    const run = asGiven(lineWoundInRun({ v: asGiven(own.speedOn({ ...layer, amount: exactly(layer.amount.low) })), τ: own.runTime }));
    const place = statementOf(block, 'reach')?.place ?? block.namePlace;
    judge.atMost(reach.lineOut, run, place, (out, most) => ({
      place,
      message: `\`${name}\` begins with ${show(out)} of line out; \`${own.name}\` winds on ${show(most, { unit: unitOf(out), careful: 'down' })} in the one run that its duty allows`,
      help: 'where all of it is to come in, stop for the rest that its maker gives, and make the load fast before; everybody stays where they are meanwhile',
      related: [{ place: duty.place, message: 'its duty' }],
    }));
  },
});
