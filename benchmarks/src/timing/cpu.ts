/** CPU seconds that this process has used. */
export const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

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
