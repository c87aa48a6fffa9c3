import { measures } from '../measures.ts';
import { choice, clause, count, defineBlock, flag, label, maybe, maybeNewName, name, newName, note, quantity, statement, type Measure, type StatementDefinition } from '../shape.ts';
import { lineWork, materials } from './line.ts';

export const anchorBlock = defineBlock({
  head: 'anchor',
  summary: 'What the far end is made fast to.',
  header: [newName(), label()],
  statements: [
    statement('kind', 'What it is.', [choice('kind', { tree: 'a living tree', rock: 'a rock', vehicle: 'a braked vehicle', 'buried-log': 'a buried log (deadman)', pickets: 'a picket holdfast', 'ground-anchor': 'a ground anchor' })], 'kind  tree', { needed: 'what it holds' }),
    statement('girth', 'Girth of a tree at the strap.', [quantity('girth', measures.girth)], 'girth  1.3 m'),
    statement('holding', 'What it holds, by a test or by somebody who answers for the figure.', [quantity('holding', measures.holding), note('who says so')], 'holding  40 kN "tested 2026-05-02"'),
    statement('vehicle', 'The vehicle that stands as the anchor, every wheel braked. A route ends at the anchor and the point: `parked stern`.', [name('vehicle', ['vehicle'])], 'vehicle  dipper', { needed: 'what a braked vehicle holds' }),
    statement('soil', 'The ground that holds it.', [choice('soil', { loam: 'loam', hardpan: 'hardpan or rock', wet: 'fine-grained wet, or sandy' })], 'soil  loam', { needed: 'what a buried log or pickets hold' }),
    statement('log', 'A buried log: its length, and the width of the face that bears.', [quantity('length', measures.gearLength), clause('face', 'width of the bearing face', [quantity('face', measures.gearWidth)])], 'log  1.8 m face 30 cm', { needed: 'what a buried log holds' }),
    statement('depth', 'Depth of a buried log, mean.', [quantity('depth', measures.depth)], 'depth  1.5 m', { needed: 'what a buried log holds' }),
    statement('slope', 'Slope of the pull on a buried log: one up in so many along.', [count('one-in', 1, 100)], 'slope  3', { needed: 'what a buried log holds' }),
    statement('pickets', 'How the pickets are combined.', [choice('pickets', { single: 'a single picket', 'one-one-one': 'three in line (1-1-1)', 'three-two-one': 'three, two and one (3-2-1)' })], 'pickets  three-two-one', { needed: 'what pickets hold' }),
  ],
  example: `anchor larch {
  kind   tree
  girth  1.3 m
}
`,
});

export const chainBlock = defineBlock({
  head: 'chain',
  summary: 'What hangs on what, in order from the winch line to the anchor or the load.',
  header: [newName(), maybe('after', 'a repair that is carried out first', [name('repair', ['repair'])]), label()],
  statements: [
    statement('out', 'Line out when this chain is loaded. Without it the longest `reach` of the pulls through it counts, and without one the most that the winch can pull.', [quantity('out', measures.distance)], 'out  21 m'),
    statement('with', 'The winch that loads it, when it is not the one that carries its first line.', [name('winch', ['winch'])], 'with  bow-winch'),
  ],
  headless: statement('', 'Links in order, joined by arrows: a line with its end, gear by name, or gear by size.', [{ part: 'route', key: 'route' }], 'main outboard -> bow-22 -> trunk -> larch', { many: true }),
  example: `chain reach {
  bow-22 -> trunk -> larch
}

shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

strap trunk {
  wll  4 t
}

anchor larch {
  kind  tree
}
`,
});

export const surfaces = {
  'hard-road': 'hard road', grass: 'grass', 'hard-wet-sand': 'hard wet sand', gravel: 'gravel', snow: 'snow', 'soft-wet-sand': 'soft wet sand', 'soft-dry-sand': 'soft dry sand', 'shallow-mud': 'shallow mud', bog: 'bog, marsh or clinging clay',
};

const floorArea: Measure = { kind: 'area', above: 0, max: 100, example: '2.8 m2' };

