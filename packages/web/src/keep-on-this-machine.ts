/**
 * Asks the browser to keep the app and its book on this machine: the app's files, so that it starts with no signal, and the book for good, so that it
 * is not thrown out when the disk gets full. Where the browser will not (a private window, an address that is neither this machine nor safe), the app
 * goes on without.
 */
export function keepOnThisMachine(): void {
  if (import.meta.env.DEV) return;
  if ('serviceWorker' in navigator)
    void navigator.serviceWorker.register('/service-worker.js').catch((fault: unknown) => console.warn(fault));
  if ('storage' in navigator && 'persist' in navigator.storage) void navigator.storage.persist();
}
