export const median = (values: readonly number[]): number => quantile(values, 0.5);

export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? NaN;
}

export const figure = (value: number): string => (Number.isNaN(value) ? '-' : value < 10 ? value.toFixed(2) : value < 100 ? value.toFixed(1) : value.toFixed(0));

/** `median / p95`. */
export const spread = (values: readonly number[]): string => (values.length === 0 ? '-' : `${figure(median(values))} / ${figure(quantile(values, 0.95))}`);

export function printTable(head: readonly string[], rows: readonly (readonly string[])[]): void {
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => (r[i] ?? '').length)));
  const line = (cells: readonly string[]): string => cells.map((c, i) => (i === 0 ? c.padEnd(widths[i]!) : c.padStart(widths[i]!))).join('  ');
  console.log(line(head));
  for (const row of rows) console.log(line(row));
}
