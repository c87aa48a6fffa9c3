import { quantityOf, wordOf } from '../model/bound.ts';
import { statementOf } from '../assess/facts.ts';
import { defineRule } from './rule.ts';

export const sealingTermsMissing = defineRule({
  name: 'sealing-terms-missing',
  on: 'winch',
  severity: 'information',
  summary: 'A sealing class that holds on its maker\'s terms is given without the terms.',
  why: 'class 8 against water says only that the maker states a depth and a time; without them nobody knows what it withstands',
  source: 'IEC 60529, IPX8 on terms the maker states (read in a document that quotes it)',
  bad: `winch bow-winch {
  rated    42 kN at layer 1
  sealing  IP68
}
`,
  good: `winch bow-winch {
  rated    42 kN at layer 1
  sealing  IP68 depth 2 m for 30 min
}
`,
  check(winch, judge) {
    const sealing = statementOf(winch.block, 'sealing');
    const marking = sealing === undefined ? undefined : wordOf(sealing.values, 'class');
    if (sealing === undefined || marking === undefined || !/^IP.8/.test(marking)) return;
    const missing = [...(quantityOf(sealing.values, 'depth') === undefined ? ['depth'] : []), ...(quantityOf(sealing.values, 'time') === undefined ? ['time'] : [])];
    judge.holds(missing.length === 0, () => ({
      place: sealing.place,
      message: `sealing of \`${winch.name}\` is ${marking}, and the ${missing.join(' and ')} that its maker states ${missing.length === 1 ? 'is' : 'are'} not given`,
      help: 'add them from the data sheet, like `depth 2 m for 30 min`',
    }));
  },
});
