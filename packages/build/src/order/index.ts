export { workOrder, type Ordered, type WorkOrder } from './order.ts';
