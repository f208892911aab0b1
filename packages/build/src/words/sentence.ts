/** @source ASD-STE100: one action a sentence, at most 20 words (read in lists) */
const mostWords = 20;

/** Words as a reader counts them: a value and its unit are two. */
export function wordCount(sentence: string): number {
  return piecesOf(sentence).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

function piecesOf(sentence: string): readonly string[] {
  return sentence.split(/\s+/u);
}

/**
 * The fullest wording that keeps to twenty words. Names come from the file and may be long, so a sentence with names
 * needs a shorter sister without.
 *
 * @param wordings from the fullest to the shortest
 * @throws RangeError when even the shortest is too long
 */
export function sentence(...wordings: readonly string[]): string {
  const fits = wordings.find((wording) => isShort(wording) || wordCount(wording) <= mostWords);
  if (fits === undefined) throw new RangeError(`sentence: ${wordings.length} wordings, and all have more than ${mostWords} words: ${wordings.at(-1)}`);
  return fits;
}

/** Hardly a wording comes near twenty words: with so few blanks, and no other white space, they need not be counted. */
function isShort(wording: string): boolean {
  let pieces = 1;
  for (let at = 0; at < wording.length; at += 1) {
    const code = wording.charCodeAt(at);
    // Below the blank and above the letters of Latin-1 stands other white space, among much that is none.
    if (code <= 32 || code === 160 || code > 255) pieces += 1;
  }
  return pieces <= mostWords;
}

const smallNumbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/**
 * A number in words up to twelve, with its noun where one is given. Nouns are ours: words of the file are never bent.
 *
 * @example counted(4, 'screw') // 'four screws'
 */
export function counted(count: number, noun = ''): string {
  const number = smallNumbers[count] ?? String(count);
  return noun === '' ? number : `${number} ${count === 1 ? noun : plural(noun)}`;
}

function plural(noun: string): string {
  if (/(?:s|x|ch|sh)$/u.test(noun)) return `${noun}es`;
  return /[^aeiou]y$/u.test(noun) ? `${noun.slice(0, -1)}ies` : `${noun}s`;
}

/** @example listed(['a', 'b', 'c']) // 'a, b and c' */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
