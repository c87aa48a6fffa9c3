/**
 * The path that a `use` means, from the workspace folder; undefined when it leads out of it. Only `/` separates
 * names, on every system; a path that starts at a drive, a root or a scheme leads out.
 */
export function resolveUse(from: string, written: string): string | undefined {
  if (written === '' || written.length > 1000 || /^[\/\\]|^[A-Za-z]:|\\|[\u0000-\u001f]/.test(written)) return undefined;
  const parts = from.split('/').slice(0, -1);
  for (const part of written.split('/')) {
    if (part === '' || part === '.') continue;
    if (part === '..') {
      if (parts.length === 0) return undefined;
      parts.pop();
    } else parts.push(part);
  }
  return parts.length === 0 ? undefined : parts.join('/');
}
