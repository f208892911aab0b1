/** Samples of one or several channels, evenly spaced in time. */
export interface Recording {
  /** Sampling rate, Hz. */
  readonly rate: number;
  /** One for each channel, all of one length: sound between −1 and 1, or what the file says in `unit`. */
  readonly channels: readonly Float64Array[];
  /** Names of the channels, where the file gives some. */
  readonly names?: readonly string[];
  /** Unit of the samples; none where they are relative. */
  readonly unit?: string;
  /** What was odd about the file and how it was taken, in sentences. */
  readonly warnings: readonly string[];
}

/** Why a file is no recording that can be read: what it is, and what would be right. */
export interface Unreadable {
  readonly problem: string;
}

export const isUnreadable = (read: Recording | Unreadable): read is Unreadable => 'problem' in read;

/** A recording as long as an hour of sound at the highest usual rate; more would not fit a page. */
export const mostSamples = 3600 * 48_000;
