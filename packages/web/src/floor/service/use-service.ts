import { useEffect, useState } from "react";

const SCRIPT = "/floor-sw.js";

/**
 * Has the browser keep this page, so that it opens without the network. What was fetched before that is asked for once more,
 * so that it is kept too.
 * @returns a newer version that waits to be used, as the way to use it; null when there is none
 */
export function useService(kept: readonly string[]): (() => void) | null {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  const key = kept.join(" ");
  useEffect(() => {
    // Without a secure connection the browser has no such thing.
    if (!("serviceWorker" in navigator) || !import.meta.env.PROD) return;
    void navigator.serviceWorker.register(SCRIPT).then(
      (registration) => {
        const look = (): void => {
          const isLater = navigator.serviceWorker.controller !== null;
          setWaiting(isLater ? registration.waiting : null);
        };
        look();
        registration.addEventListener("updatefound", () =>
          registration.installing?.addEventListener("statechange", look),
        );
      },
      () => undefined,
    );
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `kept`
  useEffect(() => {
    if (!("serviceWorker" in navigator) || !import.meta.env.PROD) return;
    void navigator.serviceWorker.ready.then(() => warm(kept));
  }, [key]);
  return waiting === null
    ? null
    : () => {
        navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
        waiting.postMessage("take-over");
      };
}

/** Fetches again whatever the device does not keep yet. */
async function warm(paths: readonly string[]): Promise<void> {
  if (navigator.serviceWorker.controller === null)
    await new Promise((done) =>
      navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }),
    );
  for (const path of paths)
    if ((await caches.match(path)) === undefined) await fetch(path).catch(() => undefined);
}
