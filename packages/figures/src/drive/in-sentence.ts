/**
 * A title as it stands inside a sentence: "tail rotor" for "Tail rotor"; abbreviations keep their capitals.
 *
 * @example inSentence('Main gear') // 'main gear'
 */
export const inSentence = (title: string): string => (/^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title);

/** A title at the beginning of a sentence. */
export const atStart = (title: string): string => title.charAt(0).toUpperCase() + title.slice(1);
