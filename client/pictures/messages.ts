import type { LinePosition, LineRange } from '../protocol.ts';

/** What the panel and the page inside it say to each other. */
export interface ShownPicture {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly svg: string;
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  readonly range: LineRange;
  /** Why it is not what the text says now, or not all of it. */
  readonly broken?: string;
  /** Drawn from an earlier state of the text. */
  readonly old: boolean;
}

export interface ShowMessage {
  readonly type: 'show';
  readonly uri: string;
  readonly name: string;
  readonly pictures: readonly ShownPicture[];
  readonly current: string | undefined;
  /** Sentences that stand on top. */
  readonly notices: readonly Notice[];
}

export interface Notice {
  readonly says: string;
  readonly at?: LinePosition;
}

export interface CurrentMessage {
  readonly type: 'current';
  readonly id: string | undefined;
}

export type ToPage = ShowMessage | CurrentMessage;

export type FromPage =
  | { readonly type: 'ready' }
  | { readonly type: 'reveal'; readonly id: string }
  | { readonly type: 'go'; readonly at: LinePosition }
  | { readonly type: 'save-svg'; readonly id: string }
  | { readonly type: 'save-png'; readonly id: string; readonly bytes: Uint8Array }
  | { readonly type: 'failed'; readonly says: string };

/** What the page keeps of itself when its window is loaded again. */
export interface PageState {
  readonly uri?: string;
  /** Undefined fits the width. */
  readonly zoom?: number;
  readonly top?: number;
  readonly left?: number;
  readonly open?: readonly string[];
}

/** Words of the page, in the editor's language. */
export interface PageWords {
  readonly zoomIn: string;
  readonly zoomOut: string;
  readonly fit: string;
  readonly fitted: string;
  readonly reveal: string;
  readonly saveSvg: string;
  readonly savePng: string;
  readonly table: string;
  readonly pictures: string;
  readonly old: string;
  readonly keys: string;
  readonly zoom: string;
}
