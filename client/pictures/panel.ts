import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { commands } from '../command-names.ts';
import { picturesRequest, type LineRange, type PicturesParams, type PicturesResult } from '../protocol.ts';
import type { FromPage, Notice, PageState, PageWords, ShownPicture, ToPage } from './messages.ts';
import { picturesPage } from './page.ts';
import { fileNameOf, pictureUnder, shownPictures } from './shown-pictures.ts';

const viewType = 'linewright.pictures';

/** Pictures follow the typing, but not every key. */
const settle_ms = 250;

const rangeOf = ({ start, end }: LineRange): vscode.Range => new vscode.Range(start.line, start.character, end.line, end.character);
const isRig = (document: vscode.TextDocument | undefined): document is vscode.TextDocument => document?.languageId === 'rig';

const words = (): PageWords => ({
  zoomIn: vscode.l10n.t('Zoom in (+)'),
  zoomOut: vscode.l10n.t('Zoom out (-)'),
  fit: vscode.l10n.t('Fit the width (0)'),
  fitted: vscode.l10n.t('fit'),
  zoom: vscode.l10n.t('Zoom'),
  reveal: vscode.l10n.t('Show in the text'),
  saveSvg: vscode.l10n.t('Save as SVG'),
  savePng: vscode.l10n.t('Save as PNG'),
  table: vscode.l10n.t('As a table'),
  pictures: vscode.l10n.t('Pictures'),
  old: vscode.l10n.t('drawn before the text was broken'),
  keys: vscode.l10n.t('Pictures. Arrow keys move the view, plus and minus zoom, 0 fits the width, Enter on a picture shows its text.'),
});

function makeNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(18));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('');
}

/** The pictures of the rig that was edited last, beside its text. There is one such panel. */
class PicturesPanel {
  readonly #panel: vscode.WebviewPanel;
  readonly #client: BaseLanguageClient;
  readonly #log: vscode.LogOutputChannel;
  readonly #subscriptions: vscode.Disposable[] = [];
  #rig: vscode.Uri | undefined;
  #shown: readonly ShownPicture[] = [];
  #notices: readonly Notice[] = [];
  #current: string | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking: vscode.CancellationTokenSource | undefined;
  /** The last selection came from a picture: the page shows it already. */
  #fromPage = false;

