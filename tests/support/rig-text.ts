/** Numbers from 0 to 1 that are the same for the same seed, on every machine. */
export function randomFrom(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface RigTextOptions {
  /** Stands before every name, so that files do not clash. */
  readonly prefix?: string;
  /** A file that is taken in, and an anchor of it that every chain ends at. */
  readonly shared?: { readonly use: string; readonly anchor: string };
}

/** The day on which nothing is found in these texts. */
export const rigTextDay = '2026-06-22';

type Block = (i: number, pick: (from: number, to: number) => number, o: { readonly prefix: string; readonly anchor: string }) => readonly string[];

const birds = ['dipper', 'plover', 'wheatear', 'redstart', 'ouzel', 'merlin', 'siskin', 'whinchat'];

/** One truck's rig, block by block: each names only what stands above it. */
const blocks: readonly Block[] = [
  (i, pick, { prefix: p }) => [
    `vehicle ${p}truck-${i} "${birds[i % birds.length]!}, half loaded" {`,
    `  mass   2,${pick(300, 409)} kg`,
    '  point  bow rated 5 t',
    '  point  stern rated 5 t',
    '}',
  ],
  (i, pick, { prefix: p }) => [
    `line ${p}main-${i} "new this spring" {`,
    '  material      HMPE',
    '  construction  hollow-braid',
    '  strands       12',
    '  diameter      10 mm',
    `  length        ${pick(24, 27)} m`,
    `  breaking      ${pick(92, 98)} kN                 # tag on the spool`,
    '  inboard       lug',
    '  outboard      eye thimble tube bury 72 d taper 24 d size 160 mm stitched',
    '  stored        covered',
    '',
    '  2026-05-02  fitted',
    '  2026-05-02  spooled    tight under 230 kgf',
    '  2026-05-02  inspected  "outside in, nothing found"',
    `  2026-05-17  pulled     ${pick(11, 19)} kN`,
    '  2026-05-18  washed',
    '}',
  ],
  (i, pick, { prefix: p }) => [
    `winch ${p}front-${i} on ${p}truck-${i} {`,
    `  rated     ${pick(22, 25)} kN at layer 1`,
    '  barrel    70 mm',
    '  width     240 mm',
    '  flange    180 mm',
    '  keep      10 wraps',
    `  carries   ${p}main-${i}`,
    '  fairlead  hawse condition sound',
    '  sealing   IP67',
    `  speed     ${pick(3, 5)} m/min at layer 1`,
    '  brake     outside',
    '}',
  ],
  (i, _pick, { prefix: p }) => [
    `shackle ${p}bow-${i} {`,
    '  form     bow',
    '  body     19 mm',
    '  pin      22 mm',
    '  wll      4.7 t',
    '  made-to  AS-2741',
    '  marking  legible',
    '}',
  ],
  (i, pick, { prefix: p }) => [
    `strap ${p}round-${i} {`,
    '  kind     static',
    `  length   ${pick(3, 6)} m`,
    '  wll      5 t',
    '  hitch    basket',
    '  marking  legible',
    '}',
  ],
  (i, pick, { prefix: p }) => [
    `anchor ${p}birch-${i} {`,
    '  kind     tree',
    '  girth    1.5 m',
    `  holding  ${pick(40, 48)} kN "pulled to that with a load cell, 2026-05-17"`,
    '}',
  ],
  (i, pick, { prefix: p, anchor }) => [
    `chain ${p}reach-${i} {`,
    `  ${p}main-${i} outboard -> ${p}bow-${i} -> ${p}round-${i} -> ${anchor === '' ? `${p}birch-${i}` : anchor}`,
    `  out  ${pick(16, 18)} m`,
    '}',
  ],
  (i, pick, { prefix: p }) => [
    // Which gear is in which bag is asked of the whole file at once; these texts say nothing of bags.
    ...(i === 0 ? ['# allow missing-fact: the bags are packed by another crew'] : []),
    `pull ${p}out-${i} with ${p}front-${i} through ${p}reach-${i} {`,
    `  load      ${p}truck-${i}`,
    '  surface   gravel',
    `  grade     ${pick(10, 13)} deg`,
    '  mired     no',
    '  dragging  none',
    `  reach     ${pick(14, 16)} m`,
    '  people    35 m',
    '}',
  ],
];

/** A rig file of at most this many lines in which nothing is found on `rigTextDay`. The same seed gives the same text. */
export function rigText(lines: number, seed = 1, { prefix = '', shared }: RigTextOptions = {}): string {
  const random = randomFrom(seed);
  const pick = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const text: string[] = shared === undefined ? [] : [`use "${shared.use}"`, ''];
  for (let i = 0; ; i++) {
    for (const block of blocks) {
      const next = block(i, pick, { prefix, anchor: shared?.anchor ?? '' });
      if (text.length + next.length + 1 > lines) return text.join('\n') + '\n';
      text.push(...next, '');
    }
  }
}
