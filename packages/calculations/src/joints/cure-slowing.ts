import { threadlockCureTime } from '@rotorwright/mechanics';

const room = 295.15;

/**
 * How many times longer an anaerobic compound takes to cure than the time that its file gives for room temperature.
 *
 * @param temperature  of the workshop, K
 * @returns            1 at 22 °C and above; undefined below 5 °C, where it may never cure
 * @source as `threadlockCureTime`: the doubling per 10 K is common practice, no source
 */
export function cureSlowing(temperature: number): number | undefined {
  const [here, atRoom] = [threadlockCureTime(temperature, 'with primer'), threadlockCureTime(room, 'with primer')];
  return here === undefined || atRoom === undefined ? undefined : here / atRoom;
}
