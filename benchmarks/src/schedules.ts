/** How long the shortest schedules of 72 hard projects take: 30 activities, four resources, scarce to ample. One line of JSON, CPU seconds. */
import { schedule } from '@rotorwright/reliability';
import { hardProject } from '../../packages/reliability/test/schedules/hard-projects.ts';

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

const times: number[] = [];
let unproven = 0;
let sum = 0;
for (const networkComplexity of [1.5, 1.8, 2.1]) {
  for (const resourceFactor of [0.25, 0.5, 0.75, 1]) {
    for (const resourceStrength of [0.2, 0.5, 0.7]) {
      for (const seed of [1, 2]) {
        const project = hardProject({ networkComplexity, resourceFactor, resourceStrength }, seed);
        const start = cpuSeconds();
        const { makespan, proven } = schedule(project, { limit: 60 });
        times.push(cpuSeconds() - start);
        sum += makespan;
        if (!proven) unproven++;
      }
    }
  }
}
const total = times.reduce((all, time) => all + time, 0);
console.log(JSON.stringify({ name: 'schedules', projects: times.length, unproven, sum, longest: Number(Math.max(...times).toFixed(3)), total: Number(total.toFixed(2)) }));
