/** Hz up to which a sound is ever drawn: teeth in mesh are seldom faster. */
export const drawnUpTo = 4000;
