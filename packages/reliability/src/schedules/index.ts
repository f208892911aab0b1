export { ProjectError, type Activity, type Project, type Window } from './project.ts';
export { schedule, type Schedule, type ScheduleOptions } from './schedule.ts';