export const pullBlock = defineBlock({
  head: 'pull',
  summary: 'A pull that is intended: what is pulled, over what, through which chain.',
  header: [newName(), clause('with', 'the winch that pulls', [name('winch', ['winch'])]), maybe('through', 'the chain it pulls through', [name('chain', ['chain'])]), label()],
  statements: [
    statement('load', 'What is pulled: a vehicle of this file, or a load by its weight. A weight behind a vehicle replaces its mass for this pull.', [
      name('vehicle', ['vehicle'], { optional: true }),
      quantity('weight', measures.weight, { optional: true }),
      maybe('water', 'depth of water that stands inside and comes out with it', [quantity('water', measures.depth), clause('over', 'floor area that holds it', [quantity('over', floorArea)])]),
      note('who weighed it'),
    ], 'load  plover', { needed: 'the pull that is needed' }),
    statement('surface', 'What it is pulled over. `takes` gives the share of the weight that it takes, measured or vouched for.', [choice('surface', surfaces), maybe('takes', 'share of the weight that the ground takes', [quantity('takes', measures.share)]), note('who says so')], 'surface  gravel', { needed: 'the pull that is needed' }),
    statement('grade', 'How steep the way is, up.', [choice('flat', { level: 'no slope' }, { optional: true }), quantity('grade', measures.grade, { optional: true })], 'grade  12 deg', { needed: 'the pull that is needed' }),
    statement('mired', 'How deep it is sunk.', [choice('mired', { no: 'it stands on top of the ground', 'to-wheels': 'to the sidewalls of the wheels', 'to-hubs': 'to the hubs or fenders', 'to-frame': 'to the frame or cab' })], 'mired  to-hubs', { needed: 'the pull that is needed' }),
    statement('dragging', 'Wheels that do not turn, of all that it stands on.', [choice('turning', { none: 'every wheel turns', all: 'nothing turns: a log, a sledge, a load on its belly' }, { optional: true }), count('wheels', 1, 20, ['wheels', 'wheel'], { optional: true }), maybe('of', 'how many wheels it stands on', [count('of', 1, 40)])], 'dragging  2 wheels of 4', { needed: 'the pull that is needed' }),
    statement('resistance', 'Resistance of the load, measured or vouched for. It replaces what ground, grade, mire and wheels are taken to make.', [quantity('resistance', measures.pull), note('who says so')], 'resistance  9 kN "load cell, 2026-05-17"'),
    statement('reach', 'Distance along the line between what stands and what moves: from the winch to the anchor or the load, behind a block that only turns the line from that block on.', [quantity('reach', measures.distance)], 'reach  21 m', { needed: 'line out and layer' }),
    statement('via', 'A block on the way, in the order in which the line meets them from the winch. A route of the chain that begins with the block says what holds it; so does `on`.', [name('block', ['block']), choice('moves', { fixed: 'made fast to what stands: it turns the line', travelling: 'made fast to the load: it moves with it' }), maybe('on', 'what it is made fast to', [name('anchor', ['anchor', 'vehicle', 'strap', 'shackle', 'soft-shackle', 'ring'])]), maybe('angle', 'angle between the two parts of the line', [quantity('angle', measures.angle)]), maybe('after', 'distance along the line from the winch or the block before', [quantity('after', measures.distance)])], 'via  snatch fixed on larch angle 90 deg', { many: true }),
    statement('off-square', 'Angle between the line where it reaches the winch and the way square to the drum. Left out, it follows from the places where the winch goes with the load; a vehicle that stands may face anywhere.', [quantity('angle', measures.angle)], 'off-square  10 deg'),
    statement('back-to', 'What the line\'s end is made fast to, where no chain says it: the vehicle\'s own point, or an anchor.', [name('target', ['vehicle', 'anchor'])], 'back-to  plover'),
    statement('bridle', 'Angle between the two legs of a bridle: of the one that the chain ends in, else of the one that holds a block.', [quantity('bridle', measures.angle)], 'bridle  60 deg', { needed: 'the load on each leg' }),
    statement('stands', 'Where something stands in plan, seen from the load and looking the way it is meant to go.', [name('what', ['vehicle', 'anchor', 'block', 'winch']), maybe('ahead', 'distance ahead', [quantity('ahead', measures.distance)]), maybe('behind', 'distance behind', [quantity('behind', measures.distance)]), maybe('left', 'distance to the left', [quantity('left', measures.distance)]), maybe('right', 'distance to the right', [quantity('right', measures.distance)])], 'stands  larch ahead 18 m left 4 m', { many: true }),
    statement('footing', 'How the ground lies under a vehicle that holds, the one with the winch among them: on a slope its own weight pulls with the load.', [name('vehicle', ['vehicle']), choice('footing', { level: 'on level ground', 'on-slope': 'on the slope that the load is pulled up' }), flag('firm', 'on firm ground, whatever the load lies in')], 'footing  dipper level', { many: true }),
    statement('stretch', 'Elongation of the line at this pull, from its maker.', [quantity('stretch', measures.share)], 'stretch  3 %'),
    statement('people', 'How far off everybody keeps who does not run the winch, at least.', [quantity('people', measures.distance)], 'people  35 m', { needed: 'whether they stand farther off than the longest line' }),
  ],
  example: `pull out with bow-winch through to-the-larch {
  load      plover
  surface   gravel
  grade     12 deg
  mired     no
  dragging  none
  reach     18 m
  people    35 m
}

chain to-the-larch {
  bow-22 -> larch
}

shackle bow-22 {
  body  22 mm
  wll   6.5 t
}

anchor larch {
  kind     tree
  holding  40 kN "tested 2026-05-02"
}

winch bow-winch {
  rated  42 kN
}

vehicle plover {
  mass  2,650 kg
}
`,
});

