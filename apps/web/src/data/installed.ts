/**
 * Has the browser keep the pages for when the network is gone. Browsers offer that at 127.0.0.1, localhost and over
 * https; elsewhere the tab must be left open.
 *
 * @param newer  told when another version of the pages is ready, with what puts it in place of this one
 * @returns looks whether the server has another version; nothing where the browser keeps no pages
 */
export function keepPages(newer: (takeOver: () => void) => void): (() => void) | undefined {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return undefined;
  const { serviceWorker } = navigator;
  const before = serviceWorker.controller;
  let wanted = false;
  serviceWorker.addEventListener('controllerchange', () => {
    if (wanted) location.reload();
    // Another tab has put the new version in place: what this one has not loaded yet is gone.
    else if (before !== null) newer(() => location.reload());
  });
  const registered = serviceWorker.register('/worker.js').then((registration) => {
    const offer = (): void => {
      const { waiting } = registration;
      if (waiting === null || serviceWorker.controller === null) return;
      newer(() => {
        wanted = true;
        // oxlint-disable-next-line unicorn/require-post-message-target-origin -- only a window has an origin to name
        waiting.postMessage('take-over');
      });
    };
    offer();
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', offer));
    return registration;
  });
  // A browser that refuses, in a private window for instance, keeps no pages; entries are kept all the same.
  registered.catch(() => undefined);
  return () => void registered.then((registration) => registration.update()).catch(() => undefined);
}

/** Whether the pages open here with the network gone; if not, the tab must stay open. */
export const opensOffline = (): boolean => 'serviceWorker' in navigator;
