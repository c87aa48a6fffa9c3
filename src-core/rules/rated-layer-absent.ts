import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { drumExample } from './example-blocks.ts';
import { defineRule } from './rule.ts';

export const ratedLayerAbsent = defineRule({
  name: 'rated-layer-absent',
  on: 'winch',
  severity: 'error',
  summary: 'The winch is rated on a layer that its drum does not have.',
  why: 'the pull on every other layer follows from that one, and is not known without it',
  source: 'geometry of the drum',
  bad: drumExample({ rated: '42 kN at layer 7' }),
  good: drumExample({ rated: '42 kN at layer 3' }),
  check(winch, judge) {
    const { ratedLayer, name, block } = winch;
    if (isUnknown(ratedLayer) || ratedLayer.amount.high <= 1) return;
    const place = ratedLayer.origin.from === 'written' ? ratedLayer.origin.place : block.namePlace;
    const layers = winch.layersBelowEdge;
    if (isUnknown(layers)) return judge.cannot(layers.unknown, place);
    judge.holds(!winch.isRatedLayerAbsent, () => ({
      place,
      message: `\`${name}\` is rated on layer ${showValue(ratedLayer)}, and ${showValue(layers)} ${isUnknown(layers) || layers.amount.high === 1 ? 'layer of its line fits' : 'layers of its line fit'} below its flange`,
      help: 'read the plate and measure `barrel` and `flange` again; where the plate means another line, write its rating on the first layer',
    }));
  },
});
