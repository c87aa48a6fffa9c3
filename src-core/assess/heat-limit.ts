import { isUnknown, unknown, type Value } from '../mechanics/derivation.ts';
import type { LineFacts } from './line-facts.ts';

/** Temperature from which a line loses strength. */
export function heatLimit({ material, materialCause, practice }: LineFacts): Value {
  if (materialCause !== undefined) return unknown(materialCause);
  const known = practice.value('heat-limit', material);
  return isUnknown(known) ? unknown({ ...known.unknown, says: `no heat limit for ${material} was found`, help: 'ask its maker, and look for glaze where it was hot' }) : known;
}
