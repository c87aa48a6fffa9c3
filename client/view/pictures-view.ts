import type { FromPage, PageState, PageWords, ShownPicture, ShowMessage, ToPage } from '../pictures/messages.ts';
import { dragToMove } from './drag-to-move.ts';
import { pngOf } from './png-of.ts';

/** What the editor gives to the script of a page, once. */
interface Editor {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
}
declare function acquireVsCodeApi(): Editor;

const editor = acquireVsCodeApi();
const words = JSON.parse(document.body.dataset['words'] ?? '{}') as PageWords;
const byId = (id: string): HTMLElement => document.getElementById(id)!;
const main = document.querySelector('main')!;
const styles = new CSSStyleSheet();
document.adoptedStyleSheets = [styles];

/** The width that pictures are drawn for. */
const drawnWidth = 760;
const zooms = [0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 3, 4];

let state: PageState = editor.getState() ?? {};
let shown: ShowMessage | undefined;
let current: string | undefined;
const sections = new Map<string, { readonly element: HTMLElement; readonly made: ShownPicture }>();

function keep(change: Partial<PageState>): void {
  state = { ...state, ...change };
  editor.setState(state);
}

const isStill = (): boolean => document.body.classList.contains('vscode-reduce-motion') || matchMedia('(prefers-reduced-motion: reduce)').matches;

function make<K extends keyof HTMLElementTagNameMap>(name: K, set: Partial<Record<string, string>>, ...children: readonly (Node | string)[]): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(set)) if (value !== undefined) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

/** The drawing without its style, which all of them share: it goes into the page once, where the page's policy lets it. */
function drawingOf(svg: string): SVGElement | string {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (parsed.localName !== 'svg') return '';
  const style = parsed.querySelector('style');
  if (style !== null) {
    if (styles.cssRules.length === 0) styles.replaceSync(style.textContent ?? '');
    style.remove();
  }
  return document.importNode(parsed, true) as unknown as SVGElement;
}

/** A figure keeps its unit on its line. */
function tableOf({ table, description }: ShownPicture): HTMLElement {
  const cells = (name: 'th' | 'td', row: readonly string[]): HTMLElement[] => row.map((says) => make(name, name === 'th' ? { scope: 'col' } : {}, says.replace(/(\d) (?=[a-z%])/gi, '$1\u00A0')));
  return make(
    'div',
    { tabindex: '0', role: 'group', 'aria-label': words.table },
    make('table', {}, make('caption', {}, description), make('thead', {}, make('tr', {}, ...cells('th', table.head))), make('tbody', {}, ...table.rows.map((row) => make('tr', {}, ...cells('td', row))))),
  );
}

function button(says: string, run: () => void): HTMLElement {
  const made = make('button', { class: 'tool', type: 'button' }, says);
  made.addEventListener('click', run);
  return made;
}

async function savePng(picture: ShownPicture): Promise<void> {
  try {
    editor.postMessage({ type: 'save-png', id: picture.id, bytes: await pngOf(picture.svg) });
  } catch (error) {
    editor.postMessage({ type: 'failed', says: String(error) });
  }
}

function sectionOf(picture: ShownPicture): HTMLElement {
  const { id, title } = picture;
  const name = `title-${id.replace(/[^\w-]/g, (c) => `_${c.codePointAt(0)!.toString(16)}`)}`;
  const figure = make('button', { class: 'figure', type: 'button', title: words.reveal }, drawingOf(picture.svg));
  figure.addEventListener('click', () => {
    markCurrent(id, false);
    editor.postMessage({ type: 'reveal', id });
  });
  const details = make('details', {}, make('summary', {}, words.table), tableOf(picture));
  details.open = state.open?.includes(id) === true;
  details.addEventListener('toggle', () => keep({ open: details.open ? [...new Set([...(state.open ?? []), id])] : (state.open ?? []).filter((o) => o !== id) }));
  const broken = picture.broken === undefined ? [] : [make('p', { class: 'broken' }, picture.old ? `${picture.broken} (${words.old})` : picture.broken)];
  return make(
    'article',
    { 'aria-labelledby': name, class: picture.old ? 'old' : '', 'data-id': id },
    make('h2', { id: name }, title),
    ...broken,
    figure,
    make('div', { class: 'under' }, details, button(words.saveSvg, () => editor.postMessage({ type: 'save-svg', id })), button(words.savePng, () => void savePng(picture))),
  );
}

const isSame = (a: ShownPicture, b: ShownPicture): boolean => a.svg === b.svg && a.broken === b.broken && a.old === b.old;

