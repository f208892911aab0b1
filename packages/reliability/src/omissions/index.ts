export { omission, type ListKind, type Omission, type SecondLook } from './omission.ts';
