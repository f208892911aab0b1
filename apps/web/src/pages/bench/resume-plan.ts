import { nextSteps } from '@rotorwright/build';
import type { ReadableMachine } from '../../data/index.ts';
import { resumeAt, type Resume, type ResumeStep } from './resume.ts';

/**
 * Where the bench opens: in the module that was worked on last, if something can be done there, else in the first
 * module that has something to do.
 */
export function resumePlan({ plan, state, entries }: ReadableMachine, now: number): Resume | undefined {
  const ready = new Set(nextSteps(plan, state.steps).ready.map((step) => step.id));
  const last = entries.findLast((entry) => entry.body.kind === 'signed' && plan.steps.has(entry.body.step));
  const lastModule = last?.body.kind === 'signed' ? plan.steps.get(last.body.step)?.module : undefined;
  const modules = [...plan.modules].sort((a, b) => Number(b.id === lastModule) - Number(a.id === lastModule));
  const chosen = modules.find((module) => module.steps.some((step) => ready.has(step.id))) ?? modules.find((module) => module.steps.some((step) => ['open', 'undone'].includes(state.steps.get(step.id)?.state ?? 'open')));
  if (!chosen) return undefined;
  const steps = chosen.steps.map(({ id }): ResumeStep => {
    const standing = state.steps.get(id);
    const signedAt = standing?.at === undefined || (standing.state !== 'signed' && standing.state !== 'curing') ? undefined : Date.parse(standing.at);
    const openedAt = standing?.reason?.why === 'opened' ? Date.parse(standing.reason.at) : undefined;
    return { id, state: standing?.state ?? 'open', ...(signedAt === undefined ? {} : { signedAt }), ...(openedAt === undefined ? {} : { openedAt }) };
  });
  return resumeAt(steps, now, ready);
}
