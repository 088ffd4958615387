import type { ReactNode } from "react";

/** Lets a table that is wider than the screen be pushed sideways, by keyboard too. */
export function TableScroll({ children }: { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows push the table sideways
    <div className="plain-scroll" tabIndex={0}>
      {children}
    </div>
  );
}