  constructor(panel: vscode.WebviewPanel, context: vscode.ExtensionContext, client: BaseLanguageClient, log: vscode.LogOutputChannel, rig: vscode.Uri | undefined) {
    this.#panel = panel;
    this.#client = client;
    this.#log = log;
    const { webview } = panel;
    webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(context.extensionUri, 'dist')] };
    panel.iconPath = { light: vscode.Uri.joinPath(context.extensionUri, 'client/media/rig-light.svg'), dark: vscode.Uri.joinPath(context.extensionUri, 'client/media/rig-dark.svg') };
    this.#subscriptions.push(
      webview.onDidReceiveMessage((message: FromPage) => this.#receive(message)),
      panel.onDidChangeViewState(() => panel.visible && this.#refreshSoon(0)),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.follow(editor?.document)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.#selected(textEditor)),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        // A used file changes what a rig comes to, so any rig counts.
        if (isRig(document)) this.#refreshSoon(settle_ms);
      }),
      vscode.workspace.onDidChangeConfiguration((change) => change.affectsConfiguration('linewright.check') && this.#refreshSoon(settle_ms)),
      client.onDidChangeState(({ newState }) => newState !== State.Starting && this.#refreshSoon(0)),
    );
    if (rig !== undefined) this.#show(rig);
    webview.html = picturesPage({ script: webview.asWebviewUri(vscode.Uri.joinPath(context.extensionUri, 'dist', 'pictures-view.js')).toString(), nonce: makeNonce() }, words(), vscode.env.language);
  }

  reveal(rig: vscode.Uri): void {
    this.#panel.reveal(undefined, true);
    this.#show(rig);
    this.#refreshSoon(0);
  }

  dispose(): void {
    clearTimeout(this.#timer);
    this.#asking?.cancel();
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  /** Another rig is being edited. */
  follow(document: vscode.TextDocument | undefined): void {
    if (!isRig(document) || document.uri.toString() === this.#rig?.toString()) return;
    this.#show(document.uri);
    this.#refreshSoon(0);
  }

  #show(rig: vscode.Uri): void {
    if (rig.toString() === this.#rig?.toString()) return;
    this.#rig = rig;
    this.#shown = [];
    this.#current = undefined;
    this.#panel.title = vscode.l10n.t('Pictures of {0}', this.#name);
  }

  get #name(): string {
    return this.#rig?.path.split('/').at(-1) ?? '';
  }

  get #editor(): vscode.TextEditor | undefined {
    const rig = this.#rig?.toString();
    return [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors].find((editor) => editor?.document.uri.toString() === rig);
  }

  #refreshSoon(after_ms: number): void {
    if (!this.#panel.visible) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#refresh(), after_ms);
  }

  async #refresh(): Promise<void> {
    const rig = this.#rig;
    if (rig === undefined) return;
    this.#asking?.cancel();
    const asking = new vscode.CancellationTokenSource();
    this.#asking = asking;
    try {
      // A file that no editor shows is still read, as after the window was loaded again.
      await vscode.workspace.openTextDocument(rig);
      const cursor = this.#editor?.selection.active;
      const params: PicturesParams = { uri: this.#client.code2ProtocolConverter.asUri(rig), ...(cursor === undefined ? {} : { position: { line: cursor.line, character: cursor.character } }) };
      const answer = await this.#client.sendRequest<PicturesResult>(picturesRequest, params, asking.token);
      if (asking.token.isCancellationRequested) return;
      this.#shown = shownPictures(this.#shown, answer);
      this.#notices = noticesOf(answer, this.#shown.length);
      // The cursor may have gone on while the answer was made.
      const now = this.#editor?.selection.active;
      if (now !== undefined) this.#current = pictureUnder(this.#shown, now) ?? this.#current;
    } catch (error) {
      if (asking.token.isCancellationRequested) return;
      this.#log.warn(`pictures: ${error instanceof Error ? error.message : String(error)}`);
      this.#shown = this.#shown.map((p) => ({ ...p, old: true }));
      this.#notices = [{ says: vscode.l10n.t('The server gives no pictures. What is shown was drawn before; the log says why.') }];
    }
    this.#send();
  }

  #send(): void {
    this.#post({ type: 'show', uri: this.#rig?.toString() ?? '', name: vscode.l10n.t('Pictures of {0}', this.#name), pictures: this.#shown, current: this.#current, notices: this.#notices });
  }

  #post(message: ToPage): void {
    void this.#panel.webview.postMessage(message);
  }

  #selected({ document, selection }: vscode.TextEditor): void {
    if (document.uri.toString() !== this.#rig?.toString()) return this.follow(document);
    const id = pictureUnder(this.#shown, selection.active);
    const isNews = id !== undefined && id !== this.#current && !this.#fromPage;
    this.#fromPage = false;
    if (!isNews) return;
    this.#current = id;
    this.#post({ type: 'current', id });
  }

  async #receive(message: FromPage): Promise<void> {
    const picture = 'id' in message ? this.#shown.find((p) => p.id === message.id) : undefined;
    switch (message.type) {
      case 'ready':
        this.#send();
        return this.#refreshSoon(0);
      case 'reveal':
        if (picture === undefined) return;
        this.#current = picture.id;
        this.#fromPage = true;
        return this.#goTo(rangeOf(picture.range));
      case 'go':
        return this.#goTo(new vscode.Range(message.at.line, message.at.character, message.at.line, message.at.character));
      case 'save-svg':
        return picture === undefined ? undefined : this.#save(picture, 'svg', new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${picture.svg}\n`));
      case 'save-png':
        return picture === undefined ? undefined : this.#save(picture, 'png', message.bytes);
      case 'failed':
        this.#log.error(`pictures: ${message.says}`);
        return void vscode.window.showErrorMessage(vscode.l10n.t('The picture could not be drawn for saving. The log says why.'));
    }
  }

  async #goTo(range: vscode.Range): Promise<void> {
    if (this.#rig === undefined) return;
    const column = this.#editor?.viewColumn ?? vscode.ViewColumn.One;
    const editor = await vscode.window.showTextDocument(this.#rig, { viewColumn: column });
    editor.selection = new vscode.Selection(range.start, range.start);
    // Only its beginning: the end of a long line would move the text sideways.
    editor.revealRange(new vscode.Range(range.start, range.start), vscode.TextEditorRevealType.InCenterIfOutsideViewport);
  }

  async #save(picture: ShownPicture, extension: 'svg' | 'png', bytes: Uint8Array): Promise<void> {
    const name = fileNameOf(this.#name, picture.id, extension);
    const folder = this.#rig === undefined || this.#rig.scheme === 'untitled' ? vscode.workspace.workspaceFolders?.[0]?.uri : vscode.Uri.joinPath(this.#rig, '..');
    const file = await vscode.window.showSaveDialog({ ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, name) }), filters: extension === 'svg' ? { SVG: ['svg'] } : { PNG: ['png'] }, title: extension === 'svg' ? vscode.l10n.t('Save as SVG') : vscode.l10n.t('Save as PNG') });
    if (file === undefined) return;
    try {
      await vscode.workspace.fs.writeFile(file, bytes);
    } catch (error) {
      void vscode.window.showErrorMessage(vscode.l10n.t('The picture was not saved: {0}', error instanceof Error ? error.message : String(error)));
    }
  }
}

