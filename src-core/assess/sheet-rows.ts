import type { Place } from '../base/span.ts';
import type { Value } from '../mechanics/derivation.ts';

/** One line of a block's sheet: a value, or words, or both. */
export interface SheetRow {
  /** Kebab-case, unique in its block, the same as long as the block says the same things in the same order. */
  readonly id: string;
  /** What it is of, where many things are told in the same words: `layer 2`, `bow-22`. */
  readonly group: string | undefined;
  readonly label: string;
  readonly value: Value | undefined;
  readonly says: string | undefined;
  /** Where the file speaks of it. */
  readonly place: Place | undefined;
}

export interface SheetSection {
  /** Undefined for what is said of the block itself. */
  readonly title: string | undefined;
  /** The rows of a table have groups, and the same labels in each. */
  readonly layout: 'list' | 'table';
  readonly rows: readonly SheetRow[];
}

interface RowMore {
  readonly id?: string;
  readonly group?: string;
  readonly says?: string | undefined;
  readonly place?: Place | undefined;
}

const kebab = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-|-$/g, '');

/** Collects the rows of one block and keeps their ids apart. */
export class SheetRows {
  readonly sections: { title: string | undefined; layout: SheetSection['layout']; rows: SheetRow[] }[] = [];
  readonly #ids = new Set<string>();
  #prefix = '';

  /** What follows stands under a title; `prefix` begins the ids. */
  section(title: string | undefined, prefix = '', layout: SheetSection['layout'] = 'list'): void {
    this.sections.push({ title, layout, rows: [] });
    this.#prefix = prefix;
  }

  add(label: string, value: Value | undefined, more: RowMore = {}): void {
    if (this.sections.length === 0) this.section(undefined);
    const own = [this.#prefix, more.group ?? '', more.id ?? label].map(kebab).filter((part) => part !== '').join('-');
    let id = own;
    for (let n = 2; this.#ids.has(id); n++) id = `${own}-${n}`;
    this.#ids.add(id);
    this.sections.at(-1)!.rows.push({ id, group: more.group, label, value, says: more.says, place: more.place });
  }

  /** A row in words; nothing when there are none. */
  words(label: string, says: string | undefined, more: RowMore = {}): void {
    if (says !== undefined && says !== '') this.add(label, undefined, { ...more, says });
  }

  done(): readonly SheetSection[] {
    return this.sections.filter((section) => section.rows.length > 0);
  }
}
