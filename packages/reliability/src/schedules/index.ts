export { ProjectError, type Activity, type Project, type Window } from './project.ts';
export { schedule, scheduleInOrder, type OrderedSchedule, type Schedule, type ScheduleOptions } from './schedule.ts';
