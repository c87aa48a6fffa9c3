/** The parts of a whole pull, for the examples of rules that speak of one. A part that is given replaces the usual one. */
export interface PullParts {
  readonly vehicle?: string;
  readonly winch?: string;
  readonly line?: string;
  readonly gear?: string;
  readonly anchor?: string;
  readonly chain?: string;
  /** The pull's statements. */
  readonly pull?: string;
  readonly header?: string;
  /** Further blocks. */
  readonly more?: string;
}

const usual = {
  vehicle: `vehicle plover {
  mass   2,650 kg
  point  bow rated 6 t
}
`,
  winch: `winch bow-winch on plover {
  rated    42 kN
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
`,
  line: `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  140 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  gear: `shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  length  3 m
  wll     5 t
}
`,
  anchor: `anchor larch {
  kind     tree
  holding  60 kN "tested 2026-05-02"
}
`,
  chain: `chain to-the-larch {
  main outboard -> bow-22 -> trunk -> larch
}
`,
  pull: `  load      plover
  surface   gravel
  grade     12 deg
  mired     no
  dragging  none
  reach     21 m
  people    35 m
`,
  header: 'pull off-the-ford with bow-winch through to-the-larch',
};

export function pullExample(parts: PullParts = {}): string {
  const all = { ...usual, ...parts };
  return [all.vehicle, all.winch, all.line, all.gear, all.anchor, all.chain, `${all.header} {\n${all.pull}}\n`, ...(parts.more === undefined ? [] : [parts.more])].filter((part) => part !== '').join('\n');
}

const usualLines = usual.pull.trimEnd().split('\n').map((line) => ({ head: line.trim().split(' ', 1)[0]!, line }));

/** The usual pull with one statement replaced, left out or added. */
export function pullWith(changes: Readonly<Record<string, string | undefined>>): string {
  const lines = usualLines.flatMap(({ head, line }) => (!Object.hasOwn(changes, head) ? [line] : changes[head] === undefined ? [] : [`  ${changes[head]}`]));
  for (const [head, text] of Object.entries(changes)) if (text !== undefined && usualLines.every((known) => known.head !== head)) lines.push(`  ${text}`);
  return lines.join('\n') + '\n';
}
