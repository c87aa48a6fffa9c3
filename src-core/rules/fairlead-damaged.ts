import { defineRule } from './rule.ts';

const says: Readonly<Record<string, string>> = {
  scored: 'scored',
  sharp: 'sharp',
  bent: 'bent or seized',
  corroded: 'corroded',
};

export const fairleadDamaged = defineRule({
  name: 'fairlead-damaged',
  on: 'winch',
  severity: 'warning',
  summary: 'A fibre line runs over a fairlead that is rough, sharp or does not turn.',
  why: 'fibre is weak across its strands: a score or a burr cuts strands on every pull, near the drum where nobody looks',
  source: 'common practice',
  bad: `winch bow-winch {
  carries   main
  fairlead  hawse condition scored
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
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  check(winch, judge) {
    const { fairlead, piece, block } = winch;
    if (piece === undefined || piece.line.material === 'wire') return;
    const place = fairlead?.statement.place ?? block.namePlace;
    if (piece.line.materialCause !== undefined) return judge.cannot(piece.line.materialCause, place);
    const { condition } = fairlead ?? {};
    if (condition === undefined) {
      const reported = fairlead === undefined ? block.brokenHeads.has('fairlead') || block.statements.some((s) => s.definition.head === 'fairlead') : fairlead.statement.broken.size > 0;
      return judge.cannot({ key: `fairlead of ${winch.name}`, says: `condition of the fairlead of \`${winch.name}\` is not given`, help: `feel it all round and add \`fairlead ${fairlead?.form ?? 'hawse'} condition sound\`, or what you find`, place, ...(reported ? { reported: true } : {}) }, place);
    }
    judge.holds(condition === 'sound', () => ({
      place,
      severity: condition === 'sharp' ? 'error' : 'warning',
      message: `fairlead of \`${winch.name}\` is ${says[condition] ?? condition}, and \`${piece.name}\` is ${piece.line.material}`,
      help: 'dress it smooth or change it before the next pull, and inspect the line outward from the drum',
    }));
  },
});
