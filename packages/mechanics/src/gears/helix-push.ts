/**
 * Which way a helical gear pushes along its axis.
 *
 * On a right-hand gear a tooth runs along t·sin β + a·cos β (t: the way that rotation right-handed about the axis a
 * moves the tooth). The force is square to the tooth, and on a gear that drives it opposes the motion t: along
 * −t·cos β + a·sin β. So a right-hand gear that drives and turns right-handed is pushed along its axis; each of the three
 * turned round turns the push round.
 *
 * @param hand   of the helix; an external mate has the other, an internal mate the same
 * @param turns  +1 when the shaft turns right-handed about its axis, −1 when left-handed
 * @param role   of the gear, while power flows from the engine
 * @returns      +1 along the axis, −1 against it; the force on the gear
 * @source derived above
 * @example helixPush('right', 1, 'driver') // 1
 */
export function helixPush(hand: 'right' | 'left', turns: 1 | -1, role: 'driver' | 'driven'): 1 | -1 {
  const alike = (hand === 'right') === (turns === 1);
  return alike === (role === 'driver') ? 1 : -1;
}
