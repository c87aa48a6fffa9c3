import { kinds } from '../units/dimension.ts';
import type { Measure, NameKind, Part } from '../vocabulary/shape.ts';
import { blockNamed } from '../vocabulary/vocabulary.ts';

export const clip = (text: string): string => ([...text].length > 40 ? [...text].slice(0, 39).join('') + '…' : text);

const wordCache = new WeakMap<readonly Part[], ReadonlySet<string>>();

/** Words that mean something by themselves in a statement with these parts. */
export function lineWords(parts: readonly Part[]): ReadonlySet<string> {
  let words = wordCache.get(parts);
  if (words !== undefined) return words;
  const set = new Set<string>();
  const visit = (list: readonly Part[]): void => {
    for (const part of list) {
      if (part.part === 'clause') {
        set.add(part.word);
        visit(part.parts);
      } else if (part.part === 'flag') set.add(part.word);
      else if (part.part === 'choice') for (const w of Object.keys(part.of)) set.add(w);
      else if (part.part === 'count') for (const w of part.noun ?? []) set.add(w);
      else if (part.part === 'station') for (const w of ['at', 'from', 'to', 'inboard', 'outboard']) set.add(w);
    }
  };
  visit(parts);
  words = set;
  wordCache.set(parts, words);
  return words;
}

export function describeMeasure(measure: Measure): string {
  if (measure.load === true) return `a load as a force or a mass, such as ${measure.example}`;
  const dimension = kinds[measure.kind].dimension;
  if (dimension === 'count') return `a plain number, such as ${measure.example}`;
  if (dimension === 'diameters') return `a number of diameters, such as ${measure.example}`;
  const also = measure.diameters ? ', or a number of diameters' : measure.share ? ' or a share' : '';
  return `${/^[aeiou]/.test(dimension) ? 'an' : 'a'} ${dimension === 'ratio' ? 'share' : dimension.replace('-', ' ')}${also}, such as ${measure.example}${measure.share ? ' or 20 %' : ''}`;
}

export function describePart(part: Part): string {
  switch (part.part) {
    case 'new-name':
      return 'a name';
    case 'name':
      return `the name of ${/^[aeiou]/.test(part.of[0]!) ? 'an' : 'a'} ${part.of.slice(0, 3).join(' or ')}`;
    case 'quantity':
      return describeMeasure(part.measure);
    case 'count':
      return part.noun ? `a number of ${part.noun[0]}` : 'a whole number';
    case 'choice':
      return `one of ${Object.keys(part.of).slice(0, 9).join(', ')}`;
    case 'text':
      return part.meaning + ' in quotes';
    case 'date':
      return 'a date';
    case 'marking':
      return `a marking such as ${part.example}`;
    case 'flag':
      return `\`${part.word}\``;
    case 'clause':
      return `\`${part.word}\` and ${part.meaning}`;
    case 'station':
      return 'a position, such as `at 8.4 m from inboard`';
    case 'route':
      return 'links joined by arrows';
  }
}

export function examplePart(part: Part): string {
  switch (part.part) {
    case 'quantity':
      return `\`${part.measure.example}\``;
    case 'count':
      return `\`${part.min}${part.noun ? ' ' + part.noun[0] : ''}\``;
    case 'choice':
      return `\`${Object.keys(part.of)[0]}\``;
    case 'clause':
      return `\`${part.word} ${part.parts.map((p) => examplePart(p).replaceAll('`', '')).join(' ')}\``;
    case 'station':
      return '`at 8.4 m from inboard`';
    case 'text':
      return '`"..."`';
    case 'date':
      return '`2026-06-21`';
    case 'marking':
      return `\`${part.example}\``;
    case 'flag':
      return `\`${part.word}\``;
    case 'name':
      return `\`${exampleName(part.of[0]!)}\``;
    case 'new-name':
      return `\`${part.key === 'keep' ? exampleName('piece') : exampleName('point')}\``;
    case 'route':
      return '`main outboard -> larch`';
  }
}

/** A name as it stands in the vocabulary's own example of such a block. */
const exampleName = (kind: NameKind): string => (kind === 'piece' ? 'tail' : kind === 'point' ? 'bow' : blockNamed(kind)!.example.split(/\s+/, 2)[1]!);
