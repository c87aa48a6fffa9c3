import type { Token } from '../syntax/tree.ts';
import { bindQuantity } from './bind-quantity.ts';
import type { BoundLink } from './bound.ts';
import { clip } from './describe-part.ts';
import type { StatementReading } from './statement-reading.ts';

/** Links joined by arrows. */
export function bindRoute(reading: StatementReading, key: string): void {
  const links: BoundLink[] = [];
  const start = reading.tokens[reading.at]!.start;
  let needArrow = false;
  while (reading.at < reading.tokens.length) {
    const token = reading.tokens[reading.at]!;
    if (needArrow) {
      if (token.kind !== 'arrow') {
        reading.failed = true;
        reading.report('unexpected-value', token, `\`${clip(token.text)}\` stands where an arrow is meant`, 'join links with `->`');
        break;
      }
      reading.at++;
      needArrow = false;
      continue;
    }
    const link = token.kind === 'word' ? linkAt(reading, token) : undefined;
    if (link === undefined) {
      if (!reading.failed) reading.report('unexpected-value', token, `\`${clip(token.text)}\` stands where a link is meant`, 'write a name, such as `main outboard`, or gear by size, such as `shackle bow 19 mm`');
      reading.failed = true;
      break;
    }
    links.push(link);
    needArrow = true;
  }
  const last = reading.tokens[Math.max(0, Math.min(reading.at, reading.tokens.length) - 1)]!;
  const span = { start, end: last.end };
  if (!reading.failed && (!needArrow || links.length < 2)) {
    reading.failed = true;
    reading.report('missing-value', span, needArrow ? 'a route needs at least two links' : 'this route ends with an arrow and no link', 'write it like `main outboard -> bow-22 -> larch`');
  }
  if (reading.failed) reading.break(key);
  else {
    reading.values.set(key, { type: 'route', place: reading.place(span), links });
    for (const link of links) if (link.link === 'name') (reading.names ??= []).push({ name: link.name, place: link.namePlace, of: 'link' });
  }
}

function linkAt(reading: StatementReading, token: Token): BoundLink | undefined {
  reading.at++;
  const next = reading.tokens[reading.at];
  if ((token.text === 'shackle' || token.text === 'soft-shackle') && next !== undefined && next.kind !== 'arrow') {
    let form: string | undefined;
    if (next.kind === 'word' && (next.text === 'bow' || next.text === 'dee')) {
      form = next.text;
      reading.at++;
    }
    const sizeToken = reading.tokens[reading.at];
    if (sizeToken !== undefined && (sizeToken.kind === 'number' || sizeToken.kind === 'fraction')) {
      const size = bindQuantity(reading, { kind: 'diameter', above: 0, max: 0.3, example: '19 mm' }, `the size of \`${token.text}\``);
      if (size === undefined) {
        reading.failed = true;
        return undefined;
      }
      const standard = reading.tokens[reading.at];
      const named = standard?.kind === 'word' && (standard.text === 'AS-2741' || standard.text === 'RR-C-271') ? standard.text : undefined;
      if (named !== undefined) reading.at++;
      return { link: 'sized', place: reading.place({ start: token.start, end: reading.tokens[reading.at - 1]!.end }), gear: token.text, size, ...(form ? { form } : {}), ...(named ? { standard: named } : {}) };
    }
    if (form !== undefined) return undefined;
  }
  const part = next?.kind === 'word' ? next : undefined;
  if (part !== undefined) reading.at++;
  return { link: 'name', place: reading.place({ start: token.start, end: (part ?? token).end }), name: token.text, namePlace: reading.place(token), ...(part ? { part: { name: part.text, place: reading.place(part) } } : {}) };
}
