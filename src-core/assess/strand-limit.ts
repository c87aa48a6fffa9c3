import { isWire } from '../model/line-make.ts';
import { isUnknown, type Cause } from '../mechanics/derivation.ts';
import type { Source } from '../trade/source.ts';
import { sources } from '../trade/sources.ts';
import type { LineFacts } from './line-facts.ts';

/** From how many cut strands near each other a line is cut out. */
export interface StrandLimit {
  readonly limit: number;
  readonly source: Source;
  /** Set where a line of fewer strands than twelve reaches the limit sooner. */
  readonly ofFew: number | undefined;
  /** Why fewer cut strands may be too many already; undefined where it is known that they are not. */
  readonly unless: Cause | undefined;
}

/** The trade's limit is that of a twelve-strand line: of fewer strands the same share is lost with fewer of them. */
const strandsOfPractice = 12;

export function strandLimit({ practice, strands, block }: Pick<LineFacts, 'practice' | 'strands' | 'block'>): StrandLimit {
  if (isWire(block)) return { limit: 1, source: sources['29-cfr-1926-1413'], ofFew: undefined, unless: undefined };
  const most = practice.number('cut-strands-limit', 'low');
  const source = sources['practice-cut-strands'];
  if (isUnknown(strands)) return { limit: most, source, ofFew: undefined, unless: most > 1 ? strands.unknown : undefined };
  const n = strands.amount.low;
  const limit = Math.max(1, Math.ceil(most * Math.min(1, n / strandsOfPractice) - 1e-9));
  return { limit, source, ofFew: limit < most ? n : undefined, unless: undefined };
}
