import { didYouMean } from '../base/did-you-mean.ts';
import type { Place, Span } from '../base/span.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Token } from '../syntax/tree.ts';
import { kinds, type Dimension } from '../units/dimension.ts';
import { printNumber } from '../units/print.ts';
import { describeDimension, readNumber, readQuantity } from '../units/read-quantity.ts';
import { standardGravity, unitNamed, unitsOf } from '../units/unit-table.ts';
import { ends } from '../vocabulary/blocks/line.ts';
import type { BlockDefinition, Measure, Part, StatementDefinition } from '../vocabulary/shape.ts';
import { clip, describeMeasure, describePart, examplePart, lineWords } from './describe-part.ts';
import type { BoundEnd, BoundLink, BoundName, BoundQuantity, Fix, Problem } from './bound.ts';
import { dateMeant, readDay } from './day.ts';
import { dimensionsOf, pointForComma, rangePassed, saidLimit, unitsForBare } from './quantity-advice.ts';
import { isMisspeltChoice, isPositional, isProse, notAName, unexpected, unknownWord, unquoted, wordBefore, type Reading, type Slip } from './slips.ts';
import { Values } from './values.ts';

/** Most statements are whole, and share this. */
const nothing: ReadonlySet<string> = new Set();

/** Reads the values of one statement against its parts. */
export class ValueBinder {
  readonly values = new Values();
  #broken: Set<string> | undefined;
  readonly #chunk: Chunk;
  readonly #tokens: readonly Token[];
  readonly #subject: string;
  readonly #problems: Problem[];
  readonly #words: ReadonlySet<string>;
  readonly #definition: BlockDefinition | StatementDefinition | undefined;
  /** The names among them. */
  names: BoundName[] | undefined;
  /** Prose without quotes: whatever is wrong within it is part of the same slip. */
  prose: Span | undefined;
  #at = 0;

  /** `subject` names the statement in messages; `definition` says how a whole one is written. */
  constructor(chunk: Chunk, tokens: readonly Token[], subject: string, parts: readonly Part[], problems: Problem[], definition?: BlockDefinition | StatementDefinition) {
    this.#chunk = chunk;
    this.#tokens = tokens;
    this.#subject = subject;
    this.#problems = problems;
    this.#words = lineWords(parts);
    this.#definition = definition;
  }

  /** The parts that were written wrong or not at all. */
  get broken(): ReadonlySet<string> {
    return this.#broken ?? nothing;
  }

  get #example(): string {
    return exampleOf(this.#definition);
  }

