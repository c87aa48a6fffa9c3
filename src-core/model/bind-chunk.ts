import { didYouMean } from '../base/did-you-mean.ts';
import type { Place, Span } from '../base/span.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Statement } from '../syntax/tree.ts';
import type { BlockDefinition, StatementDefinition } from '../vocabulary/shape.ts';
import { blockHeads, blockNamed, entryNamed, statementNamed, topHeads } from '../vocabulary/vocabulary.ts';
import { wordHere } from '../vocabulary/trade-words.ts';
import { bindValues } from './bind-values.ts';
import type { Allowance, BoundBlock, BoundChunk, BoundName, BoundStatement, BoundUse, Fix, Problem } from './bound.ts';
import { fitted } from '../base/fitted.ts';
import { clip } from './describe-part.ts';
import { otherDate } from './day.ts';
import { StatementReading } from './statement-reading.ts';

const bound = new WeakMap<Chunk, BoundChunk>();
const noHeads: ReadonlySet<string> = new Set();
const noStatements: ReadonlyMap<string, BoundStatement> = new Map();

/** What a chunk says by itself. The same chunk gives the same object. */
export function bindChunk(chunk: Chunk): BoundChunk {
  let result = bound.get(chunk);
  if (result === undefined) {
    result = new ChunkBinder(chunk).bind();
    bound.set(chunk, result);
  }
  return result;
}

/** Lets go of what a chunk says: whoever asks for it next is given another object that says the same. */
export const forgetBound = (chunk: Chunk): void => void bound.delete(chunk);

/** What a chunk says, for one look: it is not kept for that. */
export const bindAside = (chunk: Chunk): BoundChunk => bound.get(chunk) ?? new ChunkBinder(chunk).bind();

/** Whether a chunk may take a file in: nothing else of it has to be read to know that it does not. */
export const mayUse = ({ text }: Chunk): boolean => text.includes('use') && /\buse\b/.test(text);

/** Words that a logbook is often written with, and what they are here: the nearest word would be another thing. */
const otherWords: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  repaired: '`cut` and `splice`, or `mended`',
  fixed: '`cut` and `splice`, or `mended`',
  serviced: '`inspected`, `washed` or what else was done',
  cleaned: '`washed`',
  checked: '`inspected`',
  replaced: '`retired` here, and a `line` of its own for the new one',
});

class ChunkBinder {
  readonly #chunk: Chunk;
  readonly #problems: Problem[] = [];
  readonly #blocks: BoundBlock[] = [];
  readonly #uses: BoundUse[] = [];
  /** Names that the block at hand uses. */
  #used: BoundName[] = [];
  /** Prose and dates that are not read as values: a character in them is no further problem. */
  readonly #passedOver: Span[] = [];

  constructor(chunk: Chunk) {
    this.#chunk = chunk;
  }

