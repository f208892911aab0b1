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

/** Of some runs the least and the median, of the processor and of the wall each: the least is what a quiet machine takes. */
export interface Spread {
  readonly runs: number;
  readonly least: Times;
  readonly median: Times;
}

export function spreadOf(times: readonly Times[]): Spread {
  const at = (place: number): Times => ({ cpu: times.map(({ cpu }) => cpu).sort((a, b) => a - b)[place]!, wall: times.map(({ wall }) => wall).sort((a, b) => a - b)[place]! });
  return { runs: times.length, least: at(0), median: at(times.length >> 1) };
}

/** @param warmUp runs before those that count: a page or a server has reckoned before, and compiled what it runs often */
export function warmTimes(run: () => void, runs: number, warmUp: number): Spread {
  for (let index = 0; index < warmUp; index += 1) run();
  return spreadOf(Array.from({ length: runs }, () => timesOf(run)));
}

export const inMs = ({ cpu, wall }: Times): Readonly<Record<'cpuMs' | 'wallMs', number>> => ({ cpuMs: Number((1000 * cpu).toFixed(2)), wallMs: Number((1000 * wall).toFixed(2)) });

/** As a benchmark prints it. */
export const printed = ({ runs, least, median }: Spread) => ({ runs, least: inMs(least), median: inMs(median) });

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
