import type { Picture } from '../pictures/picture.ts';

/**
 * Text of a paper. A name between backticks is set apart as a name; everything else is plain, whatever it looks like.
 * What the user wrote in quotes goes through `quoted` first.
 */
export type PaperText = string;

export interface PaperTable {
  readonly part: 'table';
  readonly head: readonly PaperText[];
  readonly rows: readonly (readonly PaperText[])[];
  /** Columns left empty for the hand: they get room and a line around each cell. */
  readonly byHand?: readonly number[];
  /** Many short rows: printed as two tables side by side, the first half on the left. */
  readonly folded?: true;
  /** Shares of the width by column; without them the contents decide. */
  readonly widths?: readonly number[];
}

export type PaperPart =
  | { readonly part: 'heading'; readonly says: PaperText; /** Begins a new page when printed. */ readonly newPage?: true }
  | { readonly part: 'text'; readonly says: PaperText; readonly quiet?: true; /** The one line that is read if no other is. */ readonly lead?: true; /** Names what follows it. */ readonly strong?: true }
  | { readonly part: 'list'; readonly sort: 'points' | 'steps' | 'boxes'; readonly items: readonly PaperText[] }
  | { readonly part: 'finding'; readonly severity: string; readonly code: string; readonly says: PaperText; readonly help: PaperText }
  | PaperTable
  /** `share` of the width of the page; the table says the same where there are no pictures. */
  | { readonly part: 'picture'; readonly picture: Picture; readonly share?: number; readonly tableElsewhere?: true }
  /** A thing to be written in: a label with a line behind it. */
  | { readonly part: 'blanks'; readonly labels: readonly PaperText[] };

/** One paper, before it is anything that can be printed. */
export interface PaperDocument {
  readonly title: PaperText;
  /** File, day, and what else tells one print from the next. */
  readonly subtitle: PaperText;
  readonly parts: readonly PaperPart[];
  /** Small print at the end. */
  readonly foot: readonly PaperText[];
}

/** Anything that the user wrote as prose, so that it is told apart from what the paper says. */
export const quoted = (text: string): PaperText => `“${text.replaceAll('`', '\'')}”`;

export const heading = (says: PaperText): PaperPart => ({ part: 'heading', says });
export const text = (says: PaperText): PaperPart => ({ part: 'text', says });
export const lead = (says: PaperText): PaperPart => ({ part: 'text', says, lead: true });
export const quiet = (says: PaperText): PaperPart => ({ part: 'text', says, quiet: true });
export const table = (head: readonly PaperText[], rows: readonly (readonly PaperText[])[], more: Pick<PaperTable, 'byHand' | 'widths' | 'folded'> = {}): PaperPart => ({ part: 'table', head, rows, ...more });
export const steps = (items: readonly PaperText[]): PaperPart => ({ part: 'list', sort: 'steps', items });
export const points = (items: readonly PaperText[]): PaperPart => ({ part: 'list', sort: 'points', items });
export const boxes = (items: readonly PaperText[]): PaperPart => ({ part: 'list', sort: 'boxes', items });

/** A stretch of a text: a name, or anything else. */
export interface Stretch {
  readonly name: boolean;
  readonly says: string;
}

/** Cuts a text at the names between backticks. A backtick without its partner stays what it is. */
export function stretches(says: PaperText): Stretch[] {
  const found: Stretch[] = [];
  let last = 0;
  for (const match of says.matchAll(/`([^`\n]+)`/g)) {
    if (match.index > last) found.push({ name: false, says: says.slice(last, match.index) });
    found.push({ name: true, says: match[1]! });
    last = match.index + match[0].length;
  }
  if (last < says.length) found.push({ name: false, says: says.slice(last) });
  return found;
}

/** The parts for a paper without pictures: what has its table elsewhere goes, and the heading with it under which nothing is left. */
export function withoutPictures(parts: readonly PaperPart[]): PaperPart[] {
  const left = parts.filter((part) => part.part !== 'picture' || part.tableElsewhere !== true);
  return left.filter((part, i) => part.part !== 'heading' || (i + 1 < left.length && left[i + 1]!.part !== 'heading'));
}