/** Only what changed is made again, so that the view, the focus and open tables stay where they are. */
function show(message: ShowMessage): void {
  const isOther = shown !== undefined && shown.uri !== message.uri;
  const isFirst = shown === undefined;
  // What is sent before there is an answer is not yet the view that was kept.
  if (message.pictures.length > 0) shown = message;
  byId('name').textContent = message.name;
  byId('name').title = message.name;
  const wanted = new Set(message.pictures.map((p) => p.id));
  for (const [id, { element }] of sections) {
    if (wanted.has(id) && !isOther) continue;
    element.remove();
    sections.delete(id);
  }
  let before: Element | null = null;
  for (const picture of message.pictures) {
    const known = sections.get(picture.id);
    const element = known !== undefined && isSame(known.made, picture) ? known.element : sectionOf(picture);
    if (known !== undefined && known.element !== element) {
      const hadFocus = known.element.contains(document.activeElement);
      known.element.replaceWith(element);
      if (hadFocus) element.querySelector<HTMLElement>('.figure')?.focus({ preventScroll: true });
    }
    const place: Element | null = before === null ? main.firstElementChild : before.nextElementSibling;
    if (place !== element) main.insertBefore(element, place);
    sections.set(picture.id, { element, made: picture });
    before = element;
  }
  byId('notices').replaceChildren(...message.notices.map(({ says, at }) => {
    if (at === undefined) return make('li', {}, says);
    const go = make('button', { type: 'button' }, says);
    go.addEventListener('click', () => editor.postMessage({ type: 'go', at }));
    return make('li', {}, go);
  }));
  if (isFirst && state.uri === message.uri && message.pictures.length > 0) main.scrollTo(state.left ?? 0, state.top ?? 0);
  const isBack = isFirst && state.uri === message.uri;
  markCurrent(message.current, (isOther || message.current !== current) && !isBack);
  keep({ uri: message.uri });
}

function markCurrent(id: string | undefined, follow: boolean): void {
  current = id;
  for (const [key, { element }] of sections) {
    element.classList.toggle('current', key === id);
    if (key === id) element.setAttribute('aria-current', 'true');
    else element.removeAttribute('aria-current');
  }
  const element = id === undefined ? undefined : sections.get(id)?.element;
  if (follow) element?.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: isStill() ? 'instant' : 'smooth' });
}

function zoomTo(zoom: number | undefined): void {
  const anchor = main.scrollHeight === 0 ? 0 : (main.scrollTop + main.clientHeight / 2) / main.scrollHeight;
  main.classList.toggle('fit', zoom === undefined);
  if (zoom === undefined) main.style.removeProperty('--picture-width');
  else main.style.setProperty('--picture-width', `${drawnWidth * zoom}px`);
  byId('zoom').textContent = zoom === undefined ? words.fitted : `${Math.round(zoom * 100)} %`;
  main.scrollTop = anchor * main.scrollHeight - main.clientHeight / 2;
  keep({ zoom });
}

function zoomBy(steps: 1 | -1): void {
  const now = state.zoom ?? (main.querySelector('.figure')?.clientWidth ?? drawnWidth) / drawnWidth;
  const next = steps > 0 ? zooms.find((z) => z > now + 0.01) : zooms.findLast((z) => z < now - 0.01);
  if (next !== undefined) zoomTo(next);
}

byId('zoom-in').addEventListener('click', () => zoomBy(1));
byId('zoom-out').addEventListener('click', () => zoomBy(-1));
byId('fit').addEventListener('click', () => zoomTo(undefined));

document.addEventListener('keydown', (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === '+' || event.key === '=') zoomBy(1);
  else if (event.key === '-') zoomBy(-1);
  else if (event.key === '0') zoomTo(undefined);
  else return;
  event.preventDefault();
});
main.addEventListener('wheel', (event) => {
  if (!event.ctrlKey) return;
  event.preventDefault();
  zoomBy(event.deltaY < 0 ? 1 : -1);
}, { passive: false });
dragToMove(main);

let resting: ReturnType<typeof setTimeout> | undefined;
main.addEventListener('scroll', () => {
  clearTimeout(resting);
  resting = setTimeout(() => keep({ top: main.scrollTop, left: main.scrollLeft }), 200);
});

addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.type === 'show') show(data);
  else if (data.type === 'current') markCurrent(data.id, true);
});

zoomTo(state.zoom);
editor.postMessage({ type: 'ready' });
