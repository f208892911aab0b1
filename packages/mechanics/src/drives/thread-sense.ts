export interface ThreadOnShaft {
  readonly hand: 'right' | 'left';
  /** +1 when the threaded part travels along the shaft's axis while it is screwed in, −1 when against it. */
  readonly goesIn: 1 | -1;
  /** +1 when the shaft turns right-handed about its axis, −1 when left-handed. */
  readonly turns: 1 | -1;
  /** Which side of the thread the torque leaves by, on its way from where it is made to where it is used. */
  readonly torqueLeavesBy: 'threaded-part' | 'other-part';
}

export interface ThreadTendency {
  readonly driven: 'tightens' | 'loosens';
  readonly braking: 'tightens' | 'loosens';
}

/**
 * Whether drive torque tightens or loosens a thread on a turning shaft.
 *
 * The part that the torque leaves by lags: seen from the other it tends to turn against the rotation. A right-hand
 * thread is screwed in by turning its part right-handed about the direction of travel. Braking, and being turned
 * from the far end, swap the two.
 *
 * @source definition of a right-hand thread; torque balance
 * @example threadTendency({ hand: 'right', goesIn: -1, turns: 1, torqueLeavesBy: 'threaded-part' }).driven // 'tightens'
 */
export function threadTendency({ hand, goesIn, turns, torqueLeavesBy }: ThreadOnShaft): ThreadTendency {
  const tendency = torqueLeavesBy === 'threaded-part' ? -turns : turns;
  const tightens = (hand === 'right' ? 1 : -1) * goesIn * tendency > 0;
  return tightens ? { driven: 'tightens', braking: 'loosens' } : { driven: 'loosens', braking: 'tightens' };
}
