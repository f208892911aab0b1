import type { HeardGroup, Hearing, Mismatch } from './hearing.ts';

/** How the caller writes a speed, rad/s, with so many decimals of its display unit, rpm. */
export type ShowSpeed = (speed: number, decimals: number) => string;

const names: Readonly<Record<HeardGroup['group'], string>> = { main: 'main rotor', tail: 'tail rotor', engine: 'engine', mesh: 'gears' };

/** What was heard, in sentences: the answer first, then why it can be believed, or what to do. */
export function hearingWords(hearing: Hearing, show: ShowSpeed): readonly string[] {
  const audible = hearing.groups.filter((each) => each.audible).map(({ group }) => names[group]);
  const mean = hearing.speed === undefined ? '' : meanWords(hearing.speed, hearing.interval!, show);
  switch (hearing.verdict) {
    case 'not-heard':
      return ['Not heard: nothing in this recording fits the ratios of this machine.', 'Record nearer, from a safe place, away from wind and other machines; and check the tooth counts in the file.'];
    case 'cannot-tell':
      if (hearing.unheard) return unheardWords(hearing.unheard, hearing.from);
      return ['Cannot tell: more than one speed would explain this recording.', 'Record ten seconds of steady running, with main rotor and tail rotor both to be heard.'];
    case 'not-verified':
      return [`Main rotor at ${mean}, if the ${audible.join(' and ')} is what was heard. Not verified: only one source is heard, and one alone checks nothing.`, ...silence(hearing)];
    case 'mismatch':
      return [`Main rotor at ${mean}. ${mismatchWords(hearing.mismatch!)}`, remedy(hearing.mismatch!), ...silence(hearing)];
    case 'heard':
      return [`Main rotor at ${mean}: ${list(audible)} fit each other by the ratios of the file.`, ...silence(hearing)];
  }
}

const unheardWords = ([start, end]: readonly [number, number], from: number): readonly string[] => [
  `Cannot tell: the machine is not heard from ${(from + start).toFixed(1)} to ${(from + end).toFixed(1)} s, so how fast it turned over all of the recording is not known.`,
  'Record ten seconds of steady running, or cut the recording to where the machine is heard throughout.',
];

/** The speed and half its interval, rounded up, with as many decimals as the interval is worth. */
function meanWords(speed: number, [low, high]: readonly [number, number], show: ShowSpeed): string {
  const rpm = Math.PI / 30;
  const half = (high - low) / 2 / rpm;
  const decimals = half >= 1 ? 0 : half >= 0.1 ? 1 : 2;
  const up = Math.ceil(half * 10 ** decimals) / 10 ** decimals;
  return `${show(speed, decimals)} ± ${show(up * rpm, decimals)}`;
}

const list = (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

const silence = ({ engineSilentFrom, from }: Hearing): readonly string[] => (engineSilentFrom === undefined ? [] : [`The engine falls silent ${(from + engineSilentFrom).toFixed(1)} s after the start.`]);

function mismatchWords({ group, factor, otherRatios, slip }: Mismatch): string {
  const percent = Math.abs(100 * (factor - 1));
  const counts = otherRatios.slice(0, 4).map(({ id }) => id).join('; or ');
  return [
    `The ${names[group]} turns ${percent.toFixed(2)} % ${factor > 1 ? 'faster' : 'slower'} than the file would have it.`,
    ...(slip ? [group === 'engine' ? 'A clutch that slips would do that.' : 'A belt that slips or jumps would do that.'] : []),
    ...(counts === '' ? [] : [`${slip ? 'Or one' : 'One'} count of the file is wrong: ${counts}.`]),
    ...(!slip && counts === '' ? ['No slip and no single wrong count explains that.'] : []),
  ].join(' ');
}

/** What to do about a ratio that does not fit, before the next flight. */
function remedy({ group, otherRatios, slip }: Mismatch): string {
  const slipping = group === 'engine' ? 'clutch' : 'belt';
  if (!slip) return otherRatios.length === 0 ? 'Count the teeth of every wheel on the machine, and check the file by them.' : 'Count the teeth on the machine, and put right what is wrong: the file, or the wheel.';
  return otherRatios.length === 0 ? `Inspect the ${slipping} before the next flight.` : `Inspect the ${slipping} before the next flight, and count the teeth on the machine.`;
}
