import { show } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { defineRule } from './rule.ts';

export const ratedLayerNotFirst = defineRule({
  name: 'rated-layer-not-first',
  on: 'winch',
  severity: 'information',
  summary: 'The winch is rated on an outer layer, so on the first it pulls harder than its rating.',
  why: 'the same drum torque pulls harder on a smaller layer; line and gear must hold what the first layer gives',
  source: 'SAE J706, rated line pull: a single line on the first layer, as quoted in the trade; mechanics of the drum',
  bad: `winch bow-winch {
  rated    42 kN at layer 3
  barrel   64 mm
  width    230 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  good: `winch bow-winch {
  rated    42 kN at layer 1
  barrel   64 mm
  width    230 mm
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
}
`,
  check(winch, judge) {
    const { ratedLayer, ratedPull, block } = winch;
    if (isUnknown(ratedLayer) || isUnknown(ratedPull) || ratedLayer.amount.low <= 1 || winch.isRatedLayerAbsent) return;
    const place = ratedLayer.origin.from === 'written' ? ratedLayer.origin.place : block.namePlace;
    const first = asGiven(winch.firstLayerPull);
    if (isUnknown(first)) return judge.cannot(first.unknown, place);
    judge.holds(false, () => ({
      place,
      message: `\`${winch.name}\` is rated ${show(ratedPull)} on layer ${show(ratedLayer)}; on the first layer it pulls ${show(first, { careful: 'up' })}`,
      help: 'what it can pull is judged with the figure of the first layer; where the plate means the first layer, write `at layer 1`',
    }));
  },
});
