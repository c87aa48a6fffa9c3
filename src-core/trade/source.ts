/**
 * How well a figure is known.
 * `read`: read in the named document. `secondary`: read in a document that quotes the named one.
 * `memory`: well known, from memory, not re-read. `practice`: common practice, no source.
 * `own`: our own careful choice, with the reason. `derived`: arithmetic or mechanics, checkable by hand.
 */
export type Trust = 'read' | 'secondary' | 'memory' | 'practice' | 'own' | 'derived';

/** A document, or the sentence that stands in for one. */
export interface Source {
  /** Short key, unique: `tm-9-2320-430-10`. */
  readonly key: string;
  /** Document, edition, clause or table; for practice and own choices, the sentence itself. */
  readonly title: string;
  readonly trust: Trust;
}

/** A source line as it is shown: documents bare, everything else says how well it is known. */
export function printSource(source: Source): string {
  switch (source.trust) {
    case 'read':
      return source.title;
    case 'secondary':
      return `${source.title} (read in a document that quotes it)`;
    case 'memory':
      return `${source.title} (from memory, not re-read)`;
    case 'practice':
      return `common practice: ${source.title}`;
    case 'own':
      return `our own careful choice: ${source.title}`;
    case 'derived':
      return source.title;
  }
}
