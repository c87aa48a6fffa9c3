import { readdirSync, readFileSync } from 'node:fs';

/** A process with all that it started. Where the system does not tell, only the process itself. */
function family(pid: number): number[] {
  const all = [pid];
  for (let i = 0; i < all.length; i++) {
    try {
      for (const task of readdirSync(`/proc/${all[i]}/task`)) all.push(...readFileSync(`/proc/${all[i]}/task/${task}/children`, 'utf8').split(' ').filter(Boolean).map(Number));
    } catch {
      // It has ended meanwhile, or this system has no /proc.
    }
  }
  return [...new Set(all)];
}

/** Most memory that a process and its children ever held, in MB; not known outside of Linux. */
export function peakMemory(pid: number): number {
  return family(pid).reduce((sum, one) => {
    try {
      return sum + Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${one}/status`, 'utf8'))?.[1]) / 1024;
    } catch {
      return one === pid ? NaN : sum;
    }
  }, 0);
}

/** Milliseconds of processor time that a process and its children have taken; not known outside of Linux. */
export function workOf(pid: number): number {
  return family(pid).reduce((sum, one) => {
    try {
      for (const task of readdirSync(`/proc/${one}/task`)) sum += Number(readFileSync(`/proc/${one}/task/${task}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
      return sum;
    } catch {
      return one === pid ? NaN : sum;
    }
  }, 0);
}
