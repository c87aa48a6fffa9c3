/** Less than this is a click whose hand was not quite still. */
const still_px = 5;

/** A pressed pointer moves what lies under it; a click that ends a move is none. */
export function dragToMove(area: HTMLElement): void {
  let from: { readonly x: number; readonly y: number; readonly left: number; readonly top: number } | undefined;
  let isMoving = false;
  area.addEventListener('pointerdown', (event) => {
    const isText = event.target instanceof Element && event.target.closest('details, .tool') !== null;
    if (event.button !== 0 || event.pointerType === 'touch' || isText) return;
    from = { x: event.clientX, y: event.clientY, left: area.scrollLeft, top: area.scrollTop };
    isMoving = false;
  });
  addEventListener('pointermove', (event) => {
    if (from === undefined) return;
    const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
    if (!isMoving && Math.hypot(dx, dy) < still_px) return;
    isMoving = true;
    area.classList.add('grabbed');
    area.scrollTo({ left: from.left - dx, top: from.top - dy, behavior: 'instant' });
  });
  const end = (): void => {
    from = undefined;
    area.classList.remove('grabbed');
  };
  addEventListener('pointerup', end);
  addEventListener('pointercancel', end);
  area.addEventListener('click', (event) => {
    if (!isMoving) return;
    isMoving = false;
    event.stopPropagation();
    event.preventDefault();
  }, { capture: true });
}
