import { measures } from '../measures.ts';
import { choice, count, defineBlock, label, maybe, name, newName, quantity, statement } from '../shape.ts';

export const winchBlock = defineBlock({
  head: 'winch',
  summary: 'A winch and its drum: rated pull, sizes, wraps to keep, and the line it carries.',
  header: [newName(), maybe('on', 'the vehicle that carries it', [name('vehicle', ['vehicle'])]), label()],
  statements: [
    statement('rated', 'Rated line pull, and the layer it is rated on (the first unless said otherwise).', [quantity('pull', measures.linePull), maybe('at', 'the layer it is rated on', [{ part: 'clause', word: 'layer', key: 'layer-word', meaning: 'its number, counted from the barrel', parts: [count('layer', 1, 40)] }], 'layer-clause')], 'rated  42 kN at layer 1', { needed: 'pull on every layer', foundOn: 'the rating plate' }),
    statement('barrel', 'Diameter of the bare barrel.', [quantity('barrel', measures.drumDiameter)], 'barrel  64 mm', { needed: 'layers on the drum' }),
    statement('width', 'Width of the drum between its flanges.', [quantity('width', measures.drumWidth)], 'width  230 mm', { needed: 'layers on the drum' }),
    statement('flange', 'Diameter of the flanges.', [quantity('flange', measures.flangeDiameter)], 'flange  165 mm', { needed: 'whether the line fits' }),
    statement('keep', 'Wraps that always stay on the drum.', [count('wraps', 1, 200, ['wraps', 'wrap'])], 'keep  10 wraps'),
    statement('carries', 'The line, or the piece of a line, that is on the drum.', [name('line', ['line', 'piece'])], 'carries  main', { needed: 'everything about the line on the drum' }),
    statement('fairlead', 'What guides the line, and its condition.', [choice('fairlead', { hawse: 'hawse fairlead, a smooth slot', roller: 'roller fairlead' }), maybe('condition', 'how smooth it is where the line runs', [choice('condition', { sound: 'smooth all round', scored: 'scored or grooved', sharp: 'a sharp edge or burr', bent: 'bent or seized', corroded: 'pitted by corrosion' })])], 'fairlead  hawse condition sound'),
    statement('sealing', 'Protection class of the housing by IEC 60529.', [{ part: 'marking', key: 'class', pattern: 'IP[0-6X][0-9X]K?', example: 'IP68' }, maybe('depth', 'depth that its maker states', [quantity('depth', measures.depth)]), maybe('for', 'time that its maker states', [quantity('time', measures.runTime)])], 'sealing  IP68'),
    statement('speed', 'Line speed, and the layer it is given for.', [quantity('speed', measures.lineSpeed), maybe('at', 'the layer it is given for', [{ part: 'clause', word: 'layer', key: 'layer-word', meaning: 'its number, counted from the barrel', parts: [count('layer', 1, 40)] }], 'layer-clause')], 'speed  4 m/min at layer 1'),
    statement('duty', 'How long it may run at full load, and how long it rests then.', [quantity('run', measures.runTime), maybe('rest', 'how long it rests', [quantity('rest', measures.runTime)])], 'duty  3 min rest 10 min'),
    statement('brake', 'Where the brake sits: inside the drum it heats the line.', [choice('brake', { 'in-drum': 'inside the barrel, under the line', outside: 'away from the line' })], 'brake  in-drum'),
    statement('drive', 'What drives it.', [choice('drive', { electric: 'electric motor', hydraulic: 'hydraulic motor', mechanical: 'from the vehicle\'s gearbox', hand: 'by hand' })], 'drive  electric'),
  ],
  example: `winch bow-winch {
  rated   42 kN at layer 1
  barrel  64 mm
  width   230 mm
  flange  165 mm
  keep    10 wraps
}
`,
});
