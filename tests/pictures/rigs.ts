/** A whole small rig: everything that has a picture. */
export const wholeRig = `vehicle plover { mass 2,650 kg }
winch bow-winch on plover {
  rated     42 kN at layer 1
  barrel    64 mm
  width     230 mm
  flange    165 mm
  keep      10 wraps
  carries   main
}
line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
  2025-04-02  fitted
  2026-06-21  damage  cut 2 strands at 8.4 m from inboard
  2026-06-21  damage  abrasion light from 7.9 m to 9.1 m from inboard
}
shackle bow-22 { 
  wll 6.5 t
}
strap trunk {
  wll 4 t
}
anchor larch {
  kind tree
}
repair field-fix on main {
  cut at 7.6 m from inboard
  splice outboard eye thimble tube bury 46 cm taper 15 cm temporary
  cut at 9.4 m from inboard keep tail
  splice tail inboard eye bury 46 cm taper 15 cm temporary
}
repair joined on main {
  cut at 7.6 m from inboard
  cut at 9.4 m from inboard keep far
  join main to far bury 72 d taper 24 d
}
chain long-reach after field-fix {
  main outboard -> bow-22 -> tail inboard
  tail outboard -> shackle bow 19 mm -> trunk -> larch
}
`;

/** Each block lacks something that a picture would need. */
export const halfUnknownRig = `winch w1 {
  rated 42 kN
  width 230 mm
  carries l1
}
winch w2 {
  barrel 64 mm
  width 230 mm
  flange 165 mm
  carries l2
}
winch w3 {
  rated 12,000 lbf
  barrel 2.5 in
  width 9 in
  carries l3
}
winch w4 {
}
line l1 {
  material HMPE
  length 30 m
  outboard eye thimble tube
  2026-06-21 damage cut 2 strands at 8.4 m from outboard
}
line l2 {
  material HMPE
  diameter 10 mm
  breaking 92 kN
  2026-06-21 damage cut 2 strands at 8.4 m from outboard
  2026-06-21 damage abrasion light from 3 m to 4 m from inboard
}
line l3 {
  material HMPE
  strands 12
  diameter 3/8 in
  length 80 ft
  breaking 20,000 lbf
  outboard eye bury 40 d
  2026-06-21 damage stain at 5 ft from outboard
}
line l4 {
}
repair fix on l2 {
  cut at 3 m from inboard keep t
  splice outboard eye bury 20 d
}
chain c1 {
  l1 outboard -> nothing -> l4 outboard
}
chain c2 {
}
`;

/** A sum of three moduli is all the variety that is wanted; no chance is involved. */
export const worn = (entries: number): string => {
  const kinds = ['cut 1 strand', 'abrasion light', 'abrasion moderate', 'abrasion heavy', 'flattened'];
  const log = Array.from({ length: entries }, (_, i) => `  2026-06-${String(1 + (i % 21)).padStart(2, '0')}  damage  ${kinds[i % 5]} at ${((i * 7919) % 2990) / 100} m from inboard`);
  return `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n  outboard eye bury 72 d taper 24 d\n${log.join('\n')}\n}\n`;
};
