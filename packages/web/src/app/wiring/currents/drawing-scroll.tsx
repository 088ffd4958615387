import type { ReactNode } from "react";

/** Lets a drawing that is wider than a small screen be pushed sideways, by keyboard too. */
export function DrawingScroll({ children }: { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows push the drawing sideways
    <div className="drawing-scroll" tabIndex={0}>
      {children}
    </div>
  );
}
