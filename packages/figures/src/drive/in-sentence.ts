/**
 * A title as it stands inside a sentence: "tail rotor" for "Tail rotor"; abbreviations keep their capitals.
 *
 * @example inSentence('Main gear') // 'main gear'
 */
export function inSentence(title: string): string {
  const first = title.charAt(0);
  const second = title.charAt(1);
  const small = first.toLowerCase();
  return first !== small && second !== second.toUpperCase() ? small + title.slice(1) : title;
}
