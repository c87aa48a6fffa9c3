import type { PageWords } from './messages.ts';

export interface PageAddresses {
  readonly script: string;
  readonly nonce: string;
}

const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);

const style = `
html, body { height: 100%; margin: 0; padding: 0; }
body { display: flex; flex-direction: column; overflow: hidden; color: var(--vscode-editor-foreground); background: var(--vscode-editor-background); font: var(--vscode-font-weight) var(--vscode-font-size) / 1.4 var(--vscode-font-family); }
header { display: flex; align-items: center; gap: 4px; flex: none; padding: 4px 12px; border-bottom: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); }
h1 { flex: 1; margin: 0; font-size: 1em; font-weight: 600; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
header output { min-width: 3.2em; text-align: center; }
button { font: inherit; color: inherit; }
.tool { min-width: 26px; min-height: 26px; padding: 0 7px; border: 1px solid var(--vscode-contrastBorder, transparent); border-radius: 4px; background: transparent; cursor: pointer; }
.tool:hover { background: var(--vscode-toolbar-hoverBackground); }
:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 2px; }
#notices { flex: none; margin: 0; padding: 0; list-style: none; max-height: 30%; overflow: auto; }
#notices li { padding: 5px 12px; color: var(--vscode-inputValidation-errorForeground, var(--vscode-editor-foreground)); background: var(--vscode-inputValidation-errorBackground); border-bottom: 1px solid var(--vscode-inputValidation-errorBorder, var(--vscode-contrastBorder, transparent)); }
#notices button { padding: 0; border: 0; background: none; text-align: start; text-decoration: underline; cursor: pointer; }
main { flex: 1; overflow: auto; padding: 12px; outline-offset: -3px !important; }
main.grabbed { cursor: grabbing; user-select: none; }
article { width: max-content; min-width: min(100%, 420px); margin: 0 0 16px; padding-inline-start: 9px; border-inline-start: 3px solid transparent; }
main.fit article { width: auto; }
article.current { border-inline-start-color: var(--vscode-focusBorder); }
h2 { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.figure { display: block; width: 100%; padding: 0; border: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); border-radius: 4px; background: none; text-align: start; cursor: pointer; overflow: hidden; }
main.fit .figure { max-width: 1000px; }
.figure .lw { display: block; max-width: none; width: var(--picture-width, 100%); height: auto; }
.old .figure .lw { filter: grayscale(1); opacity: 0.5; }
.broken { max-width: 70ch; margin: 0 0 4px; padding: 3px 8px; border-inline-start: 3px solid var(--vscode-editorError-foreground, currentColor); }
.under { display: flex; flex-wrap: wrap; align-items: start; gap: 2px 4px; max-width: 1000px; padding-block-start: 3px; }
.under details { flex: 1 1 auto; }
.under details[open] { flex-basis: 100%; order: 1; }
.under details > div { max-width: 100%; overflow-x: auto; }
summary { width: max-content; padding: 3px 6px; cursor: pointer; }
table { border-collapse: collapse; margin-block: 6px; }
caption { padding-block-end: 6px; text-align: start; }
th, td { padding: 3px 10px; border: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, currentColor)); text-align: start; vertical-align: top; }
@media (forced-colors: active) {
  article { border-inline-start-color: Canvas; }
  article.current { border-inline-start-color: Highlight; }
}
`;

/** The page of the pictures: what may run and be loaded is one script and one style, by their nonce. */
export function picturesPage({ script, nonce }: PageAddresses, words: PageWords, language: string): string {
  const policy = `default-src 'none'; img-src data:; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'`;
  const tool = (id: string, says: string, label: string): string => `<button class="tool" type="button" id="${id}" title="${escaped(label)}" aria-label="${escaped(label)}">${says}</button>`;
  return `<!DOCTYPE html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width">
<title>${escaped(words.pictures)}</title>
<style nonce="${nonce}">${style}</style>
</head>
<body data-words="${escaped(JSON.stringify(words))}">
<header>
<h1 id="name">${escaped(words.pictures)}</h1>
<div role="group" aria-label="${escaped(words.zoom)}">
${tool('zoom-out', '−', words.zoomOut)}
<output id="zoom">${escaped(words.fitted)}</output>
${tool('zoom-in', '+', words.zoomIn)}
${tool('fit', '⤢', words.fit)}
</div>
</header>
<ul id="notices" aria-live="polite"></ul>
<main tabindex="0" class="fit" aria-label="${escaped(words.keys)}"></main>
<script nonce="${nonce}" src="${escaped(script)}"></script>
</body>
</html>
`;
}
