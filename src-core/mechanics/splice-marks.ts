import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { asGiven, isUnknown, type Known, type Value } from './derivation.ts';
import { entryMark } from './entry-mark.ts';
import { exitMark } from './exit-mark.ts';

export type MarkName = 'tail end' | 'taper start' | 'throat mark' | 'entry mark' | 'exit mark';

export interface SpliceMark {
  readonly name: MarkName;
  readonly meaning: string;
  /** From the tail end, along the line as it lies before it is spliced. */
  readonly at: Value;
}

export interface EyeSpliceInputs {
  /** Taper included. */
  readonly bury: Value;
  /** Left out for a blunt tail. */
  readonly taper?: Value | undefined;
  /** Length of line around the eye. */
  readonly eyeLoop: Value;
  /** Share by which the standing part shortens over the buried tail. */
  readonly shortening: Value;
}

/** The marks of an eye splice in the order in which they lie from the tail end. A mark that cannot be placed is unknown alone. */
export function spliceMarks({ bury: T, taper, eyeLoop: E, shortening: c }: EyeSpliceInputs): Known<readonly SpliceMark[]> {
  if (isUnknown(T)) return T;
  const marks: SpliceMark[] = [
    { name: 'tail end', meaning: 'the cut end, from which the other marks are measured', at: { amount: exactly(0), kind: 'length', origin: { from: 'constant', source: sources['lengths-add'] } } },
  ];
  if (taper !== undefined) marks.push({ name: 'taper start', meaning: 'strands come out from here to the tail end', at: taper });
  marks.push(
    { name: 'throat mark', meaning: 'meets the entry mark at the throat of the eye when the tail is in', at: T },
    { name: 'entry mark', meaning: 'the tail enters the standing part here', at: asGiven(entryMark({ T, E })) },
    { name: 'exit mark', meaning: 'the tail comes out here, and slips back in as the standing part is smoothed', at: asGiven(exitMark({ T, E, c })) },
  );
  return marks;
}
