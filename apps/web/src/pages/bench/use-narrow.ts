import { useSyncExternalStore } from 'react';

const query = '(max-width: 640px)';

function listen(told: () => void): () => void {
  const media = matchMedia(query);
  media.addEventListener('change', told);
  return () => media.removeEventListener('change', told);
}

/** Whether the page is as narrow as a phone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(listen, () => matchMedia(query).matches);
}
