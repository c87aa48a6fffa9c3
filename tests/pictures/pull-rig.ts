const gear = `vehicle plover {
  mass   2,650 kg
  point  bow rated 5 t
}
vehicle wren {
  mass   1,900 kg
  point  bow rated 3 t
  point  stern rated 3 t
}
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
  length    40 m
  breaking  92 kN
  outboard  eye thimble tube bury 72 d taper 24 d
}
block snatch {
  wll      4 t
  bearing  plain
}
block second {
  wll      8 t
  bearing  roller
}
strap trunk {
  wll  4 t
}
shackle bow-22 {
  wll  3.25 t
}
anchor larch {
  kind  tree
}
anchor boulder {
  kind     rock
  holding  40 kN "proved by a pull"
}
anchor log {
  kind   buried-log
  soil   loam
  log    1.8 m face 30 cm
  depth  1.5 m
  slope  3
}
anchor pickets {
  kind     pickets
  pickets  three-two-one
  soil     loam
}
chain around {
  main outboard -> bow-22 -> wren bow
  snatch -> trunk -> larch
}
chain fork {
  main outboard -> bow-22
  bow-22 -> boulder
  bow-22 -> larch
}
strap short {
  wll  3 t
}
strap long {
  wll  3 t
}
ring joint {
  wll  8 t
}
chain twice-forked {
  main outboard -> bow-22
  bow-22 -> boulder
  bow-22 -> joint
  joint -> short -> larch
  joint -> long -> wren stern
}
chain behind-block {
  main outboard -> wren bow
  snatch -> trunk -> joint
  joint -> short -> larch
  joint -> long -> boulder
}
chain loose-leg {
  main outboard -> bow-22
  bow-22 -> boulder
  bow-22 -> short -> joint
}
`;

const ground = `
  load      wren
  surface   grass
  grade     10 deg
  mired     no
  dragging  none`;

const pull = (name: string, through: string, body: string): string => `pull ${name} with bow-winch${through} {${body}\n}\n`;

/** Pulls of every kind: placed and not, turned, doubled, of a bridle, on every anchor, without what they need, and beyond their limits. */
export const pullRig = [
  gear,
  pull('placed', ' through around', `${ground}
  via       snatch fixed on larch angle 90 deg
  reach     18 m
  people    35 m
  stands    larch ahead 18 m left 4 m
  stands    plover ahead 15 m right 9 m`),
  pull('unplaced', ' through around', `${ground}
  via       snatch fixed on larch angle 90 deg after 12 m
  reach     18 m
  people    50 m`),
  pull('heavy', ' through around', `
  load        plover 4 t
  resistance  60 kN "load cell"
  via         snatch fixed on larch angle 90 deg
  reach       9 m`),
  pull('three-parts', '', `${ground}
  via       second travelling
  via       snatch fixed on boulder
  back-to   wren
  reach     12 m`),
  pull('half-known', '', `
  load      wren
  via       second fixed on log`),
  pull('by-pickets', '', `
  load      plover
  surface   gravel
  back-to   pickets
  reach     12 m`),
  pull('crowded', '', `${ground}
  via       second fixed on boulder
  via       snatch fixed on larch
  back-to   wren
  reach     12 m
  stands    plover ahead 10 m
  stands    boulder ahead 10.2 m
  stands    larch ahead 10.3 m left 10 cm`),
  'pull forked with bow-winch through fork {\n  load  plover\n  surface  gravel\n  bridle  60 deg\n}\n',
  'pull twice with bow-winch through twice-forked {\n  load  plover\n  surface  gravel\n  bridle  60 deg\n}\n',
  pull('bridled-block', ' through behind-block', `${ground}
  via       snatch fixed
  reach     18 m`),
  'pull loose with bow-winch through loose-leg {\n  load  plover\n  surface  gravel\n  bridle  60 deg\n}\n',
  'pull nothing {\n}\n',
].join('');
