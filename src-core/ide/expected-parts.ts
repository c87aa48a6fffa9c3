import { readQuantity } from '../units/read-quantity.ts';
import { lineWords } from '../model/describe-part.ts';
import type { Token } from '../syntax/tree.ts';
import type { Measure, Part } from '../vocabulary/shape.ts';

/** What may come next in a statement. */
export type Expected =
  | { readonly expect: 'part'; readonly part: Part }
  /** The number stands there; its unit does not. */
  | { readonly expect: 'unit'; readonly measure: Measure }
  | { readonly expect: 'noun'; readonly nouns: readonly string[]; readonly one: boolean }
  /** Inside a position. */
  | { readonly expect: 'distance' }
  | { readonly expect: 'from' }
  | { readonly expect: 'to' }
  | { readonly expect: 'end' }
  /** Inside a route. */
  | { readonly expect: 'link' }
  | { readonly expect: 'arrow' }
  | { readonly expect: 'link-part'; readonly name: string }
  /** Gear by its size: the form and the size, or only the size once the form stands there. */
  | { readonly expect: 'size'; readonly gear: string; readonly hasForm: boolean }
  | { readonly expect: 'standard' };

const isPositional = (part: Part): boolean => part.part !== 'clause' && part.part !== 'flag' && !('optional' in part && part.optional === true);
/** Sizes of gear in a route. */
const gearSize: Measure = { kind: 'diameter', above: 0, max: 0.3, example: '19 mm' };
const isOptional = (part: Part): boolean => 'optional' in part && part.optional === true;
const isFigure = (part: Part): boolean => part.part === 'count' || part.part === 'quantity';
/** A word and a figure that may both be left out say the same thing in two ways: with one of them, the other is not meant. */
const isInstead = (taken: Part, part: Part): boolean => isOptional(taken) && isOptional(part) && ((taken.part === 'choice' && isFigure(part)) || (isFigure(taken) && part.part === 'choice'));
const isNumber = (token: Token | undefined): boolean => token?.kind === 'number' || token?.kind === 'fraction';

/** Walks over the tokens before the cursor as binding does, and says what could follow them. */
export function expectedAfter(parts: readonly Part[], tokens: readonly Token[]): Expected[] {
  return new Walk(tokens, lineWords(parts)).parts(parts).next;
}

interface Step {
  readonly next: Expected[];
  /** False when the tokens ended inside, so that nothing of what surrounds it can come yet. */
  readonly complete: boolean;
}

class Walk {
  readonly #tokens: readonly Token[];
  readonly #words: ReadonlySet<string>;
  #at = 0;

  constructor(tokens: readonly Token[], words: ReadonlySet<string>) {
    this.#tokens = tokens;
    this.#words = words;
  }

