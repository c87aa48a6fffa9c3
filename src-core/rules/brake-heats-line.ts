import { statementOf } from '../assess/facts.ts';
import { wordOf } from '../model/bound.ts';
import { defineRule } from './rule.ts';

export const brakeHeatsLine = defineRule({
  name: 'brake-heats-line',
  on: 'winch',
  severity: 'warning',
  summary: 'The brake sits inside the drum, under a line that heat weakens.',
  why: 'powering out under load heats a brake inside the barrel, and HMPE on the barrel loses strength from about 65 °C',
  source: 'handbook overview of HMPE fibre: strength loss begins about 65 °C; US Army TM 9-2320-280-10, p. 2-134: free spool, power out no more than about 3 m',
  bad: `winch bow-winch {
  carries   main
  fairlead  hawse condition sound
  brake     in-drum
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  good: `winch bow-winch {
  carries   main
  fairlead  hawse condition sound
  brake     outside
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  check(winch, judge) {
    const { block, piece } = winch;
    const brake = statementOf(block, 'brake');
    if (piece === undefined) return;
    const place = brake?.place ?? block.namePlace;
    if (piece.line.materialCause !== undefined) return judge.cannot(piece.line.materialCause, place);
    if (piece.line.material === 'HMPE' && (brake === undefined || brake.broken.size > 0)) {
      const reported = brake !== undefined || block.brokenHeads.has('brake');
      return judge.cannot({ key: `brake of ${winch.name}`, says: `where the brake of \`${winch.name}\` sits is not given`, help: 'add `brake in-drum` or `brake outside`, from its handbook', place, ...(reported ? { reported } : {}) }, place);
    }
    if (brake === undefined) return;
    judge.holds(wordOf(brake.values, 'brake') !== 'in-drum' || piece.line.material !== 'HMPE', () => ({
      place,
      message: `brake of \`${winch.name}\` sits in the drum, and \`${piece.name}\` is HMPE`,
      help: 'run line out in free spool, power out no more than a few metres under load, and fit a heat sleeve over the first wraps; with those as the crew\'s habit, set this aside with its reason',
    }));
  },
});
