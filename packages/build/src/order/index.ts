export { placingIn } from './placing.ts';
export { measured, namedSteps, restsOn } from './rules.ts';
export { workOrder, type Ordered, type WorkOrder } from './order.ts';
