/** Blocks that the examples of rules share. */
export const mainLine = `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
}
`;

export const larch = `anchor larch {
  kind     tree
  girth    1.3 m
  holding  40 kN "tested 2026-05-02"
}
`;

export const bow22 = `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}
`;

export const frontWinch = `winch bow-winch {
  rated    20 kN
  carries  main
}
`;

export const trunk = `strap trunk {
  length  3 m
  wll     4 t
}
`;

export const tailLine = `line tail {
  material  HMPE
  strands   12
  diameter  10 mm
  length    12 m
  breaking  92 kN
  inboard   eye bury 72 d taper 24 d stitched
  outboard  eye thimble tube bury 72 d taper 24 d
}
`;

export const reachByTrunk = `chain reach {
  main outboard -> bow-22 -> trunk -> larch
}
`;

export const bow22WithoutPin = `shackle bow-22 {
  form  bow
  body  22 mm
  wll   6.5 t
}
`;

export const winchWithDrum = `winch bow-winch {
  rated    42 kN at layer 1
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
`;

export const reachByTail = `chain reach {
  main outboard -> bow-22 -> tail inboard
  tail outboard -> bow-19 -> trunk -> larch
}
`;

export const bow19 = `shackle bow-19 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
}
`;

/** A chain in which nothing is found. */
export const soundChain = `${frontWinch}
${mainLine}
${bow22}
${trunk}
${larch}
${reachByTrunk}`;

/** A winch with all sizes of its drum, and the line on it. */
export const drumExample = ({ rated = '42 kN', barrel = '64 mm' }: { readonly rated?: string; readonly barrel?: string } = {}): string => `winch bow-winch {
  rated    ${rated}
  barrel   ${barrel}
  width    230 mm
  flange   165 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    25 m
}
`;
