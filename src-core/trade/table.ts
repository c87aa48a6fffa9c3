import type { Source } from './source.ts';
import { sources, type SourceKey } from './sources.ts';

/** A published table: rows as they stand in the document, in its own units, with the document beside them. */
export interface Table<Row> {
  readonly about: string;
  readonly source: Source;
  readonly rows: readonly Row[];
}

/** The source that a table's JSON names. An unknown key is found by the check of the tables, not by a reader. */
export function sourceNamed(key: string): Source {
  const source = sources[key as SourceKey];
  if (source === undefined) throw new Error(`the table names the source ${key}, which is not in the list of sources`);
  return source;
}
