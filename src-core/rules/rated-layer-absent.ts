import { isAbove } from '../base/compare.ts';
import type { AssessedWinch } from '../assess/assess-winch.ts';
import { showValue } from '../assess/show.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { layersThatFit } from '../mechanics/layers-that-fit.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { defineRule } from './rule.ts';

const noFreeboard: Given = { amount: exactly(0), kind: 'needed length', origin: { from: 'constant', source: sources.geometry } };

/** Layers whose every wrap lies below the edge of the flange. */
const wholeLayers = ({ flange, barrel, diameter }: AssessedWinch): Value => asGiven(layersThatFit({ A: flange, B: barrel, d: diameter, f: noFreeboard }));

/** Whether all of the layer that the winch is rated on would lie above its flange; undefined where that is not known. */
export function ratedLayerIsAbsent(winch: AssessedWinch): boolean | undefined {
  const layers = wholeLayers(winch);
  if (isUnknown(winch.ratedLayer) || isUnknown(layers)) return undefined;
  // The layer behind the last whole one may still have begun.
  return isAbove(winch.ratedLayer.amount.low, layers.amount.high + 1);
}

export const ratedLayerAbsent = defineRule({
  name: 'rated-layer-absent',
  on: 'winch',
  severity: 'error',
  summary: 'The winch is rated on a layer that its drum does not have.',
  why: 'the pull on every other layer follows from that one, so each comes out too high',
  source: 'geometry of the drum',
  bad: `winch bow-winch {
  rated    42 kN at layer 7
  barrel   64 mm
  width    230 mm
  flange   165 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    25 m
}
`,
  good: `winch bow-winch {
  rated    42 kN at layer 3
  barrel   64 mm
  width    230 mm
  flange   165 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    25 m
}
`,
  check(winch, judge) {
    const { ratedLayer, name, block } = winch;
    if (isUnknown(ratedLayer) || ratedLayer.amount.high <= 1) return;
    const place = ratedLayer.origin.from === 'written' ? ratedLayer.origin.place : block.namePlace;
    const layers = wholeLayers(winch);
    if (isUnknown(layers)) return judge.cannot(layers.unknown, place);
    judge.holds(ratedLayerIsAbsent(winch) !== true, () => ({
      place,
      message: `\`${name}\` is rated on layer ${showValue(ratedLayer)}, and ${showValue(layers)} ${isUnknown(layers) || layers.amount.high === 1 ? 'layer of its line fits' : 'layers of its line fit'} below its flange`,
      help: 'read the plate and measure `barrel` and `flange` again; where the plate means another line, write its rating on the first layer',
    }));
  },
});
