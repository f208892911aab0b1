/** CPU seconds that this process has used. */
export const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** CPU and wall seconds of one run: a builder waits for the wall, and what else the machine does adds to it. */
export interface Times {
  readonly cpu: number;
  readonly wall: number;
}

export function timesOf(run: () => void): Times {
  const [cpu, wall] = [cpuSeconds(), performance.now()];
  run();
  return { cpu: cpuSeconds() - cpu, wall: (performance.now() - wall) / 1000 };
}

/** Median CPU seconds of nine warm runs; the first is not counted. */
export function medianCpuSeconds(run: () => void): number {
  run();
  const times = Array.from({ length: 9 }, () => {
    const start = cpuSeconds();
    run();
    return cpuSeconds() - start;
  });
  return times.toSorted((a, b) => a - b)[times.length >> 1]!;
}