  parts(parts: readonly Part[]): Step {
    const pending = [...parts];
    const extra: Expected[] = [];
    while (this.#at < this.#tokens.length) {
      const token = this.#tokens[this.#at]!;
      const index = pending.findIndex((part) => this.#starts(part, token, pending));
      if (index < 0) return { next: [], complete: true };
      const [taken] = pending.splice(index, 1);
      const step = this.#take(taken!);
      if (!step.complete) return step;
      for (let i = pending.length - 1; i >= 0; i--) if (isInstead(taken!, pending[i]!)) pending.splice(i, 1);
      extra.length = 0;
      if (this.#at >= this.#tokens.length) extra.push(...step.next);
    }
    const required = pending.findIndex(isPositional);
    const open = required < 0 ? pending : pending.filter((part, i) => i <= required && (i === required || !isPositional(part)));
    const next = [...extra, ...open.map((part): Expected => ({ expect: 'part', part }))];
    return { next, complete: required < 0 };
  }

  #starts(part: Part, token: Token, pending: readonly Part[]): boolean {
    switch (part.part) {
      case 'new-name':
      case 'name':
        return token.kind === 'word' && (part.optional !== true || !pending.some((o) => (o.part === 'choice' && Object.hasOwn(o.of, token.text)) || ((o.part === 'clause' || o.part === 'flag') && o.word === token.text) || (o.part === 'station' && (token.text === 'at' || token.text === 'from'))));
      case 'quantity': {
        const next = this.#tokens[this.#at + 1]?.text ?? '';
        return isNumber(token) && !pending.some((o) => o.part === 'count' && o.nounNeeded === true && (o.noun ?? []).some((n) => n === next));
      }
      case 'count':
        return isNumber(token) && (part.nounNeeded !== true || (part.noun ?? []).some((n) => n === this.#tokens[this.#at + 1]?.text) || this.#at === this.#tokens.length - 1);
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
        return token.text === 'at' || token.text === 'from';
      case 'route':
        return token.kind === 'word' || token.kind === 'arrow';
    }
  }

  #take(part: Part): Step {
    const done: Step = { next: [], complete: true };
    switch (part.part) {
      case 'quantity':
        return this.#quantity(part.measure);
      case 'count': {
        const one = this.#tokens[this.#at++]!.text === '1';
        const word = this.#tokens[this.#at];
        if (part.noun?.some((n) => n === word?.text)) this.#at++;
        else if (part.noun !== undefined && word === undefined) return { next: [{ expect: 'noun', nouns: part.noun, one }], complete: part.nounNeeded !== true };
        return done;
      }
      case 'clause':
        this.#at++;
        return this.#inner(part.parts);
      case 'station':
        return this.#station(part.stretch);
      case 'route':
        return this.#route();
      default:
        this.#at++;
        return done;
    }
  }

  /** Values of a clause: what does not belong to it goes back to the statement. */
  #inner(parts: readonly Part[]): Step {
    const pending = [...parts];
    let extra: Expected[] = [];
    while (this.#at < this.#tokens.length) {
      const token = this.#tokens[this.#at]!;
      const index = pending.findIndex((part) => this.#starts(part, token, pending));
      if (index < 0) return { next: [], complete: true };
      const step = this.#take(pending.splice(index, 1)[0]!);
      if (!step.complete) return step;
      extra = this.#at >= this.#tokens.length ? [...step.next] : [];
    }
    const required = pending.findIndex(isPositional);
    const open = required < 0 ? pending : pending.slice(0, required + 1);
    return { next: [...extra, ...open.map((part): Expected => ({ expect: 'part', part }))], complete: required < 0 };
  }

  #quantity(measure: Measure): Step {
    const read = readQuantity(this.#tokens, this.#at, (word) => this.#words.has(word));
    this.#at += read?.used ?? 1;
    const bare = read !== undefined && read.quantity === undefined && read.problem === undefined;
    if (bare && this.#at >= this.#tokens.length) return { next: [{ expect: 'unit', measure }], complete: false };
    return { next: [], complete: true };
  }

  #station(stretch: boolean): Step {
    const first = this.#tokens[this.#at++]!.text;
    const missing = (expected: Expected): Step => ({ next: [expected], complete: false });
    const distance = (): Step | undefined => {
      if (!isNumber(this.#tokens[this.#at])) return missing({ expect: 'distance' });
      const step = this.#quantity({ kind: 'length', max: 2000, example: '8.4 m' });
      return step.complete ? undefined : step;
    };
    const end = (): Step | undefined => {
      if (this.#tokens[this.#at] === undefined) return missing({ expect: 'from' });
      this.#at++;
      if (this.#tokens[this.#at] === undefined) return missing({ expect: 'end' });
      this.#at++;
      return undefined;
    };
    const stopped = distance();
    if (stopped !== undefined) return stopped;
    if (first === 'from' && stretch) {
      const next = this.#tokens[this.#at];
      if (next === undefined) return missing({ expect: 'to' });
      if (next.text === 'from') {
        const near = end();
        if (near !== undefined) return near;
      }
      if (this.#tokens[this.#at] === undefined) return missing({ expect: 'to' });
      this.#at++;
      const far = distance();
      if (far !== undefined) return far;
    }
    return end() ?? { next: [], complete: true };
  }

  #route(): Step {
    let name: string | undefined;
    let hasPart = false;
    let needLink = true;
    while (this.#at < this.#tokens.length) {
      const token = this.#tokens[this.#at++]!;
      if (token.kind === 'arrow') {
        needLink = true;
        name = undefined;
      } else if (needLink && (token.text === 'shackle' || token.text === 'soft-shackle')) {
        const step = this.#sized(token.text);
        if (this.#at >= this.#tokens.length) return step;
        needLink = false;
        hasPart = true;
      } else if (needLink) {
        name = token.text;
        needLink = false;
        hasPart = false;
      } else hasPart = true;
    }
    if (needLink) return { next: [{ expect: 'link' }], complete: false };
    return { next: [...(name !== undefined && !hasPart ? [{ expect: 'link-part', name } as const] : []), { expect: 'arrow' }], complete: true };
  }

  /** Behind the kind of gear: its form, its size, and the standard it is made to. */
  #sized(gear: string): Step {
    const hasForm = ['bow', 'dee'].includes(this.#tokens[this.#at]?.text ?? '');
    if (hasForm) this.#at++;
    if (this.#tokens[this.#at] === undefined) return { next: [{ expect: 'size', gear, hasForm }], complete: false };
    if (isNumber(this.#tokens[this.#at])) {
      const size = this.#quantity(gearSize);
      if (!size.complete) return size;
      if (this.#tokens[this.#at] === undefined) return { next: [{ expect: 'arrow' }, ...(gear === 'shackle' ? [{ expect: 'standard' } as const] : [])], complete: true };
      if (this.#tokens[this.#at]!.kind !== 'arrow') this.#at++;
    }
    return { next: [{ expect: 'arrow' }], complete: true };
  }
}
