import type { AssessedKit, NeedSort } from '../assess/assess-kit.ts';
import type { Judge } from './judge.ts';

/** Judges what every plan takes of one sort; what a plan lacks is said once, at the first bag. */
export function judgeKit(kit: AssessedKit, judge: Judge, sort: NeedSort, help: string): void {
  const said = new Set<string>();
  for (const { plan, name, needs } of kit.plans) {
    const wanted = needs.filter((need) => need.sort === sort);
    for (const { has } of wanted) if (typeof has === 'object') judge.cannot(has, kit.block.namePlace);
    const told = wanted.filter((need) => typeof need.has === 'boolean');
    if (told.length === 0) continue;
    const lacking = [...new Set(told.filter((need) => need.has === false).map((need) => need.says))].filter((says) => !said.has(says));
    for (const says of lacking) said.add(says);
    judge.holds(lacking.length === 0, () => ({
      place: kit.block.namePlace,
      message: `\`${kit.name}\` lacks ${lacking.join(', ')}, which \`${name}\` needs`,
      help,
      related: [{ place: plan.namePlace, message: 'the plan that needs it' }],
    }));
  }
}
