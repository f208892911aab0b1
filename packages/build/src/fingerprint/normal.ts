/**
 * A number as a fingerprint holds it: SI, to 12 significant digits, so that 0.5 cm and 5 mm are the same.
 */
export function normalNumber(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}

/** Coarse pitches in mm. @source ISO 261, first choice (from memory) */
const coarsePitch: Readonly<Record<string, string>> = {
  '1': '0.25', '1.2': '0.25', '1.6': '0.35', '2': '0.4', '2.5': '0.45', '3': '0.5', '3.5': '0.6', '4': '0.7', '5': '0.8', '6': '1', '8': '1.25', '10': '1.5', '12': '1.75',
};

/**
 * A thread in one spelling: M3, M3x0.5 and M3 × 0.5 are the same thread.
 *
 * @example normalThread('m3 × 0.5') // 'M3'
 * @example normalThread('M6x0.75') // 'M6x0.75'
 */
export function normalThread(thread: string): string {
  const plain = thread.replace(/\s+/gu, '').replace(/×/gu, 'x');
  const metric = /^m(\d+(?:\.\d+)?)(?:x(\d+(?:\.\d+)?))?(.*)$/iu.exec(plain);
  if (metric === null) return plain.toLowerCase();
  const [, size = '', pitch, rest = ''] = metric;
  const diameter = String(Number(size));
  const fine = pitch === undefined || Number(pitch) === Number(coarsePitch[diameter]) ? '' : `x${Number(pitch)}`;
  return `M${diameter}${fine}${rest.toUpperCase()}`;
}

/** Words such as a material: case and blanks do not tell one from the other. */
export function normalWords(words: string): string {
  return words.trim().replace(/\s+/gu, ' ').toLowerCase();
}
