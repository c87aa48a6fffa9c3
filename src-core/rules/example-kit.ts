/** A repair, a chain and a bag that holds these. */
export const kitExample = (held: readonly string[]): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  140 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}

anchor larch {
  kind     ground-anchor
  holding  60 kN "tested 2026-05-02"
}

repair new-eye on main {
  cut     at 27 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}

chain to-the-larch after new-eye {
  main outboard -> shackle bow 19 mm AS-2741 -> larch
}

kit bag {
${held.map((item) => `  holds  ${item}\n`).join('')}}
`;
