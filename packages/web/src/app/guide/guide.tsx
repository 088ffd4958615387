import { lazy, Suspense } from "react";
import { useGuide } from "./use-guide.ts";

const GuidePanel = lazy(() => import("./guide-panel.tsx"));

/** The guide, where this browser is being led through this book. */
export function Guide({ bookId }: { readonly bookId: string }) {
  const state = useGuide();
  if (state === null || !state.open || state.book !== bookId) return null;
  return (
    <Suspense>
      <GuidePanel />
    </Suspense>
  );
}