  #break(key: string): void {
    this.#broken ??= new Set();
    this.#broken.add(key);
  }

  place(span: Span): Place {
    return { chunk: this.#chunk, start: span.start, end: span.end };
  }

  #report(code: string, span: Span, message: string, help: string, fixes?: readonly Fix[]): void {
    this.#problems.push({ code, place: this.place(span), message, help, ...(fixes ? { fixes } : {}) });
  }

  /** Reads everything; a token that fits nothing is reported once and ends the statement. */
  bindAll(parts: readonly Part[], whole: Span): void {
    const missing = this.#bindParts(parts, true, `\`${this.#subject}\``);
    const token = this.#tokens[this.#at];
    const unnamed = missing.find((part) => part.part === 'new-name');
    if (token !== undefined && !this.#failed) this.#unexpected(token, parts, unnamed !== undefined);
    for (const part of missing) {
      this.#break('key' in part ? part.key : '');
      if (this.#failed) continue;
      const end = this.#tokens.at(-1)?.end ?? whole.end;
      this.#report('missing-value', { start: whole.start, end }, `\`${this.#subject}\` lacks ${describePart(part)}`, `write it like ${part === unnamed && this.#example !== '' ? `\`${this.#example}\`` : examplePart(part)}`);
    }
    if (this.#failed) for (const part of parts) if ('key' in part && !this.values.has(part.key)) this.#break(part.key);
  }

  #failed = false;
  /** A word was not understood: what hangs on it may not be understood either. */
  #unread = false;

  /** Returns the required parts that did not come. */
  #bindParts(parts: readonly Part[], outermost: boolean, subject: string): Part[] {
    const pending = parts.slice();
    while (this.#at < this.#tokens.length && !this.#failed) {
      const token = this.#tokens[this.#at]!;
      let index = 0;
      while (index < pending.length && !this.#canStart(pending[index]!, token, pending)) index++;
      if (index === pending.length) break;
      const part = pending[index]!;
      // Required values come in their order; one that is passed over is missing.
      if (!outermost && index > 0 && isPositional(part) && pending.slice(0, index).some(isPositional)) break;
      pending.splice(index, 1);
      this.#bindPart(part, token, isNumber(part) && hasSeveralNumbers(parts) ? numberOf(part, subject) : subject, parts);
    }
    return pending.length === 0 ? pending : pending.filter((part) => !('optional' in part && part.optional));
  }

  #canStart(part: Part, token: Token, pending: readonly Part[]): boolean {
    switch (part.part) {
      case 'new-name':
      case 'name': {
        if (token.kind !== 'word') return false;
        if (part.optional !== true) return true;
        if (part.part === 'name' && (isProse(this.#reading, pending) || isMisspeltChoice(this.#reading, pending))) return false;
        return !pending.some((other) => other !== part && ((other.part === 'choice' && Object.hasOwn(other.of, token.text)) || ((other.part === 'clause' || other.part === 'flag') && other.word === token.text) || (other.part === 'station' && (token.text === 'at' || token.text === 'from'))));
      }
      case 'quantity': {
        if (token.kind !== 'number' && token.kind !== 'fraction') return false;
        const next = this.#tokens[this.#at + 1];
        return !pending.some((other) => other.part === 'count' && other.nounNeeded === true && next?.kind === 'word' && ((other.noun ?? []) as readonly string[]).includes(next.text));
      }
      case 'count': {
        if (token.kind !== 'number' && token.kind !== 'fraction') return false;
        if (part.nounNeeded !== true) return true;
        const next = this.#tokens[this.#at + 1];
        return next?.kind === 'word' && ((part.noun ?? []) as readonly string[]).includes(next.text);
      }
      case 'choice':
        return token.kind === 'word' && (part.optional !== true || Object.hasOwn(part.of, token.text));
      case 'text':
        return token.kind === 'string' || token.kind === 'open-string';
      case 'date':
        return token.kind === 'date';
      case 'marking':
        return token.kind === 'word';
      case 'flag':
      case 'clause':
        return token.kind === 'word' && token.text === part.word;
      case 'station':
        return token.kind === 'word' && (token.text === 'at' || token.text === 'from');
      case 'route':
        return token.kind === 'word' || token.kind === 'arrow';
    }
  }

  #bindPart(part: Part, token: Token, subject: string, parts: readonly Part[]): void {
    switch (part.part) {
      case 'new-name':
        this.#at++;
        this.values.set(part.key, { type: 'new-name', place: this.place(token), name: token.text });
        return;
      case 'name': {
        this.#at++;
        const named = { type: 'name' as const, place: this.place(token), name: token.text, of: part.of };
        this.values.set(part.key, named);
        (this.names ??= []).push(named);
        return;
      }
      case 'quantity': {
        const value = this.#quantity(part.measure, subject);
        if (value === undefined) this.#break(part.key);
        else this.values.set(part.key, value);
        return;
      }
      case 'count':
        return this.#count(part, token, subject);
      case 'choice':
        this.#at++;
        if (Object.hasOwn(part.of, token.text)) {
          this.values.set(part.key, { type: 'word', place: this.place(token), word: token.text });
        } else {
          this.#break(part.key);
          const before = wordBefore(this.#reading, part, token, parts, subject);
          if (before !== undefined) this.#failed = true;
          else this.#unread = true;
          this.#slip(before ?? unknownWord(token, Object.keys(part.of), subject));
        }
        return;
      case 'text':
        this.#at++;
        this.values.set(part.key, { type: 'text', place: this.place(token), text: token.text.slice(1, token.kind === 'string' ? -1 : undefined) });
        return;
      case 'date': {
        this.#at++;
        const day = this.day(token);
        if (day === undefined) this.#break(part.key);
        else this.values.set(part.key, { type: 'date', place: this.place(token), day });
        return;
      }
      case 'marking':
        this.#at++;
        if (new RegExp(`^(?:${part.pattern})$`).test(token.text)) {
          this.values.set(part.key, { type: 'word', place: this.place(token), word: token.text });
        } else {
          this.#break(part.key);
          this.#report('unknown-word', token, `\`${clip(token.text)}\` is not a marking that ${subject} knows`, `write one such as \`${part.example}\``);
        }
        return;
      case 'flag':
        this.#at++;
        this.values.set(part.key, { type: 'flag', place: this.place(token) });
        return;
      case 'clause': {
        this.#at++;
        const missing = this.#bindParts(part.parts, false, `\`${part.word}\` in \`${this.#subject}\``);
        const last = this.#tokens[this.#at - 1] ?? token;
        this.values.set(`${part.key}:clause`, { type: 'clause', place: this.place({ start: token.start, end: last.end }) });
        for (const inner of missing) {
          if ('key' in inner) this.#break(inner.key);
          if (this.#failed) continue;
          const next = this.#tokens[this.#at];
          this.#report('missing-value', token, `\`${part.word}\` in \`${this.#subject}\` lacks ${describePart(inner)}`, `write something like ${examplePart(inner)} behind \`${part.word}\`${next === undefined ? '' : ` and before \`${clip(next.text)}\``}`);
          this.#failed = true;
        }
        return;
      }
      case 'station':
        return this.#station(part.key, part.stretch, token);
      case 'route':
        return this.#route(part.key);
    }
  }

  /** The day of a date token, or undefined with a problem. */
  day(token: Token): number | undefined {
    const day = readDay(token.text);
    if (day !== undefined) return day;
    const meant = dateMeant(token.text);
    if (meant === undefined) this.#report('bad-date', token, `${clip(token.text)} is not a day of the calendar`, 'write a date as year-month-day, such as 2026-06-21');
    else this.#report('bad-date', token, `${clip(token.text)} has a month or a day of one digit`, `write both with two digits: ${meant}`, [{ title: `Write \`${meant}\``, edits: [{ place: this.place(token), text: meant }], mechanical: true }]);
    return undefined;
  }

  #count(part: Extract<Part, { part: 'count' }>, token: Token, subject: string): void {
    this.#at++;
    const value = token.kind === 'number' ? readNumber(token.text) : undefined;
    const next = this.#tokens[this.#at];
    let end = token.end;
    if (part.noun !== undefined && next?.kind === 'word' && part.noun.includes(next.text)) {
      this.#at++;
      end = next.end;
    } else if (next?.kind === 'symbol' || (next?.kind === 'word' && next.start === token.end && !this.#words.has(next.text))) {
      this.#failed = true;
      this.#break(part.key);
      this.#report('wrong-dimension', { start: token.start, end: next.end }, `${subject} takes a plain number${part.noun ? ` of ${part.noun[0]}` : ''}, not ${clip(token.text)} ${clip(next.text)}`, `write it like \`${examplePart(part).replaceAll('`', '')}\``);
      return;
    }
    const span = { start: token.start, end };
    if (value === undefined || !Number.isInteger(value) || value < part.min || value > part.max) {
      this.#break(part.key);
      this.#report('value-out-of-range', span, `${subject} is ${this.#text(span)}; a whole number from ${part.min} to ${printNumber(part.max, 'nearest', 0)} is meant here`, 'correct the number');
      return;
    }
    this.values.set(part.key, { type: 'count', place: this.place(span), count: value });
  }

  #quantity(measure: Measure, subject: string): BoundQuantity | undefined {
    const read = readQuantity(this.#tokens, this.#at, (word) => this.#words.has(word), dimensionsOf(measure));
    if (read === undefined) return undefined;
    const first = this.#at;
    this.#at += read.used;
    // With a character inside that was passed over, as in `2½ in` and `6 - 1/4 in`, it is another number; that character has its message.
    for (let i = first + 1; i < this.#at; i++) {
      if (isBlank(this.#chunk.text, this.#tokens[i - 1]!.end, this.#tokens[i]!.start)) continue;
      this.#failed = true;
      return undefined;
    }
    const expected: Dimension = kinds[measure.kind].dimension;
    const problem = read.problem;
    if (problem !== undefined) {
      const replaced = problem.replaceSpan ?? problem.span;
      // Another unit is another claim: only a slip of upper and lower case is put right unasked.
      const spelling = problem.replace?.toLowerCase() === this.#chunk.text.slice(replaced.start, replaced.end).toLowerCase();
      const fixes = problem.replace === undefined ? undefined : [{ title: `Write \`${problem.replace}\``, edits: [{ place: this.place(replaced), text: problem.replace }], ...(spelling ? { mechanical: true as const } : {}) }];
      this.#report(problem.problem, problem.span, problem.message, problem.help, fixes);
      // The unit behind a number that cannot be read belongs to it and is not spoken of again.
      const next = this.#tokens[this.#at];
      if (problem.problem === 'bad-number' && next?.kind === 'word' && unitNamed(next.text) !== undefined) this.#at++;
      return undefined;
    }
    if (read.quantity === undefined) {
      const value = read.number!;
      if (expected === 'count') return this.#inRange(measure, { type: 'quantity', place: this.place(read.span), value, kind: measure.kind, unit: unitsOf('ratio')[0]! }, subject);
      this.#bareNumber(measure, read.span, value, subject);
      return undefined;
    }
    const { value, dimension, unit } = read.quantity;
    const place = this.place(read.span);
    const base = { type: 'quantity' as const, place, kind: measure.kind, unit };
    if (dimension === expected) return this.#inRange(measure, { ...base, value }, subject);
    if (dimension === 'mass' && measure.load === true) return this.#inRange(measure, { ...base, value: value * standardGravity, mass: value }, subject);
    if (dimension === 'diameters' && measure.diameters === true) return this.#inRange(measure, { ...base, value, inDiameters: true }, subject);
    if (dimension === 'ratio' && measure.share === true) return this.#inRange(measure, { ...base, value: Math.atan(value) }, subject);
    const hint = expected === 'force' && dimension === 'length' ? '' : expected === 'mass' && dimension === 'force' ? ': a mass is meant here, not a force' : '';
    this.#report('wrong-dimension', read.span, `${subject} takes ${describeMeasure(measure)}; ${this.#text(read.span)} is ${describeDimension(dimension).replace(/, such as .*$/, '')}`, `write it like \`${measure.example}\`${hint}`);
    return undefined;
  }

  #bareNumber(measure: Measure, span: Span, value: number, subject: string): void {
    const mark = this.#chunk.text.charAt(span.end);
    const inchMark = mark === '"';
    const next = this.#tokens[this.#at];
    const written = this.#text(span);
    if (next !== undefined && next.kind === 'number' && /^[1-9]\d{0,2}$/.test(written) && /^\d{3}(?:\.\d+)?$/.test(next.text)) {
      this.#failed = true;
      const thousands = `${written},${next.text}`;
      const both = { start: span.start, end: next.end };
      return this.#report('bad-number', both, `${subject} is ${this.#text(both)}, two numbers with a space between`, `for thousands write \`${thousands}\` or \`${written}${next.text}\``, [{ title: `Write \`${thousands}\``, edits: [{ place: this.place(both), text: thousands }] }]);
    }
    // A decimal comma has a message of its own.
    if (mark === ',' && next?.start === span.end + 1) {
      this.#failed = true;
      return;
    }
    if (/^["'’′″”]$/.test(mark)) {
      this.#failed = true;
      // A mark that begins no text has a message of its own.
      if (next?.kind !== 'string') return;
    }
    const fixes: Fix[] = inchMark
      ? [{ title: 'Write `in` for inches', edits: [{ place: this.place({ start: span.end, end: span.end + 1 }), text: ' in' }] }]
      : unitsForBare(measure, value).map((u) => ({ title: `Write it in ${u.symbol} (${u.meaning})`, edits: [{ place: this.place({ start: span.end, end: span.end }), text: ` ${u.symbol}` }] }));
    this.#report('bare-number', span, `${subject} is ${this.#text(span)} without a unit`, inchMark ? `write \`in\` for inches: ${this.#text(span)} in` : `write ${describeMeasure(measure)}`, fixes);
  }

  #inRange(measure: Measure, bound: BoundQuantity, subject: string): BoundQuantity | undefined {
    const passed = rangePassed(measure, bound.value, bound.inDiameters === true);
    if (passed === undefined) return bound;
    const written = this.#text(bound.place);
    const meant = pointForComma(written, passed);
    const edits = meant === undefined ? [] : [{ place: this.place({ start: bound.place.start, end: bound.place.start + meant.from.length }), text: meant.to }];
    const fixes = meant === undefined ? undefined : [{ title: `Write \`${meant.to}\``, edits }];
    this.#report('value-out-of-range', bound.place, `${subject} is ${written}; it must ${saidLimit(measure, bound, passed)}`, meant?.help ?? 'correct the number or its unit', fixes);
    return undefined;
  }

  #text(span: Span): string {
    return clip(this.#chunk.text.slice(span.start, span.end));
  }

  #word(word: string): Token | undefined {
    const token = this.#tokens[this.#at];
    if (token?.kind !== 'word' || token.text !== word) return undefined;
    this.#at++;
    return token;
  }

  #distance(word: string): BoundQuantity | undefined {
    const token = this.#tokens[this.#at];
    if (token === undefined || (token.kind !== 'number' && token.kind !== 'fraction')) return undefined;
    return this.#quantity({ kind: 'length', min: 0, max: 2000, example: '8.4 m' }, `\`${word}\` in \`${this.#subject}\``);
  }

  #end(): 'inboard' | 'outboard' | undefined {
    const save = this.#at;
    if (this.#word('from') === undefined) return undefined;
    const token = this.#tokens[this.#at];
    if (token?.kind === 'word' && Object.hasOwn(ends, token.text)) {
      this.#at++;
      return token.text as 'inboard' | 'outboard';
    }
    if (token?.kind === 'word' && didYouMean(token.text, Object.keys(ends)) !== undefined) {
      this.#at++;
      this.#slip(unknownWord(token, Object.keys(ends), '`from`'));
      return undefined;
    }
    this.#at = save;
    return undefined;
  }

  #station(key: string, stretch: boolean, first: Token): void {
    this.#at++;
    const problemsBefore = this.#problems.length;
    const fail = (): void => {
      this.#break(key);
      this.#failed = true;
      if (this.#problems.length > problemsBefore) return;
      const last = this.#tokens[Math.min(this.#at, this.#tokens.length - 1)] ?? first;
      const example = stretch && first.text === 'from' ? '`from 7.9 m to 9.1 m from inboard`' : '`at 8.4 m from inboard`';
      this.#report('missing-value', { start: first.start, end: Math.max(last.end, first.end) }, 'a position says its distance and from which end', `write it like ${example}`);
    };
    const near = this.#distance(first.text);
    if (near === undefined) return fail();
    if (first.text === 'at' || !stretch) {
      const end = this.#end();
      if (end === undefined) return fail();
      this.values.set(key, { type: 'station', place: this.place({ start: first.start, end: this.#tokens[this.#at - 1]!.end }), from: { distance: near, end } });
      return;
    }
    const nearEnd = this.#end();
    if (this.#word('to') === undefined) return fail();
    const far = this.#distance('to');
    if (far === undefined) return fail();
    const farEnd = this.#end();
    if (farEnd === undefined) return fail();
    const from: BoundEnd = { distance: near, end: nearEnd ?? farEnd };
    this.values.set(key, { type: 'station', place: this.place({ start: first.start, end: this.#tokens[this.#at - 1]!.end }), from, to: { distance: far, end: farEnd } });
  }

  #route(key: string): void {
    const links: BoundLink[] = [];
    const start = this.#tokens[this.#at]!.start;
    let needArrow = false;
    while (this.#at < this.#tokens.length) {
      const token = this.#tokens[this.#at]!;
      if (needArrow) {
        if (token.kind !== 'arrow') {
          this.#failed = true;
          this.#report('unexpected-value', token, `\`${clip(token.text)}\` stands where an arrow is meant`, 'join links with `->`');
          break;
        }
        this.#at++;
        needArrow = false;
        continue;
      }
      const link = token.kind === 'word' ? this.#link(token) : undefined;
      if (link === undefined) {
        if (!this.#failed) this.#report('unexpected-value', token, `\`${clip(token.text)}\` stands where a link is meant`, 'write a name, such as `main outboard`, or gear by size, such as `shackle bow 19 mm`');
        this.#failed = true;
        break;
      }
      links.push(link);
      needArrow = true;
    }
    const last = this.#tokens[Math.max(0, Math.min(this.#at, this.#tokens.length) - 1)]!;
    const span = { start, end: last.end };
    if (!this.#failed && (!needArrow || links.length < 2)) {
      this.#failed = true;
      this.#report('missing-value', span, needArrow ? 'a route needs at least two links' : 'this route ends with an arrow and no link', 'write it like `main outboard -> bow-22 -> larch`');
    }
    if (this.#failed) this.#break(key);
    else {
      this.values.set(key, { type: 'route', place: this.place(span), links });
      for (const link of links) if (link.link === 'name') (this.names ??= []).push({ name: link.name, place: link.namePlace, of: 'link' });
    }
  }

  #link(token: Token): BoundLink | undefined {
    this.#at++;
    const next = this.#tokens[this.#at];
    if ((token.text === 'shackle' || token.text === 'soft-shackle') && next !== undefined && next.kind !== 'arrow') {
      let form: string | undefined;
      if (next.kind === 'word' && (next.text === 'bow' || next.text === 'dee')) {
        form = next.text;
        this.#at++;
      }
      const sizeToken = this.#tokens[this.#at];
      if (sizeToken !== undefined && (sizeToken.kind === 'number' || sizeToken.kind === 'fraction')) {
        const size = this.#quantity({ kind: 'diameter', above: 0, max: 0.3, example: '19 mm' }, `the size of \`${token.text}\``);
        if (size === undefined) {
          this.#failed = true;
          return undefined;
        }
        const standard = this.#tokens[this.#at];
        const named = standard?.kind === 'word' && (standard.text === 'AS-2741' || standard.text === 'RR-C-271') ? standard.text : undefined;
        if (named !== undefined) this.#at++;
        return { link: 'sized', place: this.place({ start: token.start, end: this.#tokens[this.#at - 1]!.end }), gear: token.text, size, ...(form ? { form } : {}), ...(named ? { standard: named } : {}) };
      }
      if (form !== undefined) return undefined;
    }
    const part = next?.kind === 'word' ? next : undefined;
    if (part !== undefined) this.#at++;
    return { link: 'name', place: this.place({ start: token.start, end: (part ?? token).end }), name: token.text, namePlace: this.place(token), ...(part ? { part: { name: part.text, place: this.place(part) } } : {}) };
  }

  get #reading(): Reading {
    const definition = this.#definition;
    return {
      chunk: this.#chunk,
      tokens: this.#tokens,
      at: this.#at,
      subject: this.#subject,
      get example() {
        return exampleOf(definition);
      },
      words: this.#words,
      values: this.values,
    };
  }

  #slip({ code, span, message, help, fix }: Slip): void {
    const fixes = fix && [{ title: fix.title, edits: [{ place: this.place(fix.span), text: fix.text }], ...(fix.mechanical ? { mechanical: true as const } : {}) }];
    this.#report(code, span, message, help, fixes);
  }

  #unexpected(token: Token, parts: readonly Part[], unnamed: boolean): void {
    this.#failed = true;
    if (token.kind === 'open-string' || this.#unread) return;
    if (unnamed && (token.kind === 'number' || token.kind === 'fraction' || token.kind === 'date')) return this.#slip(notAName(this.#reading));
    if (parts[0]?.part !== 'new-name' && isProse(this.#reading, parts.filter((part) => !('key' in part && this.values.has(part.key))))) {
      const slip = unquoted(this.#reading, token);
      this.prose = slip.span;
      return this.#slip(slip);
    }
    this.#slip(unexpected(this.#reading, token, parts));
  }
}

/** How a whole one is written, on one line; empty when that is not known. */
const exampleOf = (definition: BlockDefinition | StatementDefinition | undefined): string => definition?.example.split('\n', 1)[0]!.replace(/ {2,}/g, ' ') ?? '';

/** Whether nothing but space stands between two offsets. */
function isBlank(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (text.charCodeAt(at) !== 32) return text.slice(at, end).trim() === '';
  return true;
}

const isNumber = (part: Part): boolean => part.part === 'quantity' || part.part === 'count';

/** With several numbers in a statement its name says too little. */
function hasSeveralNumbers(parts: readonly Part[]): boolean {
  let numbers = 0;
  for (const part of parts) if (isNumber(part)) numbers++;
  return numbers > 1;
}

/** Which of the numbers of a statement is spoken of. */
const numberOf = (part: Part, subject: string): string =>
  part.part === 'count' ? `the number of ${part.noun?.[0] ?? part.key} in ${subject}` : part.part === 'quantity' ? `the ${part.key} in ${subject}` : subject;
