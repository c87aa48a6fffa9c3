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

/** Client to server: judge every rig of the workspace now, and say how many findings there are. */
export const checkWorkspaceRequest = 'linewright/checkWorkspace';
export interface CheckWorkspaceResult {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly others: number;
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

/** Server to client: every rig of the open folders. */
export const findRigsRequest = 'linewright/findRigs';
export interface FindRigsResult {
  readonly uris: readonly string[];
}

/** Sent as `initializationOptions`: what this client can do beyond the protocol. */
export interface InitializationOptions {
  /** It answers `linewright/readFile` and `linewright/findRigs`. */
  readonly files: boolean;
}
