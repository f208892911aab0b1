import type { FlawPlace, LineGroup, OtherRatio } from './comb.ts';

/**
 * heard         two groups or more agree in the ratios of the file
 * mismatch      the machine is heard, but one group turns at another ratio than the file says
 * not-verified  one group is heard: it checks nothing
 * cannot-tell   something is heard that fits more than one speed
 * not-heard     no machine of these ratios is heard
 */
export type Verdict = 'heard' | 'mismatch' | 'not-verified' | 'cannot-tell' | 'not-heard';

export interface HeardGroup {
  readonly group: LineGroup;
  /** Logarithm of the odds that it is heard at its place, nepers. */
  readonly evidence: number;
  readonly audible: boolean;
}

/** A group whose speed does not fit the rest by the ratio of the file. */
export interface Mismatch {
  readonly group: 'tail' | 'engine';
  /** Its speed over the one that the file would have, and the standard deviation. */
  readonly factor: number;
  readonly deviation: number;
  /** Wrong counts that would explain it, the nearest first; none where only slip does. */
  readonly otherRatios: readonly OtherRatio[];
  /** Whether slip can explain it: a clutch lets the engine run ahead, a belt lets the tail fall behind. */
  readonly slip: boolean;
}

/** Speed of the main rotor over time. */
export interface SpeedTrack {
  /** s from the start */
  readonly times: Float64Array;
  /** rad/s */
  readonly speeds: Float64Array;
}

/** A line that stands out of the noise. */
export interface HeardLine {
  /** Turns of the main rotor. */
  readonly order: number;
  /** At the mean speed, Hz. */
  readonly frequency: number;
  /** Over the noise around it, dB. */
  readonly level: number;
  /** Family that explains it, and which multiple of its first line it is; neither where nothing of the machine does. */
  readonly family?: string;
  readonly multiple?: number;
  /** Peak of the line in the unit of the recording: the root of its mean square over the recording, times √2. */
  readonly amplitude: number;
  /** Where no family explains it: the line of a family from which it lies whole turns of a shaft away, on both sides alike. */
  readonly beside?: { readonly family: string; readonly multiple: number; readonly shaft: string; readonly turns: number };
  /** Where nothing of the machine explains it: the lowest of such lines of which it is a multiple; three or more are one source. */
  readonly row?: { readonly order: number; readonly multiple: number };
}

/** Strikes as a flaw in a bearing makes them, heard in the loudness of the high frequencies. */
export interface HeardFlaw {
  /** Turns of the main rotor. */
  readonly order: number;
  /** At the mean speed, Hz. */
  readonly frequency: number;
  /** Logarithm of the odds against noise, what was searched through taken off, nepers. */
  readonly evidence: number;
  /** Multiples that stand out. */
  readonly multiples: readonly number[];
  /** Flaws that would strike that often, the nearest first, with their strikes for one turn of the main rotor by the file. */
  readonly candidates: readonly { readonly bearing: string; readonly place: FlawPlace; readonly order: number }[];
}

/** Spectrum in orders of the main rotor, the wandering of its speed taken out. */
export interface OrderSpectrum {
  /** Orders from one value to the next. */
  readonly step: number;
  /** dB over the noise around. */
  readonly levels: Float32Array;
}

export interface Hearing {
  readonly verdict: Verdict;
  /** Mean of the main rotor's speed as it was received, rad/s: turns over time. */
  readonly speed?: number;
  /** Its standard deviation, and the interval that holds it in 95 of 100 recordings, rad/s. */
  readonly deviation?: number;
  readonly interval?: readonly [low: number, high: number];
  /** Odds over the next best speed that is another, nepers. */
  readonly margin: number;
  readonly groups: readonly HeardGroup[];
  readonly mismatch?: Mismatch;
  /** Stretch in which no group stands out of the noise though it does elsewhere, s from the start: how fast the rotor turned there is a guess. */
  readonly unheard?: readonly [from: number, until: number];
  /** When the engine fell silent while the rotor ran on, s from the start. */
  readonly engineSilentFrom?: number;
  readonly track?: SpeedTrack;
  /** Lines by the source that explains them, the loudest first. */
  readonly lines?: readonly HeardLine[];
  readonly spectrum?: OrderSpectrum;
  /** Unit of the amplitudes; none where the sensor is not calibrated. */
  readonly unit?: string;
  /** Bearings that strike, the surest first; and the spectrum that says so. Not there where the recording has no high frequencies, or no bearing is known. */
  readonly flaws?: readonly HeardFlaw[];
  readonly envelope?: OrderSpectrum;
  /** s of sound that were listened to, and where they begin: of one longer than half a minute the loudest fifteen seconds. */
  readonly seconds: number;
  readonly from: number;
}

/** What `hear` is at, for somebody who waits. */
export interface HearingProgress {
  /** From 0 to 1. */
  readonly part: number;
  readonly words: string;
}
