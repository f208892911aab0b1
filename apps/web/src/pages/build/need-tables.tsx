import type { ReactNode } from 'react';
import { sizeWords, type FastenerNeed, type Need } from '@rotorwright/build';

export function FastenerTable({ wanted }: { readonly wanted: readonly FastenerNeed[] }): ReactNode {
  if (wanted.length === 0) return undefined;
  return (
    <table className="need-table">
      <caption><h3>Screws, nuts, pins</h3></caption>
      <thead><tr><th scope="col" className="number">Count</th><th scope="col">What</th><th scope="col">Steps</th></tr></thead>
      <tbody>{wanted.map((one) => <tr key={fastenerWords(one)}><td className="number">{one.count}</td><th scope="row">{fastenerWords(one)}</th><td>{one.steps.length}</td></tr>)}</tbody>
    </table>
  );
}

export function NeedTable({ title, wanted }: { readonly title: string; readonly wanted: readonly Need[] }): ReactNode {
  if (wanted.length === 0) return undefined;
  return (
    <table className="need-table">
      <caption><h3>{title}</h3></caption>
      <thead><tr><th scope="col">What</th><th scope="col">Steps</th></tr></thead>
      <tbody>{wanted.map((one) => <tr key={one.name}><th scope="row">{one.name}</th><td>{one.steps.length}</td></tr>)}</tbody>
    </table>
  );
}

/** "screw M3 × 8, socket, 12.9" */
function fastenerWords(fastener: FastenerNeed): string {
  return `${fastener.kind.replaceAll('-', ' ')} ${sizeWords(fastener)}`.trim();
}
