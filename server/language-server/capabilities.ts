import type { InitializeParams, ServerCapabilities } from 'vscode-languageserver';
import type { InitializationOptions } from '../../client/protocol.ts';
import { chooseEncoding, type PositionEncoding } from './positions.ts';

/** What the client can take, read once; whatever it does not name, it cannot. */
export interface ClientSkills {
  readonly encoding: PositionEncoding;
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly refreshesHints: boolean;
  readonly relatedInformation: boolean;
  readonly codeDescription: boolean;
  readonly diagnosticVersions: boolean;
  readonly configuration: boolean;
  readonly registersWatchers: boolean;
  readonly registersConfiguration: boolean;
  /** Formatting can be offered for rigs alone, and not for the Markdown documents that hold some. */
  readonly registersFormatting: boolean;
  readonly refreshesLenses: boolean;
  readonly changeAnnotations: boolean;
  readonly snippets: boolean;
  readonly insertReplace: boolean;
  readonly markdown: boolean;
  readonly symbolTree: boolean;
  readonly links: boolean;
  readonly versionedEdits: boolean;
  readonly actionLiterals: boolean;
  /** It shows what cannot be done, with the reason. */
  readonly disabledActions: boolean;
  /** It is the extension of this project: it answers file requests and shows rule pages. */
  readonly own: boolean;
}

export function readSkills({ capabilities = {}, initializationOptions }: Partial<InitializeParams>): ClientSkills {
  const { workspace, textDocument, general } = capabilities;
  const completion = textDocument?.completion?.completionItem;
  const formats = textDocument?.hover?.contentFormat;
  return {
    encoding: chooseEncoding(general?.positionEncodings),
    pullsDiagnostics: textDocument?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    relatedInformation: textDocument?.publishDiagnostics?.relatedInformation === true || (textDocument?.diagnostic as { relatedInformation?: boolean } | undefined)?.relatedInformation === true,
    codeDescription: textDocument?.publishDiagnostics?.codeDescriptionSupport === true || (textDocument?.diagnostic as { codeDescriptionSupport?: boolean } | undefined)?.codeDescriptionSupport === true,
    diagnosticVersions: textDocument?.publishDiagnostics?.versionSupport === true,
    configuration: workspace?.configuration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    registersConfiguration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersFormatting: [textDocument?.formatting, textDocument?.rangeFormatting, textDocument?.onTypeFormatting].every((f) => f?.dynamicRegistration === true),
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    changeAnnotations: workspace?.workspaceEdit?.documentChanges === true && workspace.workspaceEdit.changeAnnotationSupport !== undefined,
    snippets: completion?.snippetSupport === true,
    insertReplace: completion?.insertReplaceSupport === true,
    // Text with stars is better than no answer: a client that says nothing of formats gets Markdown.
    markdown: !Array.isArray(formats) || formats.length === 0 || formats.includes('markdown'),
    symbolTree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    links: textDocument?.definition?.linkSupport === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    actionLiterals: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    disabledActions: textDocument?.codeAction?.disabledSupport === true,
    own: (initializationOptions as Partial<InitializationOptions> | undefined)?.files === true,
  };
}

/** Names for the parts that tokens play, in the order of `tokenTypes`; standard ones, so that every theme has colours for them. */
export const tokenLegend = {
  tokenTypes: ['keyword', 'property', 'function', 'enumMember', 'variable', 'number', 'type', 'number', 'string', 'comment', 'operator'],
  tokenModifiers: ['declaration'],
};

/** A line is put into the layout when it is left, a block when it is closed. */
export const typedFormatting = { firstTriggerCharacter: '\n', moreTriggerCharacter: ['}'] };

export function serverCapabilities(skills: ClientSkills): ServerCapabilities {
  return {
    positionEncoding: skills.encoding,
    textDocumentSync: { openClose: true, change: 2, save: false },
    ...(skills.pullsDiagnostics ? { diagnosticProvider: { identifier: 'linewright', interFileDependencies: true, workspaceDiagnostics: true } } : {}),
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '"', '>'], resolveProvider: true },
    signatureHelpProvider: { triggerCharacters: [' '] },
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    documentLinkProvider: { resolveProvider: false },
    ...(skills.registersFormatting ? {} : { documentFormattingProvider: true, documentRangeFormattingProvider: true, documentOnTypeFormattingProvider: typedFormatting }),
    codeLensProvider: { resolveProvider: false },
    renameProvider: { prepareProvider: true },
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    inlayHintProvider: true,
    callHierarchyProvider: true,
    semanticTokensProvider: { legend: tokenLegend, full: { delta: true }, range: true },
    codeActionProvider: skills.actionLiterals ? { codeActionKinds: ['quickfix', 'refactor.rewrite', 'source.fixAll'] } : true,
    workspace: { workspaceFolders: { supported: true, changeNotifications: true }, fileOperations: { willRename: { filters: [{ pattern: { glob: '**/*.rig', matches: 'file' } }, { pattern: { glob: '**', matches: 'folder' } }] } } },
  };
}
