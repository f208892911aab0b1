/** What the parser's own codes mean to somebody who writes a machine file, and what to do. */
export function wordYamlError(code: string, message: string): { readonly reason: string; readonly remedy: string } {
  switch (code) {
    case 'TAB_AS_INDENT':
      return { reason: 'A tab stands where spaces are wanted.', remedy: 'Indent with spaces, two for each step.' };
    case 'BAD_INDENT':
      if (/end with a/u.test(message)) return { reason: missing(message), remedy: missingRemedy(message) };
      return { reason: 'The line is indented unlike its neighbours.', remedy: 'Begin entries of one section in the same column, and entries inside braces deeper than their key.' };
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
      return { reason: 'A second colon, or a line without one, breaks this entry.', remedy: 'Write one key, a colon and a value on a line; put a sentence with a colon in "quotes".' };
    case 'MISSING_CHAR':
      return { reason: missing(message), remedy: missingRemedy(message) };
    case 'BAD_ALIAS':
    case 'ALIAS_PROPS':
    case 'MULTIPLE_ANCHORS':
      return { reason: 'An alias (*name) has no anchor (&name) before it.', remedy: 'Write the anchor first, or repeat the values.' };
    case 'BAD_SCALAR_START':
      return { reason: 'A value cannot begin with this sign.', remedy: 'Put the value in "quotes".' };
    case 'BAD_DQ_ESCAPE':
      return { reason: 'The backslash in this quoted text begins no known sign.', remedy: "Write two backslashes, or use 'single quotes'." };
    case 'BLOCK_IN_FLOW':
      return { reason: 'An indented list or section stands inside brackets.', remedy: 'Close the bracket first, or write the list as [a, b].' };
    case 'MULTIPLE_DOCS':
      return { reason: 'A line of three dashes begins a second document.', remedy: 'Keep one machine in one file; remove the dashes.' };
    case 'RESOURCE_EXHAUSTION':
      return { reason: 'The text is nested too deeply to be read.', remedy: 'Close each bracket that is opened.' };
    case 'TAG_RESOLVE_FAILED':
    case 'MULTIPLE_TAGS':
    case 'BAD_COLLECTION_TYPE':
    case 'NON_STRING_KEY':
      return { reason: 'An exclamation mark begins a type (a tag), which machine files do not use.', remedy: 'Remove it, or put the value in "quotes".' };
    default:
      return { reason: 'A sign stands where none is expected.', remedy: 'Look for a bracket, comma or quote too many on this line or the one before.' };
  }
}

function missing(message: string): string {
  if (/closing .*quote/u.test(message)) return 'A quote is opened and never closed.';
  if (/Missing , /u.test(message) || /Missing , or :/u.test(message)) return 'A comma is missing between two entries.';
  if (/space after :/u.test(message)) return 'A space is missing after the colon.';
  if (/Comments must be separated/u.test(message)) return 'A space is missing before the # of a comment.';
  if (/end with a|flow (map|seq)/iu.test(message)) return 'A bracket is opened and never closed.';
  if (/Implicit map keys/u.test(message)) return 'The colon after this key is missing.';
  return 'A sign is missing here.';
}

function missingRemedy(message: string): string {
  if (/closing .*quote/u.test(message)) return 'Close the quote at the end of the text.';
  if (/Missing , /u.test(message) || /Missing , or :/u.test(message)) return 'Write a comma between entries in brackets.';
  if (/space after :/u.test(message)) return 'Write a space after the colon.';
  if (/Comments must be separated/u.test(message)) return 'Write a space before #, or put the text in "quotes".';
  if (/end with a|flow (map|seq)/iu.test(message)) return 'Close it: } for {, ] for [.';
  if (/Implicit map keys/u.test(message)) return 'Write a colon and a space between key and value: mass: 5.4 kg.';
  return 'Compare the line with its neighbours: key, colon, space, value.';
}