  bind(): BoundChunk {
    const { tree } = this.#chunk;
    for (const statement of tree.statements) this.#top(statement);
    for (const { code, message, help, fix, ...span } of tree.problems) {
      if (code === 'stray-character' && this.#passedOver.some((over) => over.start <= span.start && span.end <= over.end)) continue;
      this.#report(code, span, message, help, fix && [{ title: fix.title, edits: [{ place: this.#place(fix), text: fix.text }], ...(fix.mechanical ? { mechanical: true as const } : {}) }]);
    }
    const allowances = this.#allowances();
    this.#problems.sort((a, b) => a.place.start - b.place.start);
    return { chunk: this.#chunk, blocks: fitted(this.#blocks), uses: fitted(this.#uses), problems: fitted(this.#problems), allowances: fitted(allowances) };
  }

  #place(span: Span): Place {
    return { chunk: this.#chunk, start: span.start, end: span.end };
  }

  #report(code: string, span: Span, message: string, help: string, fixes?: readonly Fix[]): void {
    this.#problems.push({ code, place: this.#place(span), message, help, ...(fixes ? { fixes } : {}) });
  }

  /** `sure` where nothing else can be meant. */
  #correct(span: Span, text: string, sure = true): Fix[] {
    return [{ title: `Write \`${text}\``, edits: [{ place: this.#place(span), text }], ...(sure ? { mechanical: true as const } : {}) }];
  }

  #top(statement: Statement): void {
    const head = statement.tokens[0];
    if (head === undefined) {
      this.#report('unknown-block', { start: statement.start, end: Math.min(statement.end, statement.start + 1) }, 'this block has no head', 'write what it is and its name, such as `line main {`');
      return;
    }
    if (head.kind === 'word' && head.text === 'use') return this.#use(statement);
    const definition = head.kind === 'word' ? blockNamed(head.text) : undefined;
    if (definition === undefined) {
      const here = head.kind === 'word' ? wordHere(head.text, blockHeads) : undefined;
      const near = here ?? (head.kind === 'word' ? didYouMean(head.text, topHeads) : undefined);
      const inside = head.kind === 'word' && near === undefined ? blockHeads.find((b) => statementNamed(blockNamed(b)!, head.text) !== undefined) : undefined;
      const help = near !== undefined ? `did you mean \`${near}\`?` : inside !== undefined ? `\`${head.text}\` belongs inside a block such as \`${inside}\`` : `a block begins with one of ${blockHeads.join(', ')}`;
      this.#report('unknown-block', head, `\`${clip(head.text)}\` is not a block of the language`, help, near === undefined ? undefined : this.#correct(head, near, here === undefined));
      return;
    }
    this.#block(definition, statement);
  }

  #use(statement: Statement): void {
    const [head, path, ...rest] = statement.tokens;
    if (path?.kind !== 'string') {
      this.#report('missing-value', path ?? head!, '`use` lacks the path of a file in quotes', 'write it like `use "practice.rig"`');
      return;
    }
    if (rest.length > 0 || statement.block !== undefined) this.#report('unexpected-value', rest[0] ?? statement.block!.open, '`use` takes one path and nothing else', 'put every file on a line of its own');
    this.#uses.push({ path: path.text.slice(1, -1), place: this.#place(path) });
  }

  #block(definition: BlockDefinition, statement: Statement): void {
    const head = statement.tokens[0]!;
    const reading = new StatementReading(this.#chunk, statement.tokens.slice(1), definition.head, definition.header, this.#problems, definition);
    const whole = { start: head.start, end: statement.tokens.at(-1)!.end };
    bindValues(reading, definition.header, whole);
    const named = reading.values.get('name');
    const name = named?.type === 'new-name' ? named : undefined;
    if (statement.block === undefined) {
      this.#report('missing-block', whole, `\`${definition.head}${name ? ' ' + clip(name.name) : ''}\` has no \`{ ... }\``, 'add `{`, its statements on lines of their own, and `}`');
    }
    const statements: BoundStatement[] = [];
    const brokenHeads = new Set<string>();
    const seen = new Map<string, BoundStatement>();
    this.#used = reading.names ?? [];
    for (const inner of statement.block?.statements ?? []) {
      const used = this.#used.length;
      const result = this.#statement(definition, inner, brokenHeads);
      if (result === undefined) continue;
      const before = seen.get(result.definition.head);
      if (before !== undefined && result.definition.many !== true && result.day === undefined) {
        this.#problems.push({
          code: 'repeated-statement',
          place: result.place,
          message: `\`${result.definition.head}\` stands twice in \`${name?.name ?? definition.head}\``,
          help: 'keep one of them; the first one is used',
          related: [{ place: before.place, message: 'the first one' }],
          fixes: [{ title: 'Remove the second one', edits: [{ place: this.#place(lineOf(this.#chunk.text, result.place)), text: '' }] }],
        });
        this.#used.length = used;
        continue;
      }
      if (before === undefined) seen.set(result.definition.head, result);
      statements.push(result);
    }
    this.#blocks.push({
      definition,
      chunk: this.#chunk,
      place: this.#place(statement),
      headPlace: this.#place(whole),
      name: name?.name,
      namePlace: name?.place ?? this.#place(head),
      header: reading.values,
      statements: fitted(statements),
      firsts: seen.size === 0 ? noStatements : seen,
      uses: fitted(this.#used),
      brokenHeads: brokenHeads.size === 0 ? noHeads : brokenHeads,
    });
  }

  #statement(block: BlockDefinition, statement: Statement, brokenHeads: Set<string>): BoundStatement | undefined {
    if (statement.block !== undefined) {
      this.#report('unexpected-block', statement.block.open, `a block stands where \`${block.head}\` takes a statement`, 'close the block above first, or remove the brace');
    }
    const head = statement.tokens[0];
    if (head === undefined) return undefined;
    if (head.kind === 'date') return this.#entry(block, statement, brokenHeads);
    const definition = head.kind === 'word' ? statementNamed(block, head.text) : undefined;
    const keepNames = block.head !== 'repair';
    if (definition !== undefined) return this.#values(definition, statement, 1, head.text, keepNames);
    if (block.headless !== undefined && statement.tokens.some((t) => t.kind === 'arrow')) return this.#values(block.headless, statement, 0, 'route', keepNames);
    if (block.entries !== undefined && this.#otherDate(head, brokenHeads)) return undefined;
    const dated = head.kind === 'word' ? entryNamed(block, head.text) : undefined;
    if (dated !== undefined) {
      // It says something of the line, and on which day nobody knows.
      brokenHeads.add(head.text).add('logbook');
      this.#report('missing-date', head, `\`${head.text}\` in a logbook begins with its date`, `write it like \`${dated.example}\``);
      return undefined;
    }
    const heads = block.statements.map((s) => s.head);
    // A block that stands in another one by mistake is no misspelt statement.
    const here = head.kind === 'word' && statement.block === undefined ? wordHere(head.text, heads) : undefined;
    const near = here ?? (head.kind === 'word' && !topHeads.has(head.text) ? didYouMean(head.text, heads) : undefined);
    if (head.kind === 'word') brokenHeads.add(near ?? head.text);
    if (block.entries !== undefined && near === undefined && head.kind === 'word') {
      const other = otherWords[head.text];
      const entry = didYouMean(head.text, block.entries.map((e) => e.head));
      if (other !== undefined || entry !== undefined) {
        brokenHeads.add('logbook');
        this.#report('unknown-statement', head, `\`${clip(head.text)}\` is not a statement of \`${block.head}\``, other === undefined ? `did you mean \`${entry!}\`, with its date? Write it like \`${entryNamed(block, entry!)!.example}\`` : `write what was done, with its date: ${other}`);
        return undefined;
      }
    }
    const list = heads.length > 0 ? `\`${block.head}\` knows ${heads.join(', ')}${block.headless === undefined ? '' : ', and routes whose links are joined with `->`'}` : 'this block takes routes only';
    this.#report('unknown-statement', head, `\`${clip(head.text)}\` is not a statement of \`${block.head}\``, near === undefined ? list : `did you mean \`${near}\`?`, near === undefined ? undefined : this.#correct(head, near, here === undefined));
    return undefined;
  }

  /** Reports a date that is written in another way; true when one begins at `head`. */
  #otherDate(head: Span, brokenHeads: Set<string>): boolean {
    const found = otherDate(this.#chunk.text.slice(head.start, head.start + 40));
    if (found === undefined) return false;
    const span = { start: head.start, end: head.start + found.written.length };
    this.#passedOver.push(span);
    brokenHeads.add('logbook');
    const { meant } = found;
    this.#report('bad-date', span, `${found.written} is not how a date is written here`, `write it year-month-day, ${meant === undefined ? 'such as 2026-06-21' : meant}`, meant === undefined ? undefined : [{ title: `Write \`${meant}\``, edits: [{ place: this.#place(span), text: meant }] }]);
    return true;
  }

  #entry(block: BlockDefinition, statement: Statement, brokenHeads: Set<string>): BoundStatement | undefined {
    const [date, verb] = statement.tokens;
    const subject = verb?.text ?? 'entry';
    if (block.entries === undefined) {
      this.#report('unexpected-value', date!, `\`${block.head}\` keeps no logbook`, 'dated entries belong into a `line`');
      return undefined;
    }
    const definition = verb?.kind === 'word' ? entryNamed(block, verb.text) : undefined;
    const day = new StatementReading(this.#chunk, [], subject, [], this.#problems).day(date!);
    if (definition === undefined || day === undefined) {
      brokenHeads.add('logbook');
      if (definition === undefined) {
        const names = block.entries.map((e) => e.head);
        const other = verb === undefined ? undefined : otherWords[verb.text];
        const here = verb?.kind === 'word' && other === undefined ? wordHere(verb.text, names) : undefined;
        const near = here ?? (verb?.kind === 'word' && other === undefined ? didYouMean(verb.text, names) : undefined);
        const help = other !== undefined ? `write what was done: ${other}` : near === undefined ? `a logbook knows ${names.join(', ')}` : `did you mean \`${near}\`?`;
        if (verb === undefined) this.#report('missing-value', date!, 'this entry says a date and nothing else', help);
        else this.#report('unknown-statement', verb, `\`${clip(verb.text)}\` is not an entry of a logbook`, help, near === undefined ? undefined : this.#correct(verb, near, here === undefined));
      }
      return undefined;
    }
    const values = this.#values(definition, statement, 2, definition.head, false);
    if (values.broken.size > 0) brokenHeads.add('logbook');
    return { ...values, day, dayPlace: this.#place(date!) };
  }

  #values(definition: StatementDefinition, statement: Statement, skip: number, subject: string, keepNames: boolean): BoundStatement {
    const reading = new StatementReading(this.#chunk, statement.tokens.slice(skip), subject, definition.parts, this.#problems, definition);
    const whole = { start: statement.start, end: statement.tokens.at(-1)!.end };
    bindValues(reading, definition.parts, whole);
    if (reading.prose !== undefined) this.#passedOver.push(reading.prose);
    if (keepNames && reading.names !== undefined) this.#used.push(...reading.names);
    return { definition, place: this.#place(whole), end: statement.end, values: reading.values, broken: reading.broken };
  }

  /** `# allow CODE: reason`, on the line of a statement or above it. */
  #allowances(): Allowance[] {
    const found: Allowance[] = [];
    const { text } = this.#chunk;
    const { comments } = this.#chunk.tree;
    let below = text.length;
    // From the last one up, so that a stack of comments is passed once.
    for (let i = comments.length - 1; i >= 0; i--) {
      const comment = comments[i]!;
      const next = firstNonSpace(text, comment.end);
      if (next !== comments[i + 1]?.start) below = next;
      const match = /^#\s*allow\s+([a-z][a-z-]*)\s*(?::\s*(.*))?$/.exec(comment.text.trimEnd());
      if (match === null) continue;
      const reason = (match[2] ?? '').trim();
      if (reason === '') {
        this.#report('allowance-without-reason', comment, `setting \`${match[1]}\` aside needs a written reason`, `write it like \`# allow ${match[1]}: why it is right here\``);
        continue;
      }
      const lineStart = lineStartBefore(text, comment.start);
      const first = firstNonSpace(text, lineStart);
      found.push({ code: match[1]!, reason, place: this.#place(comment), target: first === comment.start ? below : first });
    }
    return found.reverse();
  }
}

/** A statement with its line, when it stands alone on it. */
function lineOf(text: string, span: Span): Span {
  const start = lineStartBefore(text, span.start);
  const behind = /[ \t]*(?:\r\n|\n|\r)/y;
  behind.lastIndex = span.end;
  const end = behind.exec(text);
  return text.slice(start, span.start).trim() === '' && end !== null ? { start, end: behind.lastIndex } : { start: span.start, end: span.end };
}

function firstNonSpace(text: string, from: number): number {
  const space = /\s*/y;
  space.lastIndex = from;
  return from + space.exec(text)![0].length;
}

function lineStartBefore(text: string, offset: number): number {
  let at = offset;
  while (at > 0 && text[at - 1] !== '\n' && text[at - 1] !== '\r') at--;
  return at;
}