function noticesOf({ broken, leftOut }: PicturesResult, shown: number): Notice[] {
  const [first] = broken;
  return [
    ...(first === undefined ? [] : [{ says: vscode.l10n.t('line {0}: {1}', first.range.start.line + 1, first.says), at: first.range.start }]),
    ...(shown === 0 ? [{ says: vscode.l10n.t('Nothing in this rig has a picture. Lines, winches, chains, repairs and pulls have.') }] : []),
    ...(leftOut === 0 ? [] : [{ says: vscode.l10n.t('{0} more pictures are shown when the cursor is near them.', leftOut) }]),
  ];
}

export function addPictures(context: vscode.ExtensionContext, client: BaseLanguageClient, log: vscode.LogOutputChannel): void {
  let open: PicturesPanel | undefined;
  const adopt = (panel: vscode.WebviewPanel, rig: vscode.Uri | undefined): void => {
    const made = new PicturesPanel(panel, context, client, log, rig);
    open = made;
    panel.onDidDispose(() => {
      made.dispose();
      if (open === made) open = undefined;
    });
  };
  context.subscriptions.push(
    vscode.commands.registerCommand(commands.openPictures, (given?: unknown) => {
      const active = vscode.window.activeTextEditor?.document;
      const rig = given instanceof vscode.Uri ? given : isRig(active) ? active.uri : undefined;
      if (rig === undefined) return void vscode.window.showInformationMessage(vscode.l10n.t('Open a rig first: its pictures stand beside its text.'));
      if (open !== undefined) return open.reveal(rig);
      adopt(vscode.window.createWebviewPanel(viewType, vscode.l10n.t('Pictures'), { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }), rig);
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(panel, state: PageState | undefined) {
        const active = vscode.window.activeTextEditor?.document;
        adopt(panel, typeof state?.uri === 'string' && state.uri !== '' ? vscode.Uri.parse(state.uri) : isRig(active) ? active.uri : undefined);
      },
    }),
    { dispose: () => open?.dispose() },
  );
}

