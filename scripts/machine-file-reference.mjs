/**
 * The reference of the machine file, `docs/machine-file.md`, out of its JSON Schema: one place says what a field is.
 * `npm run docs` writes it; a test sees that it is up to date.
 */

const head = `# The machine file

YAML, written by hand or by the app. Every section is optional; each one added unlocks more. Quantities carry their unit (\`14.5 mm\`, \`1.1 N·m\`, \`13400 to 14900 rpm\`); bare numbers are counts and ratios. Ids are short and stable, because signatures refer to them: \`module/key\`, \`module.A/key\` for a copy of a module, \`module/key.front\` for a copy of a thing. Text with a comma inside braces wants quotes.

\`rotorwright check FILE\` names every mistake with its place. The schema for editors is at \`/api/schema\` of a running server. The three machines under \`examples/\` show all of it.

This page is made from the schema by \`npm run docs\`.
`;

/** @param schema  JSON Schema as \`machineSchema()\` of the machine room gives it */
export function machineFileReference(schema) {
  const sections = Object.entries(schema.properties).map(([name, section]) => `## ${name}\n\n${words(section)}\n${fields(section, 0)}`);
  const shared = Object.entries(schema.$defs ?? {}).map(([name, section]) => `## ${name} (used in several places)\n\n${words(section)}\n${fields(section, 0)}`);
  return `${[head, ...sections, ...shared].join('\n').trimEnd()}\n`;
}

const words = ({ description = '', enum: choices }) => {
  const [text, example] = description.split(/ Example: (.*)/s);
  const listed = choices ? ` One of ${choices.map((choice) => `\`${choice}\``).join(', ')}.` : '';
  return `${text}${/[.!?]$/.test(text) || text === '' ? '' : '.'}${listed}${example && !choices ? ` Example: \`${example.replaceAll('\n', ' ')}\`` : ''}`;
};

/** What stands inside: fields of a map, of its entries, of a list's items, of either form where there are two. */
function fields(schema, depth) {
  const indent = '  '.repeat(depth);
  const own = Object.entries(schema.properties ?? {}).map(([name, field]) => `${indent}- \`${name}\`: ${words(field)}\n${fields(field, depth + 1)}`);
  const inner = [schema.additionalProperties, schema.items, ...(schema.anyOf ?? [])].filter((each) => each !== null && typeof each === 'object' && (each.properties || each.additionalProperties?.properties || each.anyOf));
  return [...own, ...inner.map((each) => fields(each, depth))].join('');
}
