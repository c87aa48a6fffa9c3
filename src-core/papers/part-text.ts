import { dimensions, kinds } from '../units/dimension.ts';
import type { Measure, Part } from '../vocabulary/shape.ts';

const measured = (measure: Measure): string => {
  const { dimension } = kinds[measure.kind];
  const what = measure.load === true ? 'force or mass' : dimension === 'ratio' ? 'share' : dimension.replace('-', ' ');
  return `${what}${measure.diameters === true && dimension !== 'diameters' ? ' or diameters' : ''}`;
};

/** A part as it stands in a signature: `LENGTH`, `[taper LENGTH]`, `at DISTANCE from END`. */
export function partText(part: Part): string {
  const plain = ((): string => {
    switch (part.part) {
      case 'new-name':
      case 'name':
        return part.key === 'name' ? 'NAME' : part.key.toUpperCase();
      case 'quantity':
        return measured(part.measure).toUpperCase().replaceAll(' OR ', ' or ');
      case 'count':
        return part.noun === undefined ? 'COUNT' : `COUNT ${part.noun[0]}`;
      case 'choice':
        return Object.keys(part.of).length <= 4 ? Object.keys(part.of).join('|') : part.key.toUpperCase();
      case 'text':
        return '"..."';
      case 'date':
        return 'DATE';
      case 'marking':
        return part.example;
      case 'flag':
        return part.word;
      case 'clause':
        return [part.word, ...part.parts.map(partText)].join(' ');
      case 'station':
        return part.stretch ? 'at|from ... inboard|outboard' : 'at DISTANCE from inboard|outboard';
      case 'route':
        return 'LINK -> LINK ...';
    }
  })();
  return 'optional' in part && part.optional === true ? `[${plain}]` : plain;
}

/** What a part is for, in words. */
export function partMeaning(part: Part): string {
  switch (part.part) {
    case 'new-name':
      return 'a name that is declared here';
    case 'name':
      return `the name of ${part.of.map((kind) => `${/^[aeiou]/.test(kind) ? 'an' : 'a'} ${kind}`).join(' or ')}`;
    case 'quantity':
      return `${part.measure.kind}: a ${measured(part.measure)}, such as \`${part.measure.example}\` (${dimensions[kinds[part.measure.kind].dimension].si || 'no unit'} inside)`;
    case 'count':
      return `a whole number from ${part.min} to ${part.max}`;
    case 'choice':
      return Object.entries(part.of).map(([word, meaning]) => `\`${word}\`: ${meaning}`).join('\n\n');
    case 'text':
    case 'flag':
    case 'clause':
      return part.meaning;
    case 'date':
      return 'a date, year-month-day';
    case 'marking':
      return `a marking such as \`${part.example}\``;
    case 'station':
      return 'a position on the line: its distance, and from which end';
    case 'route':
      return 'links in order, joined by arrows';
  }
}
