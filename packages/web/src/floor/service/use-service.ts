import { useEffect, useState } from "react";

const SCRIPT = "/floor-sw.js";
/** Without a secure connection the browser keeps no page; one that is being worked on is not kept either. */
const isThere = (): boolean => "serviceWorker" in navigator && import.meta.hot === undefined;

/**
 * Has the browser keep this page, so that it opens without the network.
 * @returns a newer version that waits to be used, as the way to use it; null when there is none
 */
export function useNewVersion(): (() => void) | null {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  useEffect(() => {
    if (!isThere()) return;
    void navigator.serviceWorker.register(SCRIPT).then(
      (registration) => {
        const look = (): void =>
          setWaiting(navigator.serviceWorker.controller === null ? null : registration.waiting);
        look();
        registration.addEventListener("updatefound", () =>
          registration.installing?.addEventListener("statechange", look),
        );
      },
      () => undefined,
    );
  }, []);
  return waiting === null
    ? null
    : () => {
        navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
        waiting.postMessage("take-over");
      };
}

/** Has the device keep what the server says at these places; what it does not keep yet is asked for. */
export function useKept(paths: readonly string[]): void {
  const key = paths.join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `paths`
  useEffect(() => {
    if (!isThere()) return;
    const stop = new AbortController();
    void keep(paths, stop.signal);
    return () => stop.abort();
  }, [key]);
}

async function keep(paths: readonly string[], signal: AbortSignal): Promise<void> {
  await navigator.serviceWorker.ready;
  if (navigator.serviceWorker.controller === null)
    await new Promise((done) =>
      navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }),
    );
  for (const path of paths) {
    if (signal.aborted) return;
    if ((await caches.match(path)) === undefined) await fetch(path).catch(() => undefined);
  }
}
