/** Words for one tool. Common practice, no source. */
const alike: readonly (readonly [string, string])[] = [
  ['heat gun', 'hot air gun'],
  ['allen key', 'hexagon key'],
  ['hex key', 'hexagon key'],
  ['spanner', 'wrench'],
];

/** Tool names in one spelling: small letters, no hyphens, one word for one tool. */
function plainName(name: string): string {
  const plain = name.toLowerCase().replaceAll(/[-\s]+/gu, ' ').trim();
  return alike.reduce((text, [word, usual]) => text.replaceAll(word, usual), plain);
}

/**
 * Those of some tools that a person means by a name: “heat gun” is the hot-air gun, “hexagon key” every one of them.
 *
 * @example toolsLike(['Hot-air gun', 'Hexagon key 2 mm'], 'heat gun') // ['Hot-air gun']
 */
export function toolsLike(tools: Iterable<string>, asked: string): readonly string[] {
  const wanted = plainName(asked);
  return wanted === '' ? [] : [...tools].filter((tool) => ` ${plainName(tool)} `.includes(` ${wanted} `));
}
