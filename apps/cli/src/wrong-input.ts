/** What was asked cannot be answered as it was asked: exit status 2, and nothing on standard output. */
export class WrongInput extends Error {
  override readonly name = 'WrongInput';
}

/** Exit status of a command: 0 fine, 1 answered with a finding. Wrong input is thrown, and becomes 2. */
export type Status = 0 | 1;
