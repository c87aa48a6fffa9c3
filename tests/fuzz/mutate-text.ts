type Random = () => number;

const bits = [
  '{', '}', '{{', '}}', '\n', '\r', '\r\n', '"', '#', ' ', '\t', '->', '→', ':', ';', ',', '.', '/', '%', '°', '-', '+', '=', '<<<<<<< a', '=======', '>>>>>>> b',
  '0', '9', '1e9', '1/0', '99999999999999999999', '-5', '0.0', 'NaN', 'Infinity', '3/8', '1,000,0', '2026-02-30', '0000-00-00', '9999-12-31',
  'line', 'winch main {', 'use "x.rig"', 'constructor', '__proto__', 'toString', 'hasOwnProperty', 'mm', 'kN', 't', 'd', 'inboard', 'outboard', 'keep main', 'at', 'from',
  '\u0000', '\ufeff', '\ud800', '\udfff', '\u2028', '\u00a0', '３', 'а', 'é', 'e\u0301', '線', '😀', '\u202e', '\u200b', '# allow unknown-name: x', '`', '<script>', '&amp;', '$1', '\\',
];

/** The text with a few places broken: cut out, doubled, moved, or with something put in. */
export function mutateText(text: string, random: Random): string {
  let now = text;
  const place = (): number => Math.floor(random() * (now.length + 1));
  for (let times = 1 + Math.floor(random() * 4); times > 0; times--) {
    const at = place();
    const length = Math.floor(random() ** 3 * 60);
    const what = random();
    if (what < 0.4) now = now.slice(0, at) + bits[Math.floor(random() * bits.length)]! + now.slice(at);
    else if (what < 0.6) now = now.slice(0, at) + now.slice(at + length);
    else if (what < 0.75) now = now.slice(0, at) + now.slice(at, at + length) + now.slice(at);
    else if (what < 0.85) {
      const piece = now.slice(at, at + length);
      now = now.slice(0, at) + now.slice(at + length);
      const to = place();
      now = now.slice(0, to) + piece + now.slice(to);
    } else if (what < 0.95) now = now.slice(0, at) + String.fromCharCode(Math.floor(random() * (random() < 0.7 ? 128 : 65536))) + now.slice(at + 1);
    else now = now.slice(0, at);
  }
  return now;
}