export const repairBlock = defineBlock({
  head: 'repair',
  summary: 'Cuts and splices not yet made, for review. Every position is measured on the line as it lies before the repair begins.',
  header: [newName(), clause('on', 'the line that is repaired', [name('line', ['line'])]), label('why, and until when')],
  statements: [
    lineWork.cut('cut  at 7.6 m from inboard'),
    lineWork.splice('splice  outboard eye thimble tube bury 72 d taper 24 d'),
    lineWork.join('join  main to tail bury 72 d taper 24 d'),
    lineWork.reversed('reversed'),
  ],
  example: `repair field-fix on main "trackside, until we are home" {
  cut     at 27 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d temporary
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
});

const value = (head: string, summary: string, parts: StatementDefinition['parts'], example: string): StatementDefinition => statement(head, summary, [...parts, note('where the figure comes from')], example, { many: true });

/** Every value of practice: its head is the key of the built-in value that it replaces. */
export const practiceBlock = defineBlock({
  head: 'practice',
  summary: 'The shop\'s own limits, with where they come from. Each replaces a built-in one, visibly.',
  header: [maybeNewName(), label('whose practice this is')],
  statements: [
    value('bury', 'Least bury of an eye in hollow braid, by material.', [choice('material', materials), quantity('bury', measures.diameters)], 'bury  HMPE 63 d "maker\'s splicing sheet"'),
    value('taper', 'Least taper within the bury, by material.', [choice('material', materials), quantity('taper', measures.diameters)], 'taper  HMPE 21 d'),
    value('keep-wraps', 'Least wraps kept on the drum, by material.', [choice('material', materials), count('wraps', 1, 200, ['wraps', 'wrap'])], 'keep-wraps  HMPE 10 wraps'),
    value('line-factor', 'Breaking strength of the line over the winch\'s greatest pull, at least.', [quantity('factor', { kind: 'needed count', above: 0.99, max: 20, example: '2' })], 'line-factor  2 "club rule 4"'),
    value('design-factor', 'Breaking strength over working limit for gear that gives only one of them, by kind of gear.', [choice('gear', { shackle: 'steel shackles', 'soft-shackle': 'soft shackles', strap: 'straps and slings', block: 'pulley blocks', ring: 'rings', hook: 'hooks', line: 'fibre lines', point: 'recovery points of vehicles' }), quantity('factor', { kind: 'needed count', above: 0.99, max: 20, example: '5' })], 'design-factor  strap 5'),
    value('temporary-life', 'How long a temporary splice may stay.', [quantity('life', measures.life)], 'temporary-life  30 days'),
    value('inspection-interval', 'Longest time between inspections.', [quantity('life', measures.life)], 'inspection-interval  6 months'),
    value('washing-interval', 'Longest time between washes.', [quantity('life', measures.life)], 'washing-interval  6 months'),
    value('freeboard', 'Least height of the flange above the outermost layer, in diameters of the line.', [quantity('freeboard', measures.diameters)], 'freeboard  1 d'),
    value('cut-strands-limit', 'Cut strands near each other from which a line of twelve strands is cut out. A line of fewer reaches the same share with fewer.', [count('strands', 1, 12, ['strands', 'strand'])], 'cut-strands-limit  2 strands'),
    value('near', 'Damage within this distance counts as one place, in diameters of the line.', [quantity('near', measures.diameters)], 'near  72 d'),
    value('abrasion-retire', 'Share of strand volume lost at which a line is cut out.', [quantity('share', measures.share)], 'abrasion-retire  25 %'),
    value('splice-efficiency', 'Share of strength that a full splice keeps.', [quantity('share', measures.factor)], 'splice-efficiency  90 %'),
    value('overload-share', 'Share of breaking strength from which a pull counts as an overload.', [quantity('share', measures.factor)], 'overload-share  75 %'),
    value('eye-size', 'Line around an eye whose size is not written, in diameters of the line.', [quantity('size', measures.diameters)], 'eye-size  25 d'),
    value('splice-shortening', 'Share by which the standing part shortens over a buried tail, when the crew has measured it.', [quantity('share', measures.factor)], 'splice-shortening  18 %'),
    value('heat-limit', 'Temperature from which line of a material loses strength.', [choice('material', materials), quantity('temperature', measures.temperature)], 'heat-limit  HMPE 65 degC'),
    value('knot-strength', 'Share of breaking strength left in a knot, by material.', [choice('material', materials), quantity('share', measures.factor)], 'knot-strength  polyester 50 %'),
    value('wet-loss', 'Share of strength that wet line loses, by material.', [choice('material', materials), quantity('share', measures.share)], 'wet-loss  nylon 15 %'),
    value('abrasion-share', 'Share of strand volume that a word of wear is counted as.', [choice('wear', { light: 'light wear', moderate: 'moderate wear' }), quantity('share', measures.share)], 'abrasion-share  light 10 %'),
    value('blunt-loss', 'Share of strength lost when a buried tail ends blunt.', [quantity('share', measures.share)], 'blunt-loss  9 %'),
    value('outdoor-loss', 'Share of strength lost outdoors in the outdoor time.', [quantity('share', measures.share)], 'outdoor-loss  30 %'),
    value('outdoor-time', 'Time outdoors in which the outdoor loss comes about.', [quantity('life', measures.life)], 'outdoor-time  2 years'),
    value('fleet-angle-most', 'Greatest angle off square at which line still spools evenly.', [quantity('angle', measures.angle)], 'fleet-angle-most  1.5 deg'),
    value('spooling-tension', 'Least load that a line is wound on under.', [quantity('load', measures.load)], 'spooling-tension  230 kgf'),
    value('sheave-loss', 'Share of the tension lost at a block, by its bearing.', [choice('bearing', { plain: 'on a plain pin or bush', roller: 'on rollers or balls' }), quantity('share', measures.share)], 'sheave-loss  plain 10 %'),
    value('severity', 'How a finding is shown. An error, a finding that compares with a rating and a fact that is not given cannot be lowered.', [{ part: 'marking', key: 'rule', pattern: '[a-z]+(-[a-z]+)*', example: 'taper-missing' }, choice('level', { error: 'shown as an error', warning: 'shown as a warning', information: 'shown as information', hint: 'shown as a hint', off: 'not shown' })], 'severity  taper-missing information'),
  ],
  example: `practice "Tarn Hut supply crew" {
  line-factor  2 "crew rule 4: line at twice the winch"
}
`,
});

