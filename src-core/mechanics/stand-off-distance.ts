import { sources } from '../trade/sources.ts';
import { defineCalculation } from './define-calculation.ts';
import { isUnknown, type Derived, type Value } from './derivation.ts';

export const standOffDistance = defineCalculation({
  name: 'stand-off-distance',
  means: 'least distance of everybody who does not run the winch',
  symbol: 'D',
  kind: 'distance',
  formula: 'D = L',
  symbols: { L: { meaning: 'length of the longest line in use', kind: 'distance', above: 0 } },
  sources: [sources['tm-9-2320-356-bd']],
  assumptions: ['in every direction'],
  compute: ({ L }) => L,
  worked: [],
  noExample: 'the manual gives the rule, no closer than the longest line, and no distance',
});

/** Stand-off from every line in use; unknown as soon as one length is, because that one may be the longest. */
export function standOffFrom(lines: readonly [Value, ...Value[]]): Derived {
  let longest = lines[0];
  for (const line of lines) {
    if (isUnknown(line)) return line;
    if (isUnknown(longest) || line.amount.high > longest.amount.high) longest = line;
  }
  return standOffDistance({ L: longest });
}
