/** What may be left out of an object may also be given as undefined. */
export type Given<Of> = { readonly [Name in keyof Of]: object extends Pick<Of, Name> ? Of[Name] | undefined : Of[Name] };

/** An object without what is undefined. */
export function present<Of extends object>(given: Given<Of>): Of {
  const found: Partial<Given<Of>> = {};
  for (const name in given) if (given[name] !== undefined) found[name] = given[name];
  return found as Of;
}
