/** Formulas and symbols of the catalogue, TeX to MathML, made while the pages are built. */
declare module 'virtual:formulas' {
  export const block: Readonly<Record<string, string>>;
  export const inline: Readonly<Record<string, string>>;
}
