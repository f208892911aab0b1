import type { MachineChange, MachineOnBoard } from '@rotorwright/logbook';
import type { QueryClient } from '@tanstack/react-query';

export const boardKey = ['machines'] as const;

/**
 * Listens to what changes on the server, whoever changed it, and has the board fetched again where it differs.
 *
 * @param reachable  told whenever the connection stands or falls
 * @returns a function that ends it
 */
export function listen(client: QueryClient, reachable: (is: boolean) => void): () => void {
  let source = connected(client, reachable);
  // A browser gives up for good where something answers in the server's place.
  const again = setInterval(() => {
    if (source.readyState === EventSource.CLOSED) source = connected(client, reachable);
  }, pause);
  return () => {
    clearInterval(again);
    source.close();
  };
}

/** Between two tries to listen again, ms. */
const pause = 5000;

function connected(client: QueryClient, reachable: (is: boolean) => void): EventSource {
  const source = new EventSource('/api/events');
  source.addEventListener('open', () => {
    reachable(true);
    // Whatever happened while nobody listened.
    void client.invalidateQueries({ queryKey: boardKey });
  });
  source.addEventListener('error', () => reachable(false));
  source.addEventListener('machine', (event) => {
    const change = JSON.parse(event.data as string) as MachineChange;
    const known = client.getQueryData<readonly MachineOnBoard[]>(boardKey);
    const same = known?.find((board) => board.id === change.id);
    if (same && same.revision === change.revision && (same.entries.at(-1)?.number ?? 0) === change.entries) return;
    if (!same && change.revision === null) return;
    void client.invalidateQueries({ queryKey: boardKey });
  });
  return source;
}
