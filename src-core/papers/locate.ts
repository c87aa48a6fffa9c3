import type { LineIndex } from '../base/line-index.ts';
import type { Place, Span } from '../base/span.ts';

/** A place as people and other programs name it. Lines and columns count from 1, columns in UTF-16 units. */
export interface Location {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Tells where a place stands; undefined when no file of the rig holds it. */
export type Locate = (place: Place) => Location | undefined;

interface LocatedFile {
  readonly path: string;
  readonly lines: LineIndex;
  spanOf(place: Place): Span | undefined;
  readonly chunks: readonly { readonly chunk: object }[];
}

/** Looks places up in files; `called` gives the name that a file is shown under. */
export function locateIn(files: Iterable<LocatedFile>, called: (path: string) => string = (path) => path): Locate {
  const holders = new Map<object, LocatedFile>();
  for (const file of files) for (const { chunk } of file.chunks) holders.set(chunk, file);
  return (place) => {
    const file = holders.get(place.chunk);
    const span = file?.spanOf(place);
    if (file === undefined || span === undefined) return undefined;
    const [start, end] = [file.lines.lineColumn(span.start), file.lines.lineColumn(span.end)];
    return { file: called(file.path), line: start.line + 1, column: start.column + 1, endLine: end.line + 1, endColumn: end.column + 1 };
  };
}
