export * from './forward-flight.ts';
export { trimLevelFlight, type FlightTrim, type SteadyFlight } from './level-flight.ts';
export { TrimSolver, type Flapping, type FlightCondition, type TrimModel, type TrimSolution } from './trim.ts';
