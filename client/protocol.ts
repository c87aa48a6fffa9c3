/**
 * What Linewright's server and this extension say to each other beyond the Language Server Protocol.
 * Every part is optional on both sides: any editor works without it.
 */

/** Client to server: the sheet of one rig, as the command line prints it. */
export const sheetRequest = 'linewright/sheet';
export interface SheetParams {
  readonly uri: string;
}
export interface SheetResult {
  readonly text: string;
}

/** Client to server: what a stage of reading makes of one rig: its tokens, its tree or its model. */
export const stageRequest = 'linewright/stage';
export interface StageParams {
  readonly uri: string;
  readonly stage: string;
}

/**
 * Client to server: the sheet of one rig as other texts than those at hand would make it, such as those of the last commit.
 * The server cannot reach them; it says which it wants, and is asked again with them.
 */
export const sheetOfTextsRequest = 'linewright/sheetOfTexts';
export interface SheetOfTextsParams {
  readonly uri: string;
  /** By address; null for a file that is not there. */
  readonly texts: Readonly<Record<string, string | null>>;
}
export interface SheetOfTextsResult {
  readonly text: string;
  /** Addresses of files that are used and were not given. */
  readonly wants: readonly string[];
}

export interface LinePosition {
  readonly line: number;
  readonly character: number;
}
export interface LineRange {
  readonly start: LinePosition;
  readonly end: LinePosition;
}

/** Client to server: the pictures of one rig, in the order of its text; of a long one, those about the position. */
export const picturesRequest = 'linewright/pictures';
export interface PicturesParams {
  readonly uri: string;
  readonly position?: LinePosition;
}
export interface RigPicture {
  /** The same for the same picture from one state of the text to the next. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly svg: string;
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** What of the text it shows. */
  readonly range: LineRange;
  /** Why its text cannot be read in full. */
  readonly broken?: string;
}
export interface PicturesResult {
  readonly pictures: readonly RigPicture[];
  readonly leftOut: number;
  /** The first thing in each block that cannot be read. */
  readonly broken: readonly { readonly says: string; readonly range: LineRange }[];
}

/** Client to server: the page of one rule, or of any other code that a finding carries. */
export const explainRequest = 'linewright/explain';
export interface ExplainParams {
  readonly code: string;
}
export interface ExplainResult {
  readonly markdown: string;
}

/** Client to server: every rule, for a person to choose from. */
export const rulesRequest = 'linewright/rules';
export interface RulesResult {
  readonly rules: readonly { readonly code: string; readonly summary: string }[];
}

/** Client to server: what the preview of a Markdown document shows under each of its rig fences. */
export const fencesRequest = 'linewright/fences';
export interface FencesParams {
  /** Left out for a text that is no document. */
  readonly uri?: string;
  readonly text: string;
}
export interface FencesResult {
  /** Static HTML, one for each fence, in their order. */
  readonly fences: readonly string[];
}

/** Client to server: judge every rig of the workspace now, and say how many findings there are. */
export const checkWorkspaceRequest = 'linewright/checkWorkspace';
export interface CheckWorkspaceResult {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly others: number;
  /** The workspace holds more rigs than are read. */
  readonly isCut: boolean;
}

/** Server to client: a file through the editor, for workspaces that are on no disk. */
export const readFileRequest = 'linewright/readFile';
export interface ReadFileParams {
  readonly uri: string;
}
export interface ReadFileResult {
  readonly text?: string;
  readonly problem?: 'missing' | 'directory' | 'not-utf8' | 'unreadable';
}

/** Server to client: every rig of the open folders, or every Markdown document. */
export const findRigsRequest = 'linewright/findRigs';
export interface FindRigsParams {
  readonly documents?: true;
}
export interface FindRigsResult {
  readonly uris: readonly string[];
  /** There are more than these. */
  readonly isCut?: boolean;
}

/** Sent as `initializationOptions`: what this client can do beyond the protocol. */
export interface InitializationOptions {
  /** It answers `linewright/readFile` and `linewright/findRigs`. */
  readonly files: boolean;
}
