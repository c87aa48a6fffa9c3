/** How often a server that stopped by itself is started again within the window before it is left stopped. */
export const mostRestarts = 4;
export const restartWindow_ms = 3 * 60 * 1000;

export interface RestartPolicy {
  /** Called for each stop that nobody asked for: whether to start the server again. */
  mayRestart(): boolean;
  /** A person asked for a fresh start: earlier stops no longer count. */
  forgive(): void;
}

export function makeRestartPolicy(now: () => number): RestartPolicy {
  let stops: number[] = [];
  return {
    mayRestart() {
      const at = now();
      stops = [...stops.filter((stop) => at - stop < restartWindow_ms), at];
      return stops.length <= mostRestarts;
    },
    forgive() {
      stops = [];
    },
  };
}
