/**
 * How long the shortest schedules of hard projects take, 30 activities and four resources: 72 from scarce to ample, and 120 of the
 * scarcest, on which the longest search decides. One line of JSON for each kind, CPU seconds.
 */
import { schedule } from '@rotorwright/reliability';
import { hardProject, type Hardness } from '../../packages/reliability/test/schedules/hard-projects.ts';

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

function measure(name: string, factors: readonly number[], strengths: readonly number[], seeds: number): void {
  const all = [1.5, 1.8, 2.1].flatMap((networkComplexity) => factors.flatMap((resourceFactor) => strengths.map((resourceStrength): Hardness => ({ networkComplexity, resourceFactor, resourceStrength }))));
  const times: number[] = [];
  let unproven = 0;
  let sum = 0;
  for (const hardness of all) {
    for (let seed = 1; seed <= seeds; seed++) {
      const project = hardProject(hardness, seed);
      const start = cpuSeconds();
      const { makespan, proven } = schedule(project, { limit: 60 });
      times.push(cpuSeconds() - start);
      sum += makespan;
      if (!proven) unproven++;
    }
  }
  times.sort((a, b) => a - b);
  const total = times.reduce((before, time) => before + time, 0);
  console.log(JSON.stringify({ name, projects: times.length, unproven, sum, median: Number(times[times.length >> 1]!.toFixed(3)), longest: Number(times.at(-1)!.toFixed(3)), total: Number(total.toFixed(2)) }));
}

measure('schedules', [0.25, 0.5, 0.75, 1], [0.2, 0.5, 0.7], 2);
measure('schedules-scarce', [0.75, 1], [0.2], 20);
