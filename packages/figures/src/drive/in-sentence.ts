/**
 * A title as it stands inside a sentence: "tail rotor" for "Tail rotor"; abbreviations keep their capitals.
 *
 * @example inSentence('Main gear') // 'main gear'
 */
export const inSentence = (title: string): string => (/^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title);
