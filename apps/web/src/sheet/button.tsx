import type { ButtonHTMLAttributes, ReactNode, Ref } from 'react';
import { Link } from 'wouter';
import './button.css';

export type ButtonKind = 'plain' | 'ink';

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** One ink button in a header at most. */
  readonly kind?: ButtonKind;
  readonly ref?: Ref<HTMLButtonElement>;
}

export function Button({ kind = 'plain', className = '', ...rest }: ButtonProps): ReactNode {
  return <button type="button" className={`button ${kind} ${className}`} {...rest} />;
}

export interface LinkButtonProps {
  readonly to: string;
  readonly kind?: ButtonKind;
  readonly className?: string;
  readonly children: ReactNode;
}

/** Looks like a button, leads somewhere. */
export function LinkButton({ to, kind = 'plain', className = '', children }: LinkButtonProps): ReactNode {
  return <Link href={to} className={`button ${kind} ${className}`}>{children}</Link>;
}
